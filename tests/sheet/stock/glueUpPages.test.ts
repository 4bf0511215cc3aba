import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planOf } from '../../../src/plan.js';
import { glueUpPages } from '../../../src/sheet/stock/glueUpPages.js';
import type { TablePage } from '../../../src/sheet/pages.js';
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
const number = (cell: unknown) => Number(String(cell).replace(/ mm$/, ''));

describe('the dry run of the glue-up', () => {
  const found = tables();

  // By hand: in the middle the blank is 586 mm wide at most; stringers of 12, 8 and 8 mm come to it, five kerfs of
  // 3 mm go.
  it('adds up to the blank with its stringers and without its kerfs', () => {
    const rows = found['Dry run: members, left to right']!;
    const sum = rows.at(-1)!;
    expect(number(sum[4])).toBeCloseTo(586 + 28 - 15, 0);
    for (const column of [3, 4, 5]) {
      const parts = rows.slice(0, -1).reduce((all, cells) => all + number(cells[column]), 0);
      expect(Math.abs(parts - number(sum[column]))).toBeLessThan(0.5);
    }
    expect(rows).toHaveLength(plan.layup.members.length + 1);
  });

  // Reference: a plumb line through every triangle of the two meshes beside joint JR1; the stringer is milled 4 mm over
  // the deck, square to a deck that hardly slopes there.
  it('tells how high the foam stands over a stringer', () => {
    const row = found['Dry run: heights of neighbours']!.find(([joint]) => joint === 'JR1')!;
    const { moulded, fits, strips } = plan.stock!.blank!;
    const { placement } = fits[0]!;
    const joint = plan.layup.joints.find(({ id }) => id === 'JR1')!;
    const strip = strips.find(({ member }) => member.left === joint)!;
    [725, 1450, 2175].forEach((x, i) => {
      const finished = Math.max(...plumb(plan.board.mesh, x, 0.01));
      const [px] = placed(placement, plan.board.length)(x, finished);
      const foam = Math.max(...plumb(moulded.mesh, px, joint.at - strip.moved.at + 0.01));
      const [, z] = unplaced(placement, plan.board.length)(px, foam);
      expect(Math.abs(number(row[2 + i]) - (z - finished - 4))).toBeLessThan(0.4);
    });
  });

  // By hand: at the joint beside the centre the face is as long as the board, and as high as it is thick there and 4 mm
  // above and below; 150 g/m² (industrial spread, from memory) and a fifth of it lost.
  it('asks for glue by the area of the face', () => {
    const row = found['Glue, joint by joint']!.find(([joint]) => joint === 'JR1')!;
    const { surface, length } = plan.board;
    let area = 0;
    for (let i = 0; i < 290; i++) area += 10 * (surface.thickness(10 * i + 5) + 8);
    expect(length).toBe(2900);
    expect(Math.abs((row[4] as number) - (area / 1e6) * 150 * 1.2)).toBeLessThan(1.5);
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
