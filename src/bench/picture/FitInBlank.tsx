import { useMemo, useState } from 'preact/hooks';
import type { BenchState } from '../state/bench.js';
import type { Shown } from '../plan/answer.js';
import { sideOf } from '../../view/outlineInPlan.js';
import type { FitView } from '../../view/fitView.js';
import { sayLying } from '../../view/sayStock.js';
import { printAs } from '../../length/rounded.js';
import { fillOf, Patterns } from './Patterns.js';
import { pathOf, useWidth } from './scale.js';
import { SPARE_STEPS, spareStep, type SpareName } from './spare.js';

/** Room around the blank, mm; heights from the side are drawn so many times as large. */
const AIR = 20;
const STRETCHED = 4;
const RING = 40;

interface Props {
  readonly state: BenchState;
  readonly shown: Shown;
  readonly fit: FitView;
}

/** The board in its blank from above and from the side; what comes off is patterned as spare walls are. */
export function FitInBlank({ state, shown, fit }: Props) {
  const { ref, width } = useWidth();
  const [side, setSide] = useState<'deck' | 'bottom'>('deck');
  const { length, width: wide } = shown.result.board;
  const xs = fit.strips.flat().map(([x]) => x);
  const [from, to] = [Math.min(0, ...xs) - AIR, Math.max(length, ...xs) + AIR];
  const scale = width / (to - from);
  const half = Math.max(wide / 2, ...fit.strips.flat().map(([, y]) => Math.abs(y))) + AIR;
  const zs = [...fit.side.stock, ...fit.side.finished].flat().map(([, z]) => STRETCHED * z);
  const [low, high] = [Math.min(...zs) - AIR, Math.max(...zs) + AIR];
  const cells = useMemo(() => cellsOf(fit, side), [fit, side]);
  const outline = shown.board.outline;
  const short = fit.short.filter((place) => place.side === side || (side === 'deck' && place.side !== 'bottom'));
  const least = fit.least.reduce((a, b) => (b.over < a.over ? b : a));
  return (
    <div ref={ref} class="picture">
      <fieldset class="switch">
        <legend>What comes off the</legend>
        {(['deck', 'bottom'] as const).map((each) => (
          <label key={each}>
            <input type="radio" name="fit-side" checked={side === each} onChange={() => setSide(each)} />
            {each}
          </label>
        ))}
      </fieldset>
      <svg
        width={width}
        height={Math.round(2 * half * scale)}
        viewBox={`${from} ${-half} ${to - from} ${2 * half}`}
        class="above"
        style={{ '--px': `${1 / scale}px` }}
        role="img"
        aria-label={`The board in its blank from above, by what comes off the ${side}`}
      >
        <Patterns prefix="fit" scale={scale} />
        {cells.map(({ name, d }) => (
          <path key={name} d={d} fill={fillOf('fit', name)} data-allowance={name} />
        ))}
        {fit.strips.map((points, i) => (
          <path key={i} class="fit-stock" d={pathOf(points, true)} />
        ))}
        <path class="fit-board" d={pathOf([...sideOf(outline, 'right'), ...sideOf(outline, 'left').reverse()], true)} />
        {short.flatMap(({ at: [x, y] }, i) =>
          (fit.isAlike ? [y, -y] : [y]).map((each) => (
            <circle key={`${i} ${each}`} class="fit-short" cx={x} cy={-each} r={RING} />
          )),
        )}
      </svg>
      <svg
        width={width}
        height={Math.round((high - low) * scale)}
        viewBox={`${from} ${-high} ${to - from} ${high - low}`}
        class="above"
        style={{ '--px': `${1 / scale}px` }}
        role="img"
        aria-label={`The board in its blank from the side, heights ${STRETCHED} times as large`}
      >
        {fit.side.stock.map((points, i) => (
          <path key={i} class="fit-stock" d={pathOf(points.map(tall), true)} />
        ))}
        {fit.side.finished.map((points, i) => (
          <path key={i} class="fit-board" d={pathOf(points.map(tall), true)} />
        ))}
        {fit.short.map(({ at: [x, , z] }, i) => (
          <circle key={i} class="fit-short" cx={x} cy={-STRETCHED * z} r={RING} />
        ))}
      </svg>
      <p data-fit-least={least.over.toFixed(2)}>
        {least.over < 0
          ? `The blank ends ${printAs('needed', -least.over, state.units)} inside the board (${least.side}).`
          : `Least over the board: ${printAs('there', least.over, state.units)} (${least.side}).`}{' '}
        Full line: the blank as glued; broken line: the finished board; rings: less than{' '}
        {printAs('needed', fit.asked, state.units)}. Heights from the side are drawn {STRETCHED} times as large.
      </p>
      <ul data-fit-lying>
        {fit.lying
          .flatMap((lies) => sayLying(lies, state.units))
          .map((line) => (
            <li key={line}>{line.trim()}</li>
          ))}
      </ul>
    </div>
  );
}

const tall = ([x, z]: readonly [number, number]): [number, number] => [x, STRETCHED * z];

/** The cells of one pattern as one path: thousands of cells are drawn as five things. */
function cellsOf({ maps, asked, isAlike }: FitView, side: 'deck' | 'bottom'): { name: SpareName; d: string }[] {
  const paths = new Map<SpareName, string[]>();
  for (const { side: its, columns, x, y, value } of maps) {
    if (its !== side) continue;
    for (let row = 0; row + 1 < value.length / columns; row++) {
      for (let column = 0; column + 1 < columns; column++) {
        const i = row * columns + column;
        const corners = [i, i + 1, i + columns + 1, i + columns];
        const least = Math.min(...corners.map((k) => value[k]!));
        if (Number.isNaN(least)) continue;
        const name = spareStep(least - asked);
        const list = paths.get(name) ?? [];
        for (const hand of isAlike ? [1, -1] : [1])
          list.push(
            pathOf(
              corners.map((k) => [x[k]!, hand * y[k]!] as const),
              true,
            ),
          );
        paths.set(name, list);
      }
    }
  }
  return SPARE_STEPS.flatMap(({ name }) => (paths.has(name) ? [{ name, d: paths.get(name)!.join('') }] : []));
}
