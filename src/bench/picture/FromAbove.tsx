import { choose } from './choose.js';
import { useId, useMemo, useRef } from 'preact/hooks';
import type { Bench, BenchState } from '../state/bench.js';
import type { Shown } from '../plan/answer.js';
import { chambersInPlan, type ChamberInPlan } from '../../view/chamberInPlan.js';
import { dotsInPlan } from '../../view/dotsInPlan.js';
import { jointsInPlan } from '../../view/jointsInPlan.js';
import { keepOutInPlan } from '../../view/keepOutInPlan.js';
import { leftSolidInPlan } from '../../view/leftSolid.js';
import { sideOf } from '../../view/outlineInPlan.js';
import { DragHandles } from './DragHandles.js';
import { keepOutPath } from './keepOutPath.js';
import { goToNeighbour } from './neighbour.js';
import { fillOf, numberOn, Patterns } from './Patterns.js';
import { moved, polygonPoints, pathOf, useWidth, wholeBoard, zoomed } from './scale.js';
import { spareOf, spareStep } from './spare.js';

/** Room above and below the board, mm. */
const AIR = 14;
/** The picture takes no more of the screen than this, px. */
const MOST_HEIGHT = 340;
/** A number is written where its chamber is this wide on the screen, px. */
const ROOM_FOR_NUMBER = 34;
/** A wheel's notch or a key shows this much more or less. */
const ZOOM = 1.2;

interface Props {
  readonly bench: Bench;
  readonly state: BenchState;
  readonly shown: Shown;
  /** The second job is looked at, not changed. */
  readonly isOther?: boolean;
}

/** The board from above, nose to the left, right side up: chambers with their numbers, patterned by spare wall. */
export function FromAbove({ bench, state, shown, isOther = false }: Props) {
  const { ref, width } = useWidth();
  const { board } = shown.result;
  const visible = state.visible ?? wholeBoard(board.length);
  const scale = width / (visible.to - visible.from);
  const tall = board.width + 2 * AIR;
  const height = Math.round(Math.min(tall * scale, MOST_HEIGHT));
  // Zoomed in, the picture keeps to the chosen row.
  const room = Math.max(0, tall - height / scale) / 2;
  const places = useMemo(() => chambersInPlan(shown.layup.rows, shown.result.chambers), [shown]);
  const row = places.find(({ chamber }) => chamber.row === state.row);
  const middle = Math.min(Math.max(row?.middle[1] ?? 0, -room), room);
  const prefix = isOther ? 'other' : 'above';
  const pan = useRef<{ at: number; visible: typeof visible } | undefined>(undefined);
  const at = (event: { clientX: number; currentTarget: EventTarget | null }) =>
    visible.from + (event.clientX - (event.currentTarget as Element).getBoundingClientRect().left) / scale;

  const onKeyDown = (event: KeyboardEvent) => {
    const keys: Readonly<Record<string, () => void>> = {
      ArrowLeft: () => goToNeighbour(bench, 0, -1),
      ArrowRight: () => goToNeighbour(bench, 0, 1),
      ArrowUp: () => goToNeighbour(bench, 1, 0),
      ArrowDown: () => goToNeighbour(bench, -1, 0),
      '+': () => bench.show({ visible: zoomed(visible, state.x, 1 / ZOOM, board.length) }),
      '-': () => bench.show({ visible: zoomed(visible, state.x, ZOOM, board.length) }),
      '0': () => bench.show({ visible: undefined }),
    };
    const act = event.target === event.currentTarget && !event.ctrlKey && !event.metaKey ? keys[event.key] : undefined;
    if (!act) return;
    event.preventDefault();
    act();
  };
  const pointing = isOther
    ? {}
    : {
        onPointerMove: (event: PointerEvent) => {
          const from = pan.current;
          if (from) bench.show({ visible: moved(from.visible, (from.at - event.clientX) / scale, board.length) });
          else bench.show({ x: Math.min(Math.max(at(event as never), 0), board.length) });
        },
        onPointerDown: (event: PointerEvent) => {
          if (!event.shiftKey && event.button !== 1 && event.pointerType !== 'touch') return;
          pan.current = { at: event.clientX, visible };
        },
        onPointerUp: () => void (pan.current = undefined),
        onPointerLeave: () => void (pan.current = undefined),
        onWheel: (event: WheelEvent) => {
          if (!event.ctrlKey && state.visible === undefined && event.deltaY > 0) return;
          event.preventDefault();
          bench.show({
            visible: zoomed(visible, at(event as never), event.deltaY > 0 ? ZOOM : 1 / ZOOM, board.length),
          });
        },
      };

  return (
    <div ref={ref} class="picture">
      <svg
        width={width}
        height={height}
        viewBox={`${visible.from} ${-middle - height / scale / 2} ${visible.to - visible.from} ${height / scale}`}
        class="above"
        style={{ '--px': `${1 / scale}px` }}
        {...pointing}
      >
        <Patterns prefix={prefix} scale={scale} />
        <g>
          <BoardInPlan shown={shown} />
          <g
            tabindex={0}
            role="listbox"
            aria-label={
              isOther ? `Chambers of ${shown.result.job}` : 'Chambers. Arrow keys go along the row and from row to row'
            }
            aria-activedescendant={!isOther && state.chamber ? `chamber-${state.chamber}` : undefined}
            class="chambers"
            {...(isOther ? {} : { onKeyDown })}
          >
            <ChambersInPlan {...{ bench, shown, state, places, scale, prefix, isOther }} />
          </g>
          {!isOther && <line class="pointer" x1={state.x} x2={state.x} y1={-tall / 2} y2={tall / 2} />}
          {!isOther && <DragHandles bench={bench} state={state} shown={shown} scale={scale} />}
        </g>
      </svg>
    </div>
  );
}

