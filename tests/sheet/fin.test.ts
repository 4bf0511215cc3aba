import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sayFin } from '../../src/fin/sayFin.js';
import { planOf, type Plan } from '../../src/plan.js';
import { labelStocks } from '../../src/print/paper/labelStock.js';
import { dxfOf } from '../../src/print/dxf/dxf.js';
import { svgOf } from '../../src/print/svg/svg.js';
import { finPages } from '../../src/sheet/fin/finPages.js';
import { finSheets } from '../../src/sheet/fin/finSheets.js';
import type { TextPage } from '../../src/sheet/pages.js';
import { planView } from '../../src/sheet/plan/planView.js';
import { papersOf } from '../../src/papers/papers.js';
import { readText } from '../job/readSample.js';

const sample = readFileSync('samples/beck-guard.yaml', 'utf8');
const planned = (text = sample): Plan => planOf(readText(text).job!);
const plan = planned();

/** Rows of a table of the page by its heading, as they are read. */
function rowsUnder(of: Plan, title: string): string[][] {
  const [page] = finPages(of) as [TextPage];
  const from = page.blocks.findIndex((block) => block.kind === 'heading' && block.text === title);
  const table = page.blocks.slice(from).find((block) => block.kind === 'table');
  if (table?.kind !== 'table') throw new Error('no table');
  return table.rows.flatMap((row) =>
    row.kind === 'row' ? [row.cells.map((cell) => (typeof cell === 'object' ? cell.text : String(cell)))] : [],
  );
}

