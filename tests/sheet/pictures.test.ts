import { describe, expect, test } from 'vitest';
import { blockSheets } from '../../src/sheet/blocks/blockSheet.js';
import { dotsSheet, sheetJoints } from '../../src/sheet/dots/dotsSheet.js';
import type { Drawing } from '../../src/sheet/drawing.js';
import { faceSheet } from '../../src/sheet/face/faceSheet.js';
import { guideSheets } from '../../src/sheet/guides/guideSheet.js';
import { sheetRows } from '../../src/sheet/mirror.js';
import { planParts, planView } from '../../src/sheet/plan/planView.js';
import { storyPole } from '../../src/sheet/face/pole.js';
import { sectionSheets } from '../../src/sheet/section/sectionSheet.js';
import { wallChart } from '../../src/sheet/plan/wallChart.js';
import { wallMap } from '../../src/sheet/plan/wallMap.js';
import { expectPicture } from './picture.js';
import { smallPlan } from './smallPlan.js';

const plan = smallPlan();
const rows = sheetRows(plan);
const drawings: Drawing[] = [
  ...rows.map((row) => faceSheet(plan, row)),
  ...sheetJoints(plan).map((joint) => dotsSheet(plan, joint)),
  ...guideSheets(plan),
  ...blockSheets(plan),
  ...rows.map((row) => wallChart(plan, row)),
  storyPole(plan),
  planView(plan),
  ...planParts(plan).slice(0, 1),
  ...wallMap(plan).slice(0, 1),
  ...sectionSheets(plan).slice(0, 1),
];

describe('the drawings look as they did when they were looked at', () => {
  test.each(drawings.map((drawing) => [drawing.id, drawing] as const))('%s', (_, drawing) => {
    expectPicture(drawing);
  });

  test('every drawing has a name of its own', () => {
    expect(new Set(drawings.map(({ id }) => id)).size).toBe(drawings.length);
  });
});
