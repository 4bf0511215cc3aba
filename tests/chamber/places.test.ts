import { describe, expect, test } from 'vitest';
import type { Chamber, Note } from '../../src/chamber/chamber.js';
import type { Filling } from '../../src/chamber/filling.js';
import type { Obstacle } from '../../src/chamber/obstacle.js';
import { noteOf, smallOnes } from '../../src/chamber/places.js';

const asked = { deck: 10, bottom: 12, rail: 20 };
const chamber = (from: number, to: number, more: Partial<Chamber> = {}): Chamber =>
  ({ id: 'R1-04', row: 'R1', place: 4, profile: [[from, 0], [to, 0], [to, 50], [from, 50]], wall: { deck: 11, bottom: 12.5, rail: 90 }, volume: 1, ...more }) as unknown as Chamber; // prettier-ignore
const thing = (name: string, why: Obstacle['why']) => ({ name, why }) as Obstacle;
const slot = { place: 4, centre: 500, from: 400, to: 600 };
const whole = { from: 400, to: 600 };
const said = (chambers: readonly Chamber[], filling: Partial<Filling> = {}, stretch = whole) =>
  noteOf(
    'R1',
    slot,
    stretch,
    { around: [], past: [], parts: chambers.map(() => ({})), ...filling } as unknown as Filling,
    chambers,
    asked,
  );
const here = { where: 'R1-04', row: 'R1', place: 4 };

describe('of a place the builder is told', () => {
  test('nothing where a chamber fills it but for a breath, nor where none stands', () => {
    expect(said([chamber(400, 600)])).toEqual([]);
    expect(said([chamber(401, 599)])).toEqual([]);
    expect(said([])).toEqual([]);
  });

  test('how much shorter it is, and the wall that has least to spare', () => {
    expect(said([chamber(403, 600)])).toEqual([
      { kind: 'trimmed', ...here, why: 'room', by: [], shorter: 3, wall: 'bottom' },
    ]);
    expect(said([chamber(400, 560, { wall: { deck: 10.2, bottom: 12.5, rail: 90 } })])).toMatchObject([
      { shorter: 40, wall: 'deck' },
    ]);
    expect(said([chamber(400, 560, { wall: { deck: 90, bottom: 12.5, rail: 20.1 } })])).toMatchObject([
      { wall: 'rail' },
    ]);
  });

  test('that solid nose or tail ends it', () => {
    expect(said([chamber(440, 600)], {}, { from: 440, to: 600 })).toEqual([
      { kind: 'trimmed', ...here, why: 'ends', by: [], shorter: 40 },
    ]);
    expect(said([chamber(400, 570)], {}, { from: 400, to: 570 })).toMatchObject([{ why: 'ends', shorter: 30 }]);
    expect(said([chamber(405, 600)], {}, { from: 402, to: 600 })).toMatchObject([{ why: 'room' }]);
  });

  test('what it goes around, each once, and that a keep-out is the reason before a dot', () => {
    const around = [thing('DR1.1', 'dot'), thing('vent', 'keep-out'), thing('vent', 'keep-out')];
    expect(said([chamber(440, 600)], { around })).toEqual([
      { kind: 'trimmed', ...here, why: 'keep-out', by: ['DR1.1', 'vent'], shorter: 40 },
    ]);
    expect(said([chamber(440, 600)], { around: [around[0]!] })).toMatchObject([{ why: 'dot', by: ['DR1.1'] }]);
  });

  test('what it passes under or over', () => {
    expect(said([chamber(400, 600)], { past: [thing('plug', 'keep-out')] })).toEqual([
      { kind: 'lowered', ...here, why: 'keep-out', by: ['plug'] },
    ]);
  });

  test('that it is in two parts, and shorter only where that is not all there is to it', () => {
    const parts = [chamber(400, 480, { id: 'R1-04a' }), chamber(520, 600, { id: 'R1-04b' })];
    const around = [thing('DR1.1', 'dot')];
    expect(said(parts, { around })).toEqual([{ kind: 'split', ...here, why: 'dot', by: ['DR1.1'] }]);
    const drawnIn = [chamber(410, 480, { id: 'R1-04a' }), chamber(520, 590, { id: 'R1-04b' })];
    expect(said(drawnIn, { around })).toMatchObject([
      { kind: 'split' },
      { kind: 'trimmed', where: 'R1-04', shorter: 20 },
    ]);
    // One of three failed in the proof, which is told of itself.
    expect(said(drawnIn, { around, parts: [{}, {}, {}] as never })).toMatchObject([{ kind: 'split' }]);
    expect(said([parts[0]!], { around, parts: [{}, {}] as never })).toMatchObject([
      { kind: 'trimmed', where: 'R1-04a', shorter: 120 },
    ]);
  });
});

describe('a chamber is small', () => {
  const row = [1, 1.2, 1.4, 0.41, 0.42].map((volume, i) => chamber(0, 9, { id: `R1-0${i + 1}`, place: i + 1, volume }));
  const small = (said: readonly Note[] = []) => smallOnes(row, said, asked).map(({ where }) => where);

  // By hand: the middle one of five holds 1 litre, a third and a bit of it is 0.35.
  test('where it holds less than a third of what its row’s middle one does, and nothing else is said of it', () => {
    expect(small()).toEqual([]);
    row[3] = { ...row[3]!, volume: 0.34 };
    row[4] = { ...row[4]!, volume: 0.35 };
    expect(smallOnes(row, [], asked)).toEqual([
      { kind: 'small', where: 'R1-04', row: 'R1', place: 4, why: 'room', by: [], wall: 'bottom' },
    ]);
    const note = (where: string) => ({ kind: 'trimmed', where, why: 'room', by: [] }) as Note;
    expect(small([note('R1-04')])).toEqual([]);
    expect(small([note('R1-05')])).toEqual(['R1-04']);
    row[3] = { ...row[3]!, id: 'R1-04a' };
    expect(small([note('R1-04')])).toEqual([]);
    expect(small([note('R1-04a')])).toEqual([]);
    expect(small()).toEqual(['R1-04a']);
    expect(smallOnes([], [], asked)).toEqual([]);
  });
});
