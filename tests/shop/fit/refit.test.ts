import { describe, expect, it } from 'vitest';
import { planMadeTo, refitOf } from '../../../src/shop/fit/refit.js';
import { refitsOf } from '../../../src/shop/fit/refits.js';
import { NOTHING_YET, stateAfter, UNTOUCHED } from '../../../src/shop/log/state.js';
import type { Step } from '../../../src/shop/log/step.js';
import { block, box, event, numbered, step } from '../rescueBoard.js';

const at = (name: Step) =>
  stateAfter(NOTHING_YET, numbered([event({ seq: 1, what: step('R2-07', name) })])).blocks.get('R2-07')!;
const old = box('R2-07', 180, 100, 45);

describe('a block in hand when the plan changes', () => {
  it('fits while nothing it has to fill has changed', () => {
    expect(refitOf(old, box('R2-07', 180, 100, 45), at('cut'))).toEqual({ kind: 'fits' });
    expect(refitOf(old, box('R2-07', 180.3, 99.8, 45.2), at('cut'))).toEqual({ kind: 'fits' });
  });

  it('is trimmed where the chamber has become smaller, and the cut is told', () => {
    expect(refitOf(old, box('R2-07', 175, 100, 42), at('sanded'))).toEqual({
      kind: 'trim',
      to: { length: 175, height: 100, thickness: 42 },
      off: { length: 5, height: 0, thickness: 3 },
    });
  });

  it('is made new where the chamber has become larger in anything', () => {
    expect(refitOf(old, box('R2-07', 170, 106, 45), at('cut'))).toEqual({
      kind: 'new',
      to: { length: 170, height: 106, thickness: 45 },
      short: { length: 0, height: 6, thickness: 0 },
    });
    expect(refitOf(old, box('R2-07', 180, 100, 46), at('cut')).kind).toBe('new');
  });

  it('fits the other way round where only its taper has turned round', () => {
    const down = block('R2-07', [
      [0, 0],
      [180, 0],
      [180, 90],
      [0, 100],
    ]);
    const up = block('R2-07', [
      [0, 0],
      [180, 0],
      [180, 100],
      [0, 90],
    ]);
    expect(refitOf(down, up, at('cut'))).toEqual({ kind: 'turn', turned: 'round' });
  });

  it('is told where it is of another foam, and where the same foam only weighs a little more', () => {
    const foam = (name: string, density: number) => ({
      ...old,
      made: { outline: old.outline, thickness: 45, foam: { name, density } },
    });
    expect(refitOf(foam('eps', 15), foam('eps', 16), at('cut'))).toEqual({ kind: 'fits' });
    expect(refitOf(foam('eps', 15), foam('eps', 30), at('cut')).kind).toBe('other-foam');
    expect(refitOf(foam('eps', 15), foam('xps', 15), at('sanded')).kind).toBe('other-foam');
  });

  it('does not fit where its chamber is the same and the fit asked for is another', () => {
    const fit = (by: number) => ({
      ...old,
      made: {
        outline: box('R2-07', 180 + 2 * by, 100 + 2 * by).outline,
        thickness: 45,
        foam: { name: 'eps', density: 15 },
      },
    });
    expect(refitOf(fit(-1.6), fit(0), at('cut')).kind).toBe('new');
    expect(refitOf(fit(0), fit(-1.6), at('cut')).kind).toBe('trim');
  });

  it('is only marked again where no saw has touched it', () => {
    expect(refitOf(old, box('R2-07', 175, 110), at('marked'))).toEqual({
      kind: 'mark-again',
      to: { length: 175, height: 110, thickness: 45 },
    });
  });

  it('is named where it is glued in already', () => {
    expect(refitOf(old, box('R2-07', 175, 100), at('glued')).kind).toBe('glued-in');
  });

  it('is kept, though unused, where its chamber is gone', () => {
    expect(refitOf(old, undefined, at('cut'))).toEqual({ kind: 'unused' });
  });
});

describe('which plan a block was made to', () => {
  it('is the plan it was cut from, until it was trimmed to another', () => {
    const cut = [
      event({ seq: 1, plan: 1, what: step('R2-07', 'marked') }),
      event({ seq: 2, plan: 2, what: step('R2-07', 'cut') }),
      event({ seq: 3, plan: 3, what: step('R2-07', 'sanded') }),
    ];
    const made = (events: typeof cut) =>
      planMadeTo(stateAfter(NOTHING_YET, numbered(events)).blocks.get('R2-07') ?? UNTOUCHED);
    expect(made(cut)).toBe(2);
    expect(made([...cut, event({ seq: 4, plan: 3, what: { kind: 'trimmed', block: 'R2-07' } })])).toBe(3);
    expect(made([])).toBeUndefined();
  });
});

describe('all blocks of a changed plan', () => {
  it('lists each block to be looked at and leaves out what still fits', () => {
    const before = [old, box('R2-08', 180, 100), box('R2-09', 180, 100), box('R2-10', 180, 100)];
    const now = [box('R2-07', 170, 100), box('R2-08', 180, 100), box('R2-10', 190, 100), box('R2-11', 180, 100)];
    const log = ['R2-07', 'R2-08', 'R2-09', 'R2-10'].map((id, i) => event({ seq: i + 1, what: step(id, 'cut') }));
    const refits = refitsOf(now, stateAfter(NOTHING_YET, numbered(log)), [{ number: 1, blocks: before }]);
    expect(Object.fromEntries([...refits].map(([id, { kind }]) => [id, kind]))).toEqual({
      'R2-07': 'trim',
      'R2-09': 'unused',
      'R2-10': 'new',
    });
    // R2-09 fits the new R2-11 as it is; R2-10 has then no place.
    expect(refits.get('R2-09')).toEqual({ kind: 'unused', elsewhere: { place: 'R2-11', trim: false } });
    expect(refits.get('R2-10')).toMatchObject({ elsewhere: 'none' });
  });
});
