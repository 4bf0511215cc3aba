import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseLength } from '../../../src/length/length.js';
import { planOf } from '../../../src/plan.js';
import { glueUpPages } from '../../../src/sheet/stock/glueUpPages.js';
import type { TablePage } from '../../../src/sheet/pages.js';
import { glueUpGlue, jointGlue } from '../../../src/view/jointGlue.js';
import { placed, unplaced } from '../../../src/stock/placement.js';
import { readText } from '../../job/readSample.js';
import { plumb } from '../../stock/plumb.js';
import { planOfSample } from '../sample.js';

const plan = planOf(readText(readFileSync('samples/beck-guard.yaml', 'utf8')).job!);
const tables = (of = plan) =>
  Object.fromEntries(
    glueUpPages(of)
      .filter((page): page is TablePage => page.kind === 'table')
      .map(({ title, rows }) => [
        title,
        rows.map((each) => (each.kind === 'row' ? each.cells : [each.text])).map((cells) => cells.map(said)),
      ]),
  );
const said = (cell: unknown) => (typeof cell === 'object' ? (cell as { text: string }).text : cell);
const inUnits = (units: 'mm' | 'in') => planOf({ ...plan.job, units });
/** A length as it stands on the paper, mm or in. */
const read = (cell: unknown, units: 'mm' | 'in'): number => {
  const length = parseLength(String(cell), units);
  if (!length.ok) throw new Error(`${String(cell)} is no length`);
  return length.value / (units === 'mm' ? 1 : 25.4);
};
const number = (cell: unknown) => Number(String(cell).replace(/ mm$/, ''));

