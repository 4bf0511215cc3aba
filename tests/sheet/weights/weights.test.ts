import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { planOf } from '../../../src/plan.js';
import { csvOf } from '../../../src/print/csv.js';
import type { Drawing, PathShape, TextShape } from '../../../src/sheet/drawing.js';
import { weightsChart } from '../../../src/sheet/weights/weightsChart.js';
import { sayFinding } from '../../../src/finding/say.js';
import { questionedFindings } from '../../../src/verdict/questioned.js';
import { weightPages, weightRows } from '../../../src/sheet/weights/weightsPages.js';
import type { TableRow } from '../../../src/sheet/pages.js';
import { heelTables } from '../../../src/sheet/weights/weightsHeel.js';
import { stiffnessChart } from '../../../src/sheet/weights/weightsStiffness.js';
import { targetChart, targetPage } from '../../../src/sheet/weights/weightsTarget.js';
import type { Steered } from '../../../src/steer/steer.js';
import { publishedOf } from '../../../src/view/result.js';
import { stiffnessOf } from '../../../src/weigh/stiffness.js';
import { pounds, tarn } from '../../weigh/tarn.js';

const job = {
  ...tarn(),
  weighings: [
    { stage: 'shaped' as const, weight: pounds(40), scale: 0.1 },
    { stage: 'chambered' as const, weight: pounds(41), scale: 0.1 },
  ],
};
const plan = planOf(job);
const stiffness = stiffnessOf(plan.board, plan.layup, plan.chambers, job);
const stagger = { asPlanned: stiffness, inLine: stiffness };
const point = (share: number, thinnest: number, lb: number) => ({
  share,
  thinnest,
  weight: pounds(lb),
  balance: 1700,
  chambers: 90,
});
const steered: Steered = {
  met: false,
  job,
  aim: 'weight',
  asked: pounds(35),
  reached: pounds(36),
  share: 0,
  thinnest: 10,
  curve: [point(0, 10, 36), point(1, 18, 40)],
  hinders: [{ lever: 'deckSkin', at: 'least' }],
};

const texts = ({ shapes }: Drawing) => shapes.filter((shape): shape is TextShape => shape.kind === 'text');
const paths = ({ shapes }: Drawing) => shapes.filter((shape): shape is PathShape => shape.kind === 'path');
/** Where on the axis at the left a value stands, by the ticks that are printed there. */
function heightOf(drawing: Drawing, lb: number): number {
  const ticks = texts(drawing).flatMap(({ text, y, align }) =>
    align === 'right' && /^[\d.]+ lb$/.test(text) ? [{ lb: Number.parseFloat(text), y }] : [],
  );
  const [a, b] = [ticks[0]!, ticks.at(-1)!];
  return a.y + ((lb - a.lb) / (b.lb - a.lb)) * (b.y - a.y);
}

describe('the table of the deck under a heel', () => {
  test('tells the weakest place of every row once, and the weakest of all by the figures that are published', () => {
    const { rows } = heelTables(plan)[0]!;
    const textsOf = (line: TableRow) =>
      line.kind === 'row' ? line.cells.map((cell) => (typeof cell === 'object' ? cell.text : `${cell}`)) : [];
    const [weakest, , ...others] = rows.map(textsOf);
    const { skins } = publishedOf(plan).underHeel;
    const worst = skins.reduce((a, b) => (b.empty > a.empty ? b : a));
    expect(weakest!.slice(1)).toEqual(expect.arrayContaining([worst.over.join(', '), worst.empty.toFixed(2)]));
    const told = others.flatMap(([what]) => what!.replace('weakest of ', '').split(', '));
    expect(told.sort()).toEqual([...new Set(plan.chambers.map(({ row }) => row))].sort());
    expect(new Set(others.map(([, over]) => over)).size).toBe(others.length);
  });
});

