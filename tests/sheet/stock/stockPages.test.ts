import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planOf } from '../../../src/plan.js';
import { profileSheets } from '../../../src/sheet/stock/profileSheet.js';
import { stockPages } from '../../../src/sheet/stock/stockPages.js';
import { sayStock } from '../../../src/view/sayStock.js';
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
    expect(short.map(([from]) => from)).toEqual(['800 – 1000 mm', '1000 – 1200 mm', '1000 – 1200 mm']);
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

  // By hand: of a 22 mm plank two leaves of 9.5 mm with a saw cut of 3 mm between them, each planed by 1.5 mm to 8 mm;
  // 2 · 9.5 + 3 = 22, nothing to spare. Planks of 150 mm hold one stringer each.
  it('tell how a plank is resawn, so that leaves, cuts and what is over add up to it', () => {
    const text = readFileSync('samples/beck-guard.yaml', 'utf8').replace(
      'width: 250, thickness: 22',
      'width: 150, thickness: 22',
    );
    const [plank] = stockPages(planOf(readText(text).job!)).filter(({ title }) => title === 'Sawing plank 1');
    expect(plank?.kind === 'figure' && plank.notes).toEqual([
      'paulownia, 22 mm × 150 mm × 3100 mm, resawn into 2 leaves of 9.5 mm, 3 mm of kerf between them, 0 mm to spare; ' +
        'each leaf is planed down to 8 mm; drawn one below the other. Between the parts 3 mm at least for the saw; ' +
        'each is turned to the narrowest straight board that holds it. Nose to the left.',
    ]);
    const [whole] = stockPages(plan).filter(({ title }) => title === 'Sawing plank 1');
    expect(JSON.stringify(whole)).toContain('not resawn, planed from 22 mm down to 8 mm');
  });

  // Ten feet of 1 x 10 are 100 / 12 board feet; 22 mm by 250 mm by 3100 mm are counted as 1 in by 9.84 in by 10.17 ft.
  it('say by what size lumber is counted, and add up to what the report says', () => {
    const list = stockPages(plan).find(({ title }) => title === 'Lumber');
    if (list?.kind !== 'table') throw new Error('no list');
    const rows = list.rows.flatMap((each) => (each.kind === 'row' ? [each.cells] : []));
    expect(rows.map((cells) => cells[4])).toEqual(['1 × 9.84 in', '1 × 10 in']);
    const feet = rows.map((cells) => (cells[5] as { value: number }).value);
    expect(feet).toEqual([8.34, 8.33]);
    expect(list.columns[5]!.total!(feet[0]! + feet[1]!)).toBe('16.67');
    expect(sayStock(plan.stock!, plan.job.stock!, 'mm').join('\n')).toContain('16.67 board feet, costs 117.14');
    const price = rows.reduce((sum, cells) => sum + (cells[6] as { value: number }).value, 0);
    expect(list.columns[6]!.total!(price)).toBe('117.14');
    expect(list.notes!.join(' ')).toContain('thinner than an inch counts as an inch');
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
