import { expect, test } from 'vitest';
import { depthLinesOf } from '../../src/rout/depthLines.js';
import type { ChamberRouting } from '../../src/rout/rout.js';

const router = { passDepth: 12, guideStock: 12 };
const routed = (chamber: string, cut: number, from = ['FR1-in']): ChamberRouting => ({ chamber, from, cut, stops: [] });

test('a row of three depths has three lines, the deepest last, each with its own chambers and stops', () => {
  const chambers = [routed('R1-02', 40), routed('R1-03', 24.04), routed('R1-04', 24.09), routed('R1-05', 30)];
  // By hand: 24 mm in two passes of 12, 30 in three of 10, 40 in four of 10, each over 12 mm of guide.
  expect(depthLinesOf({ chambers }, router, 'mm')).toEqual([
    { from: ['FR1-in'], depth: 24, stops: [24, 36], chambers: ['R1-03', 'R1-04'] },
    { from: ['FR1-in'], depth: 30, stops: [22, 32, 42], chambers: ['R1-05'] },
    { from: ['FR1-in'], depth: 40, stops: [22, 32, 42, 52], chambers: ['R1-02'] },
  ]);
});

test('in inches no stop is deeper than the depth that was proved, and no pass deeper than was allowed', () => {
  const inches = { passDepth: 12.7, guideStock: 12.7 };
  const [line] = depthLinesOf({ chambers: [routed('R5-07b', 26.38)] }, inches, 'in');
  expect(line).toMatchObject({ depth: 25.4, stops: [25.4, 38.1] });
});

test('halves that meet are rounded so that they do, and stand apart from what is routed from one face', () => {
  const both = ['FR1-in', 'FR1-out'];
  const lines = depthLinesOf({ chambers: [routed('R1-02', 38.63, both), routed('R1-03', 38.7)] }, router, 'mm');
  expect(lines.map(({ from, depth, chambers }) => [from, depth, chambers])).toEqual([
    [both, 38.7, ['R1-02']],
    [['FR1-in'], 38.7, ['R1-03']],
  ]);
  expect(lines.map(({ stops }) => stops.at(-1))).toEqual([50.7, 50.7]);
});
