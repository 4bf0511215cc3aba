import { expect, test } from 'vitest';
import { cuttingOnce } from '../../src/sheet/cutting/cuttingOnce.js';
import { blockRows, cutRows } from '../../src/sheet/cutting/cutRows.js';
import type { Cell } from '../../src/sheet/pages.js';
import { routingRows } from '../../src/sheet/face/routerTable.js';
import { trackingRows } from '../../src/sheet/blocks/trackingList.js';
import { weightRows } from '../../src/sheet/weights/weightsPages.js';
import { planOf } from '../../src/plan.js';
import { sampleJob } from '../samples.js';

/** What counts or numbers something and so has no unit. */
const COUNTS = ['sheet', 'cut', 'layers', 'batch', 'stage', 'piece', 'run', 'makes'];
const UNIT = /\b(mm|in|kg|g|deg|kg m2)\b/;

test.each(['tarn-rescue', 'mere-prone'] as const)('every column of numbers says its unit in its header: %s', (name) => {
  const plan = planOf(sampleJob(name));
  const cutting = cuttingOnce(plan);
  const lists = [
    trackingRows(plan),
    blockRows(plan, cutting),
    cutRows(plan, cutting),
    routingRows(plan),
    weightRows(plan),
  ];
  for (const [header, ...rows] of lists) {
    expect(rows.length).toBeGreaterThan(3);
    for (const [i, title] of header!.entries()) {
      const isNumeric = rows.some((row) => hasFigure(row[i]!)) && !rows.every((row) => /^[A-Z]/.test(String(row[i])));
      if (isNumeric && !COUNTS.includes(String(title).toLowerCase())) expect(String(title)).toMatch(UNIT);
    }
  }
});

const hasFigure = (cell: Cell): boolean =>
  typeof cell === 'number' || /^[\d./" ]+( in| mm)?$/.test(String(cell).trim() || 'x');
