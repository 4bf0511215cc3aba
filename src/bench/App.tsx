import { useEffect, useMemo, useReducer, useState } from 'preact/hooks';
import type { Bench, BenchState } from './state/bench.js';
import { Compare } from './Compare.js';
import { Fields } from './fields/Fields.js';
import { PlacementSliders } from './fields/PlacementSliders.js';
import { Cautions, Mistakes, PlanNotes } from './Notes.js';
import { Papers } from './Papers.js';
import { CrossSection } from './picture/CrossSection.js';
import { FitInBlank } from './picture/FitInBlank.js';
import { FromAbove } from './picture/FromAbove.js';
import { Patterns } from './picture/Patterns.js';
import { Pole } from './picture/Pole.js';
import { RowOnBench } from './picture/RowOnBench.js';
import { wholeBoard, zoomed } from './picture/scale.js';
import type { FitView } from '../view/fitView.js';
import type { Shown } from './plan/answer.js';
import { Conflict } from './save/Conflict.js';
import type { JobList, Jobs } from './save/jobs.js';
import { save } from './save/save.js';
import { Space } from './space/Space.js';
import { Legend, Strip } from './Strip.js';
import { Toolbar } from './Toolbar.js';

/**
 * The page: the board from above, the pole, the row on the bench; beside them the cross-section and the job's numbers.
 */
export function App({ bench, jobs, list }: { readonly bench: Bench; readonly jobs: Jobs; readonly list: JobList }) {
  const [, redraw] = useReducer((count: number) => count + 1, 0);
  useEffect(() => bench.subscribe(() => redraw(undefined as never)), [bench]);
  useEffect(() => listenToKeys(bench, jobs), [bench, jobs]);
  const state = bench.now;
  const { shown } = state;
  const isOverdue = useOverdue(!state.isCurrent);
  const title = state.shown?.result.job ?? state.file.name;
  useEffect(() => void (document.title = `${title} – chamberwright`), [title]);

  return (
    <>
      <Toolbar bench={bench} state={state} jobs={jobs} list={list} />
      <main>
        <Mistakes state={state} />
        {!shown && state.findings.length === 0 && <p class="empty">Making the plan …</p>}
        <div class={isOverdue ? 'bench stale' : 'bench'} data-current={state.isCurrent}>
          {shown && (
            <div class="pictures">
              <Pictures bench={bench} state={state} shown={shown} />
              <Strip state={state} shown={shown} />
              <PlanNotes bench={bench} state={state} shown={shown} />
              {shown.fit && <Fit bench={bench} state={state} shown={shown} fit={shown.fit} />}
              <Space state={state} shown={shown} />
              <Papers bench={bench} state={state} jobs={jobs} />
              <Compare bench={bench} state={state} shown={shown} />
            </div>
          )}
          <div class="side">
            {shown && <Section bench={bench} state={state} shown={shown} />}
            <Numbers bench={bench} state={state} />
          </div>
        </div>
      </main>
      <Cautions />
      {state.conflict && <Conflict bench={bench} jobs={jobs} theirs={state.conflict} />}
    </>
  );
}

/** Only a plan that lets itself be waited for so long shows, ms: while a slider moves, nothing is drawn twice. */
const OVERDUE = 500;

function useOverdue(isWaiting: boolean): boolean {
  const [isOverdue, setOverdue] = useState(false);
  useEffect(() => {
    if (!isWaiting) return;
    const timer = setTimeout(() => setOverdue(true), OVERDUE);
    return () => {
      clearTimeout(timer);
      setOverdue(false);
    };
  }, [isWaiting]);
  return isOverdue;
}

interface PictureProps {
  readonly bench: Bench;
  readonly state: BenchState;
  readonly shown: Shown;
}

/** What pictures are drawn from: while a slider moves, they are left alone until the new plan is there. */
const drawnFrom = ({ shown, wall, row, chamber, x, visible, units }: BenchState) =>
  [shown, wall, row, chamber, x, visible, units] as const;

