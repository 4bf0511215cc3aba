import { choose } from './picture/choose.js';
import { counted } from '../length/counted.js';
import { useState } from 'preact/hooks';
import verdictWords from '../../templates/verdict.json' with { type: 'json' };
import { sayJobFinding } from '../job/finding.js';
import { sayNote } from '../verdict/note.js';
import type { Bench, BenchState } from './state/bench.js';
import type { Shown } from './plan/answer.js';
import { words } from './state/words.js';

const NOTHING_AGAINST_IT = { doubts: [], refusals: [] };

/** What is wrong with the job and what is against its plan, in the words of the command line. */
export function Mistakes({ state }: { readonly state: BenchState }) {
  const errors = state.findings.filter(({ severity }) => severity === 'error');
  // What looks like a slip goes with the plan, as it does on paper; while nothing can be planned, the findings of the
  // reading stand alone.
  const { doubts, refusals } = (errors.length === 0 && state.shown?.result.verdict) || NOTHING_AGAINST_IT;
  const findings = errors.length === 0 ? [] : state.findings;
  if (findings.length + doubts.length + refusals.length === 0) return null;
  return (
    <section class="mistakes" aria-label="Mistakes in the job">
      {errors.length > 0 && state.shown && (
        <p>
          <strong>The pictures still show the last plan that could be made.</strong>
        </p>
      )}
      {refusals.length > 0 && (
        <p>
          <strong>{verdictWords.refused}</strong>
        </p>
      )}
      <ul>
        {refusals.map((why) => (
          <li key={why} class="error">
            {why}
          </li>
        ))}
        {doubts.map((doubt) => (
          <li key={doubt} class="warning">
            {doubt}
          </li>
        ))}
        {findings.map((finding) => (
          <li key={sayJobFinding(finding)} class={finding.severity}>
            {sayJobFinding(finding)}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What the plan left solid, trimmed or split, the chosen row's first. */
export function PlanNotes({
  bench,
  state,
  shown,
}: {
  readonly bench: Bench;
  readonly state: BenchState;
  readonly shown: Shown;
}) {
  const [isOpen, setOpen] = useState(false);
  const { notes, chambers } = shown.result;
  const sorted = [...notes.filter(({ row }) => row === state.row), ...notes.filter(({ row }) => row !== state.row)];
  return (
    <details class="notes" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{counted(notes.length, 'note')} on what was left solid, trimmed or split</summary>
      <ul>
        {(isOpen ? sorted : []).map((note, i) => (
          <li key={i} data-note={note.where}>
            {chambers.some(({ id }) => id === note.where) ? (
              <button type="button" class="link" onClick={() => choose(bench, note.where)}>
                {sayNote(note, state.units)}
              </button>
            ) : (
              sayNote(note, state.units)
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}

export function Cautions() {
  return (
    <footer class="cautions">
      <h2>Before you rout</h2>
      <ul>
        {words.cautions.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </footer>
  );
}
