import { printLength } from '../../length/length.js';
import { MM_PER_INCH, type Units } from '../../length/units.js';
import type { Bench, BenchState } from '../state/bench.js';
import type { Shown } from '../plan/answer.js';
import { useWidth, wholeBoard } from './scale.js';

/** Marks are no closer than this on the screen, px. */
const MARKS_APART = 64;

/** The story pole between the board and the row: a rule along the board with the place of the cross-section on it. */
export function Pole({
  bench,
  state,
  shown,
}: {
  readonly bench: Bench;
  readonly state: BenchState;
  readonly shown: Shown;
}) {
  const { ref, width } = useWidth();
  const { length } = shown.result.board;
  const visible = state.visible ?? wholeBoard(length);
  const scale = width / (visible.to - visible.from);
  const gap = markGap(MARKS_APART / scale, state.units);
  const marks: number[] = [];
  for (let at = Math.ceil(Math.max(0, visible.from) / gap) * gap; at <= Math.min(length, visible.to); at += gap)
    marks.push(at);
  const place = printLength(state.x, state.units, 'feet');
  return (
    <div ref={ref} class="pole">
      <svg width={width} height={26} aria-hidden="true">
        {marks.map((at) => (
          <g key={at} transform={`translate(${(at - visible.from) * scale} 0)`}>
            <line y2={8} />
            <text y={21}>{printLength(at, state.units, 'feet')}</text>
          </g>
        ))}
        <path class="pole-pointer" d={`M${(state.x - visible.from) * scale} 0l-5 9h10z`} />
      </svg>
      <label>
        <span>
          Cross-section at <output>{place}</output> from the nose
        </span>
        <input
          type="range"
          min={0}
          max={length}
          step={state.units === 'mm' ? 1 : MM_PER_INCH / 16}
          value={state.x}
          aria-valuetext={`${place} from the nose`}
          onInput={(event) => bench.show({ x: Number(event.currentTarget.value) })}
        />
      </label>
    </div>
  );
}

/** The closest round distance between marks, mm. */
function markGap(least: number, units: Units): number {
  const gaps =
    units === 'mm' ? [10, 50, 100, 200, 500, 1000, 2000] : [1, 2, 6, 12, 24, 48].map((inches) => inches * MM_PER_INCH);
  return gaps.find((gap) => gap >= least) ?? gaps.at(-1)!;
}
