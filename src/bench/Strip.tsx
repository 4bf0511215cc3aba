import { counted } from '../length/counted.js';
import { printWeight } from '../length/weight.js';
import { KG_PER_POUND, M3_PER_CUBIC_FOOT } from '../length/units.js';
import type { BenchState } from './state/bench.js';
import type { Shown } from './plan/answer.js';
import { fillOf } from './picture/Patterns.js';
import { SPARE_STEPS, spareOf, spareStep } from './picture/spare.js';
import { spoken, words } from './state/words.js';

/** What the plan comes to: weight by stage, blocks, what was left solid. */
export function Strip({ state, shown }: { readonly state: BenchState; readonly shown: Shown }) {
  const { result } = shown;
  const volume = result.blocks.reduce((sum, block) => sum + block.volume, 0);
  const solid = result.notes.filter(({ kind }) => kind === 'solid').length;
  const stages = weightStages(result.weights);
  const most = Math.max(...stages.map(([, kg]) => kg), 0.001);
  return (
    <section class="strip" aria-label="The plan in figures">
      <dl class="weights">
        {stages.map(([stage, kg]) => (
          <div key={stage} data-weight={stage}>
            <dt>{spoken(stage)}</dt>
            <dd>
              <meter min={0} max={most} value={kg} aria-label={`${spoken(stage)} weight`} />
              {printWeight(kg, state.units)}
            </dd>
          </div>
        ))}
      </dl>
      <dl class="counts">
        <div>
          <dt>Chambers</dt>
          <dd data-count="chambers">{result.chambers.length}</dd>
        </div>
        <div>
          <dt>Blocks</dt>
          <dd>
            {result.blocks.length}, {printVolume(volume, state.units)}
          </dd>
        </div>
        <div>
          <dt>Foam sheets</dt>
          <dd data-count="sheets">{sheetsOf(state, shown)}</dd>
        </div>
        <div>
          <dt>Left solid</dt>
          <dd data-count="solid">{counted(solid, 'place')}</dd>
        </div>
        <div>
          <dt>Pages</dt>
          <dd data-count="pages">
            {state.papers === undefined
              ? 'not made yet'
              : `${state.papers.text === state.history.text ? '' : 'were '}${state.papers.pages}, ${state.papers.sheet}`}
          </dd>
        </div>
        <div>
          <dt>Walls</dt>
          <dd data-sound={isSound(result)}>{isSound(result) ? 'all as asked' : 'thinner than asked'}</dd>
        </div>
      </dl>
    </section>
  );
}

/** Sheets of the shop's foam that the blocks are cut from. */
function sheetsOf({ counted }: BenchState, { job }: Shown): string {
  if (job.blocks.stock.length === 0) return 'none listed';
  if (!counted?.sheets) return '…';
  const { cut, leftOut } = counted.sheets;
  return leftOut === 0 ? `${cut}` : `${cut}, blocks without a sheet: ${leftOut}`;
}

/** How the chambers' fills are to be read. */
export function Legend({ shown, state }: { readonly shown: Shown; readonly state: BenchState }) {
  const counts = new Map<string, number>();
  for (const chamber of shown.result.chambers) {
    const name = spareStep(spareOf(chamber, shown.result.asked, state.wall));
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return (
    <ul class="legend" aria-label={`Spare ${state.wall} wall`}>
      {SPARE_STEPS.filter(({ name }) => name !== 'thin' || counts.has(name)).map(({ name, from }) => (
        <li key={name}>
          <svg width={22} height={14} aria-hidden="true">
            <rect class="chamber" width={22} height={14} fill={fillOf('above-key', name)} />
          </svg>
          {words.spare[name]}
          <span class="quiet">
            {' '}
            {from > 0 && (state.units === 'mm' ? `${from} mm and more` : `${inchSteps[from] ?? from} in and more`)} (
            {counts.get(name) ?? 0})
          </span>
        </li>
      ))}
    </ul>
  );
}

/** The steps to the nearest mark of an inch rule. */
const inchSteps: Readonly<Record<number, string>> = { 1: '1/32', 5: '3/16', 20: '3/4' };

/** Every chamber has every wall it was asked for. */
export function isSound({ chambers, asked }: Shown['result']): boolean {
  return chambers.every(
    ({ wall }) => wall.deck >= asked.deck && wall.bottom >= asked.bottom && wall.rail >= asked.rail,
  );
}

/** The weights in the order of the work. */
export function weightStages({ stages }: Shown['result']['weights']): [stage: string, kg: number][] {
  return stages.map(({ stage, weight }) => [stage, weight]);
}

export function printVolume(litres: number, units: BenchState['units']): string {
  return units === 'mm' ? `${litres.toFixed(1)} l` : `${(litres / 1000 / M3_PER_CUBIC_FOOT).toFixed(2)} ft³`;
}

/** How much two weights differ, signed. */
export function printDifference(kg: number, units: BenchState['units']): string {
  const size = units === 'mm' ? `${Math.abs(kg).toFixed(2)} kg` : `${(Math.abs(kg) / KG_PER_POUND).toFixed(1)} lb`;
  return `${kg < 0 ? '−' : '+'}${size}`;
}
