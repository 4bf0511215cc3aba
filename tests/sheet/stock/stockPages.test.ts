import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planOf } from '../../../src/plan.js';
import { profileSheets } from '../../../src/sheet/stock/profileSheet.js';
import { stockPages } from '../../../src/sheet/stock/stockPages.js';
import { placed, unplaced } from '../../../src/stock/placement.js';
import { readText } from '../../job/readSample.js';
import { plumb } from '../../stock/plumb.js';
import { offBy, READERS } from '../readBack.js';

const plan = planOf(readText(readFileSync('samples/beck-guard.yaml', 'utf8')).job!);

describe('the papers of the stock', () => {
  it('draw every stringer once, those that are alike together', () => {
    expect(profileSheets(plan).map(({ title }) => title)).toEqual(['Profile ML3 MR3', 'Profile MC']);
  });

  // The centre stringer's finished bottom and deck are the job's own figures at every station; its outline has 25 mm at
  // each end.
  it.each(Object.entries(READERS))('have every height of the job when they are read back from %s', async (_, read) => {
    const [, centre] = profileSheets(plan);
    const off = offBy(await read(centre!), centre!);
    for (const { x, bottom, thickness } of plan.job.board.profile) {
      expect(off(x, bottom), `bottom at ${x}`).toBeLessThan(0.05);
      expect(off(x, bottom + thickness), `deck at ${x}`).toBeLessThan(0.05);
    }
    expect(off(-25, 130)).toBeLessThan(0.05);
    expect(off(2925, 70)).toBeLessThan(0.05);
  });

  it('say of each stretch what comes off and where the blank is short', () => {
    const [table, list] = stockPages(plan).filter(({ kind }) => kind === 'table');
    const sawing = stockPages(plan).filter(({ title }) => title.startsWith('Sawing'));
    if (table?.kind !== 'table' || list?.kind !== 'table') throw new Error('no tables');
    const short = table.rows.flatMap((each) =>
      each.kind === 'row' && each.cells.at(-1) === 'SHORT' ? [each.cells] : [],
    );
    expect(short.map(([from]) => from)).toEqual(['1000 – 1200 mm', '1000 – 1200 mm']);
    expect(list.rows.length).toBe(plan.stock!.lumber!.planks.length);
    expect(sawing.map(({ kind }) => kind)).toEqual(list.rows.map(() => 'figure'));
  });

  // Reference: a plumb line through the blank's mesh beside joint JR1 every 20 mm, against the finished board and the
  // 4 mm that stringers are milled over it; 2 mm are to stay. Where foam is lower the power planer has no business.
  it('take a stringer down by itself where it stands proud of the foam, and never below what is to stay', () => {
    const [table] = stockPages(plan).filter(({ kind }) => kind === 'table');
    if (table?.kind !== 'table') throw new Error('no table');
    const from = table.rows.findIndex((each) => each.kind === 'heading' && each.text === 'MC');
    const to = table.rows.findIndex((each, i) => i > from && each.kind === 'heading');
    const rows = table.rows.slice(from + 1, to).flatMap((each) => (each.kind === 'row' ? [each.cells] : []));
    const { moulded, fits, strips } = plan.stock!.blank!;
    const { placement } = fits[0]!;
    const joint = plan.layup.joints.find(({ id }) => id === 'JR1')!;
    const y = joint.at - strips.find(({ member }) => member.left === joint)!.moved.at + 0.01;
    const { surface, length } = plan.board;
    const proud = (x: number, side: 'deck' | 'bottom') => {
      const wood = surface.bottom(x) + (side === 'deck' ? surface.thickness(x) + 4 : -4);
      const [px] = placed(placement, length)(x, wood);
      const foam = plumb(moulded.mesh, px, y).map((z) => unplaced(placement, length)(px, z)[1]);
      return side === 'deck' ? wood - Math.max(...foam) : Math.min(...foam) - wood;
    };
    const ends = rows.map(([stretch]) => String(stretch).replace(' mm', '').split(' – ').map(Number));
    expect(ends[0]![0]).toBe(0);
    expect(ends.at(-1)![1]).toBe(2900);
    rows.forEach((cells, i) => {
      const [begin, end] = ends[i] as [number, number];
      if (i > 0) expect(begin).toBe(ends[i - 1]![1]);
      for (const [column, side] of [
        [2, 'deck'],
        [4, 'bottom'],
      ] as const) {
        const [, alone = '0', withFoam = '0'] =
          /^(?:([\d.]+)(?: mm)? alone)?(?: \+ )?(?:([\d.]+) mm(?: with foam)?)?$/.exec(String(cells[column]))!;
        expect(Number(alone) + Number(withFoam)).toBeCloseTo(4 - 2, 6);
        let most = 0;
        for (let x = Math.max(begin, 5); x <= Math.min(end, 2895); x += 20) most = Math.max(most, proud(x, side));
        expect(Math.abs(Number(alone) - Math.min(2, most)), `${side} from ${String(cells[0])}`).toBeLessThan(0.2);
      }
    });
    expect(rows.map((cells) => cells[2])).toContain('2 mm alone');
    expect(rows.map((cells) => cells[2])).toContain('2 mm with foam');
  });

  // The deck is short at two places, the bottom at one; on the deck both halves have a ring each.
  it('ring every short place on the side it is on, left and right where they are alike', () => {
    const rings = stockPages(plan).flatMap((page) =>
      page.kind === 'figure'
        ? [{ title: page.title, count: page.drawing.shapes.filter(({ kind }) => kind === 'circle').length }]
        : [],
    );
    const short = plan.stock!.blank!.short.map(({ side }) => side);
    const on = (what: string) =>
      rings.filter(({ title }) => title.includes(what)).reduce((sum, { count }) => sum + count, 0);
    expect(on('off the deck')).toBe(2 * short.filter((side) => side === 'deck').length);
    expect(on('off the bottom')).toBe(2 * short.filter((side) => side === 'bottom').length);
    expect(on('from the side')).toBe(short.length);
  });

  // From a metre away one line is heavy, and no upright runs from edge to edge as if it were to be sawn.
  it('have one line to mill to, told on the line and in the legend, and short marks at the stations', () => {
    for (const { shapes, legend, captions = [] } of profileSheets(plan)) {
      const paths = shapes.flatMap((shape) => (shape.kind === 'path' ? [shape] : []));
      expect(paths.filter(({ layer }) => layer === 'cut').map(({ closed }) => closed)).toEqual([true]);
      expect(legend?.find(([layer]) => layer === 'cut')?.[1]).toBe('mill to this line');
      const words = captions.map(({ places }) => JSON.stringify([...places][0]));
      expect(words.filter((each) => each.includes('mill to this line')).length).toBeGreaterThan(20);
      const marks = paths.filter(({ layer }) => layer === 'mark');
      expect(marks.length).toBeGreaterThanOrEqual(2 * 11);
      for (const { vertices } of marks) expect(Math.abs(vertices[1]!.y - vertices[0]!.y)).toBeLessThan(14.001);
      const ends = words.filter((each) => /"(?:NOSE|TAIL)"/.test(each));
      expect(ends).toHaveLength(2);
    }
  });

  // The scarf of an 8 mm stringer at 1 in 12 is 96 mm long.
  it('mark on the profile where a stringer too long for its planks is scarfed', () => {
    const text = readFileSync('samples/beck-guard.yaml', 'utf8').replace(
      'length: 3100, count: 2',
      'length: 1700, count: 4',
    );
    const scarfed = planOf(readText(text).job!);
    const [outer] = profileSheets(scarfed);
    const words = JSON.stringify(outer!.captions);
    const [, from, to] = /ML3 MR3: scarf 1 in 12 from ([\d.]+) mm to ([\d.]+) mm/.exec(words)!;
    expect(Number(to) - Number(from)).toBeCloseTo(96, 6);
    const marks = outer!.shapes.flatMap((s) => (s.kind === 'path' && s.layer === 'joint' ? [s.vertices[0]!.x] : []));
    expect(marks.map((x) => x.toFixed(1))).toEqual([from, to]);
  });

  it('print what they can of a blank that a strip is not in', () => {
    const text = readFileSync('samples/beck-guard.yaml', 'utf8').replace(
      /^ {6}- \[(\d+), (\d+)\]$/gm,
      (_, x, y) => `      - [${x}, ${Math.min(120, Number(y))}]`,
    );
    const narrow = { ...plan.job.stock!, blank: readText(text).job!.stock!.blank! };
    const pages = stockPages(planOf({ ...plan.job, stock: narrow }));
    expect(pages.filter(({ kind }) => kind === 'figure').length).toBeGreaterThan(4);
  });

  it('are none of a board whose job lists no stock', () => {
    expect(stockPages({ ...plan, stock: undefined } as never)).toEqual([]);
  });
});