function BoardInPlan({ shown }: { readonly shown: Shown }) {
  const { board, layup, job, result } = shown;
  const clip = useId();
  const outline = useMemo(
    () => pathOf([...sideOf(board.outline, 'right'), ...sideOf(board.outline, 'left').reverse()], true),
    [board],
  );
  const { length } = board.outline;
  return (
    <>
      <clipPath id={clip}>
        <path d={outline} />
      </clipPath>
      <path class="board" d={outline} />
      <g clip-path={`url(#${clip})`}>
        {layup.members.map(({ id, kind, routing, left, right }) =>
          kind === 'strip' ? null : (
            <path
              key={id}
              class={`stringer ${routing}`}
              d={pathOf(
                [
                  [0, left?.at ?? -2000],
                  [length, left ? left.at + left.slope * length : -2000],
                  [length, right ? right.at + right.slope * length : 2000],
                  [0, right?.at ?? 2000],
                ],
                true,
              )}
            />
          ),
        )}
        {jointsInPlan(board.outline, layup.joints).map(({ joint: { id, kind }, from, to }) => (
          <line key={id} class={`joint ${kind}`} x1={from[0]} x2={to[0]} y1={-from[1]} y2={-to[1]} />
        ))}
        {dotsInPlan(result.dots, layup.joints).map(({ dot, x, y }) => (
          <circle key={dot.id} class="dot" cx={x} cy={-y} r={dot.diameter / 2} />
        ))}
        {job.keepOuts.map((each, i) => (
          <path key={i} class="keep-out" d={keepOutPath(keepOutInPlan(each))} />
        ))}
      </g>
    </>
  );
}

interface InPlan extends Props {
  readonly places: readonly ChamberInPlan[];
  readonly scale: number;
  readonly prefix: string;
}

function ChambersInPlan({ bench, shown, state, places, scale, prefix, isOther }: InPlan) {
  const solid = useMemo(() => leftSolidInPlan({ ...shown, notes: shown.result.notes }), [shown]);
  const { wall, chamber: chosen } = state;
  const outlines = useMemo(
    () =>
      places.map(({ chamber, corners }) => {
        const name = spareStep(spareOf(chamber, shown.result.asked, wall));
        return (
          <polygon
            key={chamber.id}
            id={isOther ? undefined : `chamber-${chamber.id}`}
            role="option"
            aria-label={`${chamber.id}, ${name}`}
            aria-selected={!isOther && chamber.id === chosen}
            class={!isOther && chamber.id === chosen ? 'chamber chosen' : 'chamber'}
            data-chamber={chamber.id}
            data-spare={name}
            fill={fillOf(prefix, name)}
            points={polygonPoints(corners)}
            onClick={() => !isOther && choose(bench, chamber.id)}
          />
        );
      }),
    [places, shown, wall, chosen, prefix],
  );
  const numbers = useMemo(
    () =>
      places.map(({ chamber, middle, along, across }) => {
        const size = Math.min(12 / scale, across * 0.72, (along / chamber.id.length) * 1.5);
        if (along * scale < ROOM_FOR_NUMBER || size * scale < 6) return null;
        const name = spareStep(spareOf(chamber, shown.result.asked, wall));
        return (
          <text key={chamber.id} class={numberOn(name)} x={middle[0]} y={-middle[1]} font-size={size} dy="0.35em">
            {chamber.id}
          </text>
        );
      }),
    [places, shown, wall, scale],
  );
  return (
    <>
      {solid.map(({ where, at }) => (
        <path key={where} class="left-solid" d={`M${at[0] - 6} ${-at[1] - 6}l12 12m0 -12l-12 12`} aria-hidden="true" />
      ))}
      {outlines}
      <g aria-hidden="true">{numbers}</g>
    </>
  );
}