/** The board from above, the pole, and the row on the bench, in line with each other. */
function Pictures({ bench, state, shown }: PictureProps) {
  return useMemo(
    () => (
      <section class="card" aria-labelledby="above-title">
        <header>
          <h2 id="above-title">From above</h2>
          <fieldset class="switch">
            <legend>Spare wall toward</legend>
            {(['deck', 'bottom', 'rail'] as const).map((wall) => (
              <label key={wall}>
                <input type="radio" name="wall" checked={state.wall === wall} onChange={() => bench.show({ wall })} />
                {wall}
              </label>
            ))}
          </fieldset>
          <Zoom bench={bench} />
        </header>
        <svg width={0} height={0} class="keys" aria-hidden="true">
          <Patterns prefix="above-key" scale={1} />
        </svg>
        <Legend shown={shown} state={state} />
        <FromAbove bench={bench} state={state} shown={shown} />
        <Pole bench={bench} state={state} shown={shown} />
        <header>
          <h2>Row on the bench</h2>
          <div class="rows" role="group" aria-label="Row">
            {shown.result.rows.map(({ id }) => (
              <button
                key={id}
                type="button"
                aria-pressed={id === state.row}
                onClick={() => bench.show({ row: id, chamber: undefined })}
              >
                {id}
              </button>
            ))}
          </div>
        </header>
        <RowOnBench bench={bench} state={state} shown={shown} />
      </section>
    ),
    drawnFrom(state),
  );
}

/** The board in its blank, and how it is laid there. */
function Fit({ bench, state, shown, fit }: PictureProps & { readonly fit: FitView }) {
  return (
    <section class="card" aria-labelledby="fit-title">
      <h2 id="fit-title">In the blank</h2>
      <FitInBlank state={state} shown={shown} fit={fit} />
      <PlacementSliders bench={bench} placement={fit.placement} file={shown.job.units} units={state.units} />
    </section>
  );
}

function Section({ bench, state, shown }: PictureProps) {
  return useMemo(
    () => (
      <section class="card" aria-labelledby="section-title">
        <h2 id="section-title">Cross-section</h2>
        <CrossSection bench={bench} state={state} shown={shown} />
      </section>
    ),
    drawnFrom(state),
  );
}

/** The job's numbers: they have nothing to do with where the pointer is. */
function Numbers({ bench, state }: Omit<PictureProps, 'shown'>) {
  const { shown, findings, units, history } = state;
  return useMemo(() => <Fields bench={bench} state={state} />, [shown, findings, units, history.text]);
}

/** More and less of the board, for those who have no wheel. */
function Zoom({ bench }: { readonly bench: Bench }) {
  const zoom = (by: number) => {
    const { shown, visible, x } = bench.now;
    if (shown)
      bench.show({
        visible: zoomed(visible ?? wholeBoard(shown.result.board.length), x, by, shown.result.board.length),
      });
  };
  return (
    <div class="zoom" role="group" aria-label="Zoom">
      <button type="button" aria-label="Zoom in" onClick={() => zoom(1 / 1.6)}>
        +
      </button>
      <button type="button" aria-label="Zoom out" onClick={() => zoom(1.6)}>
        −
      </button>
      <button type="button" onClick={() => bench.show({ visible: undefined })}>
        Whole board
      </button>
    </div>
  );
}

/** Undo, redo and save as everywhere; and a last question before unsaved work is closed. */
function listenToKeys(bench: Bench, jobs: Jobs): () => void {
  const onKeyDown = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const act =
      key === 's'
        ? () => void save(bench, jobs)
        : key === 'y' || (key === 'z' && event.shiftKey)
          ? () => bench.redo()
          : key === 'z'
            ? () => bench.undo()
            : undefined;
    if (!act) return;
    event.preventDefault();
    act();
  };
  const onBeforeUnload = (event: BeforeUnloadEvent) => {
    if (bench.now.history.text !== bench.now.saved) event.preventDefault();
  };
  addEventListener('keydown', onKeyDown);
  addEventListener('beforeunload', onBeforeUnload);
  return () => {
    removeEventListener('keydown', onKeyDown);
    removeEventListener('beforeunload', onBeforeUnload);
  };
}