describe('the dry run of the glue-up', () => {
  const found = tables();

  // By hand: in the middle the blank is 586 mm wide at most; stringers of 12, 8 and 8 mm come to it, five kerfs of
  // 3 mm go.
  it('adds up to the blank with its stringers and without its kerfs', () => {
    const rows = found['Dry run: members, left to right']!;
    expect(number(rows.at(-1)![4])).toBeCloseTo(586 + 28 - 15, 0);
    expect(rows).toHaveLength(plan.layup.members.length + 1);
  });

  // Stringers of 12 and 8 mm are no whole sixteenths; the sum is of what stands on the paper, in sixty-fourths.
  it.each(['mm', 'in'] as const)('is the sum of the widths over it, to the last digit, in %s', (units) => {
    const rows = tables(inUnits(units))['Dry run: members, left to right']!;
    for (const column of [3, 4, 5]) {
      const parts = rows.slice(0, -1).map((cells) => read(cells[column]!, units));
      const sum = parts.reduce((a, b) => a + b, 0);
      expect(read(rows.at(-1)![column]!, units)).toBeCloseTo(sum, 6);
    }
  });

  // The marks of the profiles are 250 mm or a foot apart, from the nose tip.
  it.each([
    ['mm', 'at 750 mm, at 1500 mm, at 2250 mm'],
    ['in', 'at 24 in, at 60 in, at 84 in'],
  ] as const)('is measured where the profiles have a mark, in %s', (units, stations) => {
    const page = glueUpPages(inUnits(units)).find(({ title }) => title === 'Dry run: members, left to right');
    expect(
      (page as TablePage).columns
        .slice(3)
        .map(({ title }) => title)
        .join(', '),
    ).toBe(stations);
  });

  // Reference: a plumb line through every triangle of the two meshes beside joint JR1; the stringer is milled 4 mm over
  // the deck, square to a deck that hardly slopes there.
  it('tells how high the foam stands over a stringer', () => {
    const row = found['Dry run: heights of neighbours']!.find(([joint]) => joint === 'JR1')!;
    const { moulded, fits, strips } = plan.stock!.blank!;
    const { placement } = fits[0]!;
    const joint = plan.layup.joints.find(({ id }) => id === 'JR1')!;
    const strip = strips.find(({ member }) => member.left === joint)!;
    [750, 1500, 2250].forEach((x, i) => {
      const finished = Math.max(...plumb(plan.board.mesh, x, 0.01));
      const [px] = placed(placement, plan.board.length)(x, finished);
      const foam = Math.max(...plumb(moulded.mesh, px, joint.at - strip.moved.at + 0.01));
      const [, z] = unplaced(placement, plan.board.length)(px, foam);
      expect(Math.abs(number(row[2 + i]) - (z - finished - 4))).toBeLessThan(0.1);
    });
  });

  // Reference: joint JR1 cut across every 10 mm: the stringer 4 mm over and under the finished board and 25 mm beyond
  // its ends, the foam by plumb lines through the blank; glue lies where both are. 150 g/m² (industrial spread, from
  // memory) and a fifth of it lost.
  it('has the length of the joint as it is milled, and glue for that', () => {
    const row = found['Glue, joint by joint']!.find(([joint]) => joint === 'JR1')!;
    const { moulded, fits, strips } = plan.stock!.blank!;
    const { placement } = fits[0]!;
    const joint = plan.layup.joints.find(({ id }) => id === 'JR1')!;
    const y = joint.at - strips.find(({ member }) => member.left === joint)!.moved.at + 0.01;
    const { surface, length } = plan.board;
    let [area, long] = [0, 0];
    for (let x = -95; x < length + 100; x += 10) {
      if (x < -25 || x > length + 25) continue;
      const at = Math.min(length - 0.1, Math.max(0.1, x));
      const wood = [surface.bottom(at) - 4, surface.bottom(at) + surface.thickness(at) + 4] as const;
      const [px] = placed(placement, length)(x, wood[0]);
      const foam = plumb(moulded.mesh, px, y).map((z) => unplaced(placement, length)(px, z)[1]);
      if (foam.length === 0) continue;
      long += 10;
      area += 10 * Math.max(0, Math.min(wood[1], ...[Math.max(...foam)]) - Math.max(wood[0], Math.min(...foam)));
    }
    expect(long).toBeGreaterThan(length + 20);
    expect(Math.abs(number(row[2]) - long)).toBeLessThan(12);
    expect(Math.abs(Number(String(row[4]).replace(' g', '')) - (area / 1e6) * 150 * 1.2)).toBeLessThan(1.5);
  });

  // What the list says of each bonded joint is poured: 1 g or 0.1 oz, and the book tells their sum.
  it.each([
    ['mm', / g$/],
    ['in', / oz$/],
  ] as const)('adds up to the glue that the book asks for, in %s', (units, unit) => {
    const of = inUnits(units);
    const list = tables(of)['Glue, joint by joint']!;
    const bonded = list
      .filter(([joint, , , dots]) => /^J/.test(String(joint)) && dots === '')
      .map((cells) => String(cells[4]));
    expect(bonded.every((each) => unit.test(each))).toBe(true);
    const sum = bonded.reduce((all, each) => all + Number(each.replace(unit, '')), 0);
    const grams = jointGlue(of, 'bonded', glueUpGlue);
    // 453.59237 g in a pound, 16 oz to it.
    expect(sum).toBeCloseTo(units === 'mm' ? grams : grams / (453.59237 / 16), 6);
  });

  it('has clamps from the middle outward, no further apart than the job asks', () => {
    const rows = found['Clamps']!;
    expect(rows).toHaveLength(4);
    for (const [, count, places] of rows) {
      const xs = String(places).split(', ').map(number);
      expect(xs).toHaveLength(Number(count));
      const off = xs.map((x) => Math.abs(x - (Math.min(...xs) + Math.max(...xs)) / 2));
      off.slice(1).forEach((each, i) => expect(each).toBeGreaterThan(off[i]! - 15));
      const along = [...xs].sort((a, b) => a - b);
      along.slice(1).forEach((x, i) => expect(x - along[i]!).toBeLessThanOrEqual(plan.job.blocks.glue.clampSpacing));
    }
  });

  it('bonds the piece at the centre first and dots last, and every joint once', () => {
    const names = found['Glue, joint by joint']!.map(([first]) => String(first));
    expect(names[0]).toMatch(/^Bond piece PC/);
    expect(names.filter((name) => /^J/.test(name)).sort()).toEqual(plan.layup.joints.map(({ id }) => id).sort());
    expect(names.findIndex((name) => name.startsWith('Dots'))).toBe(names.length - 3);
  });

  it('of a board without stock leaves out what only stock can tell', () => {
    const without = tables(planOfSample('mere-prone'));
    expect(Object.keys(without)).not.toContain('Dry run: heights of neighbours');
    expect(without['Dry run: members, left to right']!.at(-1)!.slice(3)).toEqual(['', '', '']);
  });
});
