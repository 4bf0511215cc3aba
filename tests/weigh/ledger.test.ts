import { expect, test } from 'vitest';
import type { Block } from '../../src/block/block.js';
import type { FinSpec, FittingSpec, GlassSpec } from '../../src/job/spec/finish.js';
import { STAGES, type Stage } from '../../src/job/spec/stage.js';
import type { Layup } from '../../src/layup/layup.js';
import type { Bare } from '../../src/weigh/bare.js';
import type { ChamberCut } from '../../src/weigh/cuts.js';
import { finVolume } from '../../src/weigh/fin.js';
import { ledgerOf, partsAt } from '../../src/weigh/ledger.js';
import { NO_MOMENTS, pointMoments, type Moments } from '../../src/weigh/moments.js';

/** Everything in one place each, so that a moment tells whose it is; litres, m² or m. */
const at = (amount: number, x: number): Moments => pointMoments(amount, x, 10);
type LedgerJob = Parameters<typeof ledgerOf>[5];
const foam = { name: 'foam', density: 20, source: '' };
const wood = { name: 'wood', density: 400, source: '' };
const fill = { name: 'fill', density: 12, source: '' };
const layup = { members: [{ material: foam }, { material: wood }, { material: foam }] } as unknown as Layup;
const bare = {
  length: 2000,
  members: [at(30, 900), at(4, 1000), at(36, 1100)],
  blank: { members: [at(40, 1000), at(5, 1000), at(45, 1000)], perMm: [at(1.2, 1000), at(0.3, 1000), at(1.5, 1000)] },
  bondedJoints: at(0.5, 700),
  dottedJoints: at(0.8, 800),
  skin: { deck: at(1.1, 950), bottom: at(1.3, 1050), apexLine: at(4.2, 1000) },
} as unknown as Bare;
const cuts = [
  {
    id: 'R1-01',
    members: [{ member: { material: foam }, moments: at(3, 600) }, { member: { material: wood }, moments: at(1, 600) }],
    whole: at(4, 600),
    walls: 0.2,
  },
  { id: 'R1-02', members: [{ member: { material: foam }, moments: at(2, 1200) }], whole: at(2, 1200), walls: 0.1 },
] as unknown as ChamberCut[]; // prettier-ignore
const blocks = [{ id: 'R1-01', volume: 3.9 }, { id: 'R1-02', volume: 1.8 }, { id: 'gone', volume: 7 }] as unknown as Block[]; // prettier-ignore
const glass: GlassSpec = {
  deck: [200, 160],
  bottom: [160],
  lap: 50,
  resin: 0.9,
  sealer: 110,
  hotCoat: 230,
  hotCoatCloth: 80,
};
const fins: FinSpec[] = [
  { name: 'fin', x: 1800, depth: 240, base: 190, tip: 120, thickness: 12, tipThickness: 6, density: 1900 },
];
const fittings = [{ weight: 0.3, x: 500 }, { weight: 0.1, x: 1500 }] as unknown as FittingSpec[]; // prettier-ignore

const ledger = ledgerOf(bare, [], layup, cuts, blocks, { fill, glass, fins, fittings } as unknown as LedgerJob);
const part = (id: string, stage: Stage, of = ledger) => partsAt(of, stage)[of.unknowns.findIndex((u) => u.id === id)]!;
const close = (found: Moments, amount: number, x: number) => {
  expect(found.amount).toBeCloseTo(amount, 12);
  expect(found.x).toBeCloseTo(x, 9);
};
const SHAPED = STAGES.slice(STAGES.indexOf('shaped'));
const before = (stage: Stage) => STAGES.slice(0, STAGES.indexOf(stage));
const from = (stage: Stage) => STAGES.slice(STAGES.indexOf(stage));

/** All by hand: litres times kg/m³ and m² times g/m² are grams. */
test('wood and foam are the blank, then the shaped board, then less what is routed', () => {
  close(part('material:foam', 'blank'), 0.085, 85);
  close(part('material:wood', 'blank'), 0.005, 5);
  close(part('material:foam', 'shaped'), 0.066, 0.03 * 900 + 0.036 * 1100);
  close(part('material:wood', 'shaped'), 0.004, 4);
  for (const stage of from('chambered')) {
    close(part('material:foam', stage), 0.061, 0.03 * 900 + 0.036 * 1100 - 0.003 * 600 - 0.002 * 1200);
    close(part('material:wood', stage), 0.003, 4 - 0.6);
  }
});

