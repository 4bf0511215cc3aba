import { expect, test } from 'vitest';
import { USUAL } from '../../../src/weigh/usual.js';
import { readText, saidAbout, textOf } from '../readSample.js';

/** The prone board with other blocks. */
const withBlocks = (part: string): string => {
  const bare = textOf('samples/mere-prone.yaml').replace(/^blocks:.*\n(?:[ #].*\n|\n)*/m, '');
  return `${bare}\n${part}\n`;
};
const said = (part: string): string[] =>
  saidAbout(withBlocks(part)).map((line) => line.replace(/^job\.yaml:\d+:\d+: /, ''));

test('a job that says nothing of blocks gets blocks that fill their chambers, and no sheets', () => {
  expect(readText(withBlocks('')).job!.blocks).toMatchObject({
    fit: 0,
    corners: 'eased',
    stock: [],
    kerf: 3,
    trim: 10,
    grain: false,
    keep: { length: 300, width: 100 },
    glue: { openTime: 20, minutesPerBlock: 3, loss: 0.2, clampSpacing: 250 },
  });
});

test('what is bought as glue is what the board is weighed with', () => {
  expect(readText(withBlocks('')).job!.blocks.glue.spread).toBe(USUAL.blockGlue.value);
});

// 1 in is 25.4 mm (international yard and pound agreement of 1959).
test('fit and sheets carry their units', () => {
  const { job } = readText(
    withBlocks('blocks: {fit: -1/16 in, stock: [{length: 8 ft, width: 4 ft, thickness: 2 in, count: 3, price: 30}]}'),
  );
  expect(job!.blocks.fit).toBeCloseTo(-1.5875, 9);
  expect(job!.blocks.stock).toEqual([
    { length: 2438.4, width: 1219.2, thickness: 50.8, count: 3, price: 30, offcut: false },
  ]);
});

test('a clearance that leaves too little is said with what would do', () => {
  expect(said('blocks: {fit: -8 mm}')).toEqual([
    'blocks.fit: a clearance of 8 mm all around leaves too little of a block for the smallest chamber → a clearance of at most 6 mm, or larger smallest chambers',
  ]);
});

test('a glue that is dry before one block is clamped is said', () => {
  expect(said('blocks: {glue: {openTime: 5, minutesPerBlock: 6}}')).toEqual([
    'blocks.glue: one block takes 6 minutes, the glue stays open for 5 → a slower glue, or more hands so that a block takes less',
  ]);
});

test('sheets without a thickness, half sheets and prices below nothing are said', () => {
  expect(said('blocks: {stock: [{length: 1200, width: 600, count: 1.5, price: -2}]}')).toEqual([
    'blocks.stock[0].thickness: "thickness" is missing → add it: its thickness',
    'blocks.stock[0].count: a part of a sheet is counted → whole sheets; list a rest by its own size, as an offcut',
    'blocks.stock[0].price: a price below 0 → 0 or more',
  ]);
});
