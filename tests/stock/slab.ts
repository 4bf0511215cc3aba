import { expect } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import type { Doubt } from '../../src/job/finding.js';
import type { Job } from '../../src/job/job.js';
import { layupOf } from '../../src/layup/layupOf.js';
import { planOf, type Plan } from '../../src/plan.js';
import { stockInDoubt } from '../../src/stock/inDoubt.js';
import { stockOf, type Stock } from '../../src/stock/stockOf.js';
import { readText } from '../job/readSample.js';

/**
 * A flat board, 2000 × 400 × 80 mm, of two strips and a stringer a side, in a flat blank of 2100 × 430 × 100 mm: in its
 * middle 10 mm stand over the deck and 10 mm under the bottom, which anyone can work out by hand. Straight stations end
 * in rounded edges of some millimetres, so that figures are taken on the flat.
 */
const SLAB = `
job: Slab
units: mm
board:
  length: 2000
  nose: {square: 200}
  tail: {square: 200}
  outline: [[100, 200], [1900, 200]]
  stations:
    - {at: 0, bottom: 0, thick: 80, section: {apex: 50 %, above: 97 %, below: 97 %, crown: 0}}
    - {at: 1000, bottom: 0, thick: 80}
    - {fromTail: 0, bottom: 0, thick: 80}
glueUp:
  centreJoint: dotted
  members:
    - {strip: pu-blank, thickness: 80}
    - {stringer: paulownia, thickness: 8, router: open, joint: bonded}
    - {strip: pu-blank, joint: bonded}
chambers:
  pitch: 220
  datum: 420
  web: 26
  deckSkin: 14
  bottomSkin: 12
  railWall: 20
  floor: 8
  tolerance: 1
  cutter: 12
  smallest: {length: 60, height: 25, depth: 30}
  solidNose: 250
  solidTail: 220
fill: {foam: eps-12}
`;
const STOCK = `
stock:
  allowance: 2
  blank:
    length: 2100
    nose: {square: 215}
    tail: {square: 215}
    outline: [[100, 215], [2000, 215]]
    stations:
      - {at: 0, bottom: 0, thick: 100, section: {apex: 50 %, above: 97 %, below: 97 %, crown: 0}}
      - {at: 1000, bottom: 0, thick: 100}
      - {fromTail: 0, bottom: 0, thick: 100}
    kerf: 4
`;

/** @param blank further lines of the blank, as they stand in a job */
export function slabText(blank: readonly string[] = [], change: (text: string) => string = (text) => text): string {
  return change(SLAB + STOCK + blank.map((line) => `    ${line}\n`).join(''));
}

export function slabPlan(...of: Parameters<typeof slabText>): Plan {
  const { job, findings } = readText(slabText(...of));
  expect(findings).toEqual([]);
  return planOf(job!);
}

/** The stock of a job alone, and what is said of it: nothing is routed. */
export function stockIn(job: Job): { readonly stock: Stock; readonly told: readonly Doubt[] } {
  const board = boardOf(job.board);
  const layup = layupOf(job.glueUp, board.length);
  const isOneSided = job.board.left !== undefined || job.glueUp.left !== undefined;
  const stock = stockOf(job.stock!, board, layup, isOneSided, job.units);
  return { stock, told: stockInDoubt(stock, job.stock!, job.units) };
}

/** The same of a text in which nothing is wrong. */
export function stockOfText(text: string): ReturnType<typeof stockIn> {
  const { job, findings } = readText(text);
  expect(findings).toEqual([]);
  return stockIn(job!);
}