describe('the papers of a fin', () => {
  it('are there where the job has one to build, and only there', () => {
    const names = (of: Plan) => papersOf(of, { labelStock: labelStocks[0]! }).map(({ name }) => name);
    expect(names(plan)).toContain('fin');
    expect(names(planned(sample.replace(/^ {4}build:\n(?: {6}.*\n)+/m, '')))).not.toContain('fin');
  });

  // The fin of the sample is 215 mm deep; its blank has 30 mm below and 10 mm above, in front and behind of a base of
  // 200 mm whose trailing edge comes up to 205 mm at its farthest. Read back from the files.
  it('have its outline and its blank at full size in SVG and DXF', () => {
    const [outline] = finSheets(plan);
    const [, high] = /height="([\d.]+)mm"/.exec(svgOf(outline!))!;
    expect(Number(high)).toBeGreaterThanOrEqual(255);
    const made = dxfOf(outline!);
    if (!('dxf' in made)) throw new Error('no DXF');
    const ys = [...made.dxf.matchAll(/^ *20\r?\n *(-?[\d.]+)/gm)].map(([, y]) => Number(y));
    expect(ys).toContain(215);
    expect(ys).toContain(-30);
    expect(ys).toContain(225);
  });

  // The sample's tab is 30 mm deep, as long as the base of 200 mm, and stays on until the fin is set.
  it('saw around the tab, and not along the base line', () => {
    const [outline] = finSheets(plan);
    const cut = outline!.shapes.flatMap((shape) => (shape.kind === 'path' && shape.layer === 'cut' ? [shape] : []));
    expect(cut).toHaveLength(1);
    const { vertices } = cut[0]!;
    const low = vertices.filter(({ y }) => y < -1).map(({ x, y }) => [x, y]);
    expect(low.sort(([a], [b]) => a! - b!)).toEqual([
      [0, -30],
      [200, -30],
    ]);
    vertices.forEach(({ x, y }, i) => {
      const next = vertices[(i + 1) % vertices.length]!;
      expect(y === 0 && next.y === 0 && Math.abs(next.x - x) > 1).toBe(false);
    });
  });

  it('tell of each line the same in the legend and in the words', () => {
    const [outline] = finSheets(plan);
    const [, said] = outline!.legend!.find(([layer]) => layer === 'cut')!;
    for (const words of [said, outline!.notes.join(' ')])
      expect(words).toMatch(/saw just outside it, (?:then )?sand to it/);
    for (const sheet of finSheets(plan)) expect(JSON.stringify(sheet.legend)).not.toContain('cut to this line');
  });

  it('have a template for every station, as long as the chord between its two ends', () => {
    const [, foil] = finSheets(plan);
    expect(foil!.apart!).toHaveLength(plan.fins[0]!.sections.length);
    foil!.apart!.forEach(({ shapes }, i) => {
      const [card] = shapes;
      if (card?.kind !== 'path') throw new Error('no card');
      const { x, y } = card.vertices[1]!;
      const end = card.vertices.filter((vertex) => Math.abs(vertex.y - y) < 1e-9).map((vertex) => vertex.x - x);
      expect(end.some((along) => Math.abs(along - plan.fins[0]!.sections[i]!.length) < 1e-6)).toBe(true);
    });
  });

  // By hand: the layers come to 10 · 280 / (2540 · 0.4) + 14 = 16.756 mm; off the sled 15 mm at the base and 6 mm at
  // the tip; θ = atan(4.5 / 215): tip's block higher by 215 sin θ = 4.499 and by twice that; openings
  // 10 + (16.756 + 15) / 2 · cos θ = 25.874 and 10 + 15 cos θ = 24.997.
  it('say how the sled is set, to a hundredth of a millimetre', () => {
    expect(rowsUnder(plan, 'Taper sled')).toEqual([
      ['first', '10.00 mm', '14.50 mm', '25.87 mm', '15.88 mm', '11.38 mm', '5.59 mm', '14'],
      ['second', '10.00 mm', '19.00 mm', '25.00 mm', '15.00 mm', '6.00 mm', '5.59 mm', '14'],
    ]);
  });

  it('set the sled by the blank as it was measured, half of the difference on the first side', () => {
    const measured = planned(sample.replace('      over: 10', '      blankThick: 17.2\n      over: 10'));
    const [first, second] = rowsUnder(measured, 'Taper sled');
    // 10 + (17.2 + 15) / 2 · cos θ = 26.096.
    expect(first![3]).toBe('26.10 mm');
    expect(first![4]).toBe('16.10 mm');
    expect(second!.slice(1, 6)).toEqual(['10.00 mm', '19.00 mm', '25.00 mm', '15.00 mm', '6.00 mm']);
  });

  it('say in thousandths of an inch where the shop works in inches', () => {
    const inches = planOf({ ...plan.job, units: 'in' });
    expect(rowsUnder(inches, 'Taper sled')[0]!.slice(1, 4)).toEqual(['0.394 in', '0.571 in', '1.019 in']);
  });

  it('say the same as the report at the terminal', () => {
    const [first, second] = rowsUnder(plan, 'Taper sled');
    const lines = sayFin(plan.fins[0]!, 'mm');
    for (const [i, side] of [first!, second!].entries())
      expect(lines[2 + i]).toContain(`block at the tip ${side[2]}, opening ${side[3]}, ${side[7]} passes`);
    expect(lines[1]).toContain(`block at the base ${first![1]}`);
  });

  it('mix resin for the cloth and for what stays in the pot', () => {
    const [cloth] = rowsUnder(plan, 'Lay-up and glue-up');
    // 10 layers of 285 × 255 mm at 280 g/m² weigh 203.5 g; at 40 % of the volume resin weighs 0.6791 of it; 15 % more.
    expect(cloth!.slice(1)).toEqual(['10', '285 mm × 255 mm', '', '203 g', '159 g']);
  });

  it('tell a fin that is flat on one side of that side alone', () => {
    const flat = planned(
      sample.replace('section: symmetric', 'section: flatInside').replace('thickness: 7}', 'thickness: 13}'),
    );
    const [page] = finPages(flat) as [TextPage];
    const steps = page.blocks.flatMap((block) => (block.kind === 'list' ? block.items : [])).join(' ');
    expect(steps).toContain('on the side to be foiled alone');
    expect(steps).not.toMatch(/both sides|one side after the other|all four edges/);
    expect(rowsUnder(flat, 'Taper sled').map(([side]) => side)).toEqual(['the foiled one']);
    const symmetric = finPages(plan)[0] as TextPage;
    expect(JSON.stringify(symmetric.blocks)).toContain('one side after the other');
  });

  it('stand on the plan where they stand on the board: their base, and a cross at the tip', () => {
    const pair = planned(sample.replace('      fillet:', '      stands: {both: 90, cant: 4, toe: 2}\n      fillet:'));
    const lines = planView(pair).shapes.flatMap((shape) =>
      shape.kind === 'path' && shape.layer === 'mark' ? [shape.vertices.map(({ x, y }) => [x, y])] : [],
    );
    for (const { front, back, tip } of pair.fins[0]!.standing) {
      expect(lines).toContainEqual([[...front], [...back]]);
      expect(lines.some(([a, b]) => a![1] === tip[1] && (a![0]! + b![0]!) / 2 === tip[0])).toBe(true);
    }
    expect(planView(pair).notes.join(' ')).toContain('a fin: its base');
    expect(planView(planned(sample.replace(/^ {4}build:\n(?: {6}.*\n)+/m, ''))).notes.join(' ')).not.toContain(
      'a fin:',
    );
  });

  it('foil as published: 14 mm at three tenths of the chord, and 0.7803 of it at a tenth', () => {
    const [base] = rowsUnder(plan, 'Foil');
    // NACA 0012 has 4.683 % at 10 % and 6.002 % at 30 %, from memory: 14 mm · 4.683 / 6.
    expect(base!.slice(0, 4)).toEqual(['0', '200', '10.93', '14.00']);
  });
});