describe('the chart of stages', () => {
  const chart = weightsChart(plan);

  test('names every stage once', () => {
    for (const name of ['glued blank', 'shaped', 'chambered', 'filled and glued', 'finished']) {
      expect(texts(chart).filter(({ text }) => text === name)).toHaveLength(1);
    }
  });

  test('puts the ring of a weighing where the axis says, and crosses out the one that cannot be right', () => {
    const rings = chart.shapes.filter((shape) => shape.kind === 'circle');
    expect(rings.map(({ y }) => y)).toEqual([expect.closeTo(heightOf(chart, 40), 6)]);
    const crossed = paths(chart).filter(
      ({ closed, vertices: [a, b] }) =>
        !closed && Math.abs((a!.y + b!.y) / 2 - heightOf(chart, 41)) < 1e-6 && a!.y !== b!.y,
    );
    expect(crossed).toHaveLength(2);
  });

  test('draws each band from its low to its high', () => {
    const bands = paths(chart).filter(({ layer, hatch }) => layer === 'web' && hatch);
    expect(bands).toHaveLength(plan.weights.stages.length);
    plan.weights.stages.forEach(({ low, high }, i) => {
      const y = bands[i]!.vertices.map((vertex) => vertex.y);
      expect(Math.min(...y)).toBeCloseTo(heightOf(chart, low / pounds(1)), 6);
      expect(Math.max(...y)).toBeCloseTo(heightOf(chart, high / pounds(1)), 6);
    });
  });
});

test('the list of weights survives a spreadsheet: what is read back is what the plan says', () => {
  const read = Papa.parse<string[]>(csvOf(weightRows(plan)).replace('\ufeff', '').trim()).data;
  expect(read).toHaveLength(1 + plan.weights.stages.length);
  expect(new Set(read.map((row) => row.length)).size).toBe(1);
  plan.weights.stages.forEach(({ weight, low, high, balance }, i) => {
    const row = read[i + 1]!.map(Number);
    expect(row[1]).toBeCloseTo(weight, 3);
    expect(row[2]).toBeCloseTo(low, 3);
    expect(row[3]).toBeCloseTo(high, 3);
    expect(row[6]).toBeCloseTo(balance.x, 0);
    expect(row.slice(8).reduce((sum, part) => sum + part, 0)).toBeCloseTo(weight, 2);
  });
});

test('a weighing that cannot be right is said with what, against what and what was expected', () => {
  expect(questionedFindings(plan).map(sayFinding)).toEqual([
    expect.stringMatching(
      /^chambered: 41\.0 lb is more than the 40\.0 lb of "shaped", though only dust came off in between; expected 2\d\.\d lb to 2\d\.\d lb → weigh again, /,
    ),
  ]);
});

test('the chart of stiffness stays in its frame and names the weakest place', () => {
  const chart = stiffnessChart(plan, stagger);
  for (const { vertices } of paths(chart).filter(({ layer }) => layer === 'outline')) {
    for (const { x, y } of vertices) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(160);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(90);
    }
  }
  expect(texts(chart).some(({ text }) => /^weakest: \d ft/.test(text))).toBe(true);
});

describe('the target in papers', () => {
  test('draws the trade-off and what was asked at their weights', () => {
    const chart = targetChart(plan, steered);
    const curve = paths(chart).find(
      ({ layer, vertices }) => layer === 'outline' && vertices[0]!.x < vertices.at(-1)!.x,
    )!;
    expect(curve.vertices[0]!.y).toBeCloseTo(heightOf(chart, 36), 6);
    expect(curve.vertices.at(-1)!.y).toBeCloseTo(heightOf(chart, 40), 6);
    const dashes = paths(chart).filter(({ layer }) => layer === 'mark');
    expect(dashes.length).toBeGreaterThan(10);
    for (const { vertices } of dashes) for (const { y } of vertices) expect(y).toBeCloseTo(heightOf(chart, 35), 6);
  });

  test('says how near it comes and what stands in the way', () => {
    const said = JSON.stringify(targetPage(plan, steered));
    expect(said).toContain('The target of 35.0 lb is not met; 36.0 lb is as near as it gets.');
    expect(said).toContain('deck skin is at its least');
  });
});

test('the report leaves no place in a sentence unfilled and carries the caution', () => {
  const pages = weightPages(plan, { stagger, steered });
  expect(pages.map(({ kind }) => kind)).toEqual([
    'figure',
    'table',
    'table',
    'table',
    'text',
    'figure',
    'table',
    'table',
    'text',
    'figure',
  ]);
  const said = JSON.stringify(pages);
  expect(said).not.toMatch(/\{\w+\}/);
  expect(said).not.toMatch(/NaN|undefined|Infinity/);
  expect(said).toContain('no promise that a board survives a wave');
});