test('what is left over weighs as its strip does, then as the board does on the whole, and only until it is gone', () => {
  const density = (66 * 20 + 4 * 400) / 70;
  close(part('blankOver', 'blank'), (2.7 * 20 + 0.3 * 400) / 1000, 174);
  for (const stage of SHAPED) close(part('blankOver', stage), 0, 0);
  for (const stage of ['shaped', 'chambered', 'filled'] as const)
    close(part('leftOn', stage), (2.4 * density) / 1000, (density / 1000) * (1.1 * 950 + 1.3 * 1050));
  for (const stage of [...before('shaped'), ...from('sealed')]) close(part('leftOn', stage), 0, 0);
});

test('what the router takes too much is the walls, in the stuff they stand in, taken off', () => {
  // Of 6 litres routed 5 are foam and 1 is wood.
  const density = (5 * 20 + 1 * 400) / 6;
  for (const stage of from('chambered'))
    close(part('routed', stage), (-0.3 * density) / 1000, (-density / 1000) * (0.2 * 600 + 0.1 * 1200));
  for (const stage of before('chambered')) close(part('routed', stage), 0, 0);
});

test('blocks are put in as large as they are, where their chambers lie; one without a chamber nowhere', () => {
  for (const stage of from('filled')) close(part('material:fill', stage), 0.0057, 0.0039 * 600 + 0.0018 * 1200);
  close(part('material:fill', 'chambered'), 0, 0);
});

test('glue is bonded joints first, dotted ones and walls with the blocks', () => {
  for (const stage of before('filled')) close(part('jointGlue', stage), 0.0005, 0.35);
  for (const stage of from('filled')) {
    close(part('jointGlue', stage), 0.0013, 0.35 + 0.64);
    close(part('blockGlue', stage), 0.0003, 0.0002 * 600 + 0.0001 * 1200);
  }
  close(part('blockGlue', 'chambered'), 0, 0);
});

test('glass is its layers and laps, what drinks resin its share, coats their weight a square metre', () => {
  const skin = 1.1 * 950 + 1.3 * 1050;
  for (const stage of from('sealed')) close(part('sealer', stage), 0.264, 0.11 * skin);
  // A lap of 50 mm on 4.2 m of rail is 0.21 m².
  const [deck, bottom] = [(1.1 + 0.21) * 0.36, (1.3 + 0.21) * 0.16];
  const x = (1.1 * 950 + 210) * 0.36 + (1.3 * 1050 + 210) * 0.16;
  close(part('cloth', 'laminated'), deck + bottom, x);
  close(part('wetOut', 'laminated'), 0.9 * (deck + bottom), 0.9 * x);
  for (const stage of from('hot-coated')) {
    close(part('cloth', stage), deck + bottom + 2.4 * 0.08, x + 0.08 * skin);
    close(part('wetOut', stage), 0.9 * (deck + bottom + 2.4 * 0.08), 0.9 * (x + 0.08 * skin));
    close(part('hotCoat', stage), 2.4 * 0.23, 0.23 * skin);
  }
  close(part('sanded', 'finished'), -0.0024, -skin / 1000);
  for (const [id, stage] of [
    ['sealer', 'sealed'],
    ['cloth', 'laminated'],
    ['wetOut', 'laminated'],
    ['hotCoat', 'hot-coated'],
    ['sanded', 'finished'],
  ] as const)
    for (const early of before(stage)) close(part(id, early), 0, 0);
});

test('fins and fittings weigh what they do where they stand', () => {
  const fin = (finVolume(fins[0]!) * 1900) / 1000;
  for (const stage of from('fitted')) {
    close(part('fins', stage), fin, fin * 1800);
    close(part('fittings', stage), 0.4, 0.3 * 500 + 0.1 * 1500);
  }
  for (const stage of before('fitted')) for (const id of ['fins', 'fittings']) close(part(id, stage), 0, 0);
});

test('a board without chambers, fins or fittings has none of theirs; every stuff is there once', () => {
  const plain = ledgerOf(bare, [], layup, [], [], { fill, glass } as unknown as LedgerJob);
  for (const id of ['routed', 'blockGlue', 'fins', 'fittings', 'material:fill'])
    close(part(id, 'finished', plain), 0, 0);
  expect(plain.unknowns.filter(({ id }) => id.startsWith('material:')).map(({ id }) => id)).toEqual([
    'material:foam',
    'material:wood',
    'material:fill',
  ]);
  const units = new Map(ledger.unknowns.map(({ id, unit }) => [id, unit]));
  expect(['material:wood', 'routed', 'blockGlue', 'cloth'].map((id) => units.get(id))).toEqual([
    'kg/m³',
    'mm',
    'g/m²',
    'share',
  ]);
  expect(NO_MOMENTS).toEqual({ amount: 0, x: 0, xx: 0, yy: 0 });
});
