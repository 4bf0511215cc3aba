import { describe, expect, it } from 'vitest';
import { BREAK, paceOf, timeLeft } from '../../../src/shop/report/pace.js';
import { NOON, event, numbered, step } from '../rescueBoard.js';

const MINUTE = 60_000;
const pressed = (minutes: readonly number[], name: 'cut' | 'sanded' = 'cut', via: 'page' | 'csv' = 'page') =>
  numbered(minutes.map((at, i) => event({ seq: i + 1, via, at: NOON + at * MINUTE, what: step(`R1-${i}`, name) })));

describe('the pace of the work', () => {
  it('six blocks cut four minutes apart take four minutes each', () => {
    expect(paceOf(pressed([0, 4, 8, 12, 16, 20]))).toEqual({ any: 4 * MINUTE, byStep: { cut: 4 * MINUTE } });
  });

  it('a lunch break is no work', () => {
    expect(
      paceOf(pressed([0, 4, 8, 12, 12 + BREAK / MINUTE + 1, 12 + BREAK / MINUTE + 5, 12 + BREAK / MINUTE + 9])).any,
    ).toBe(4 * MINUTE);
  });

  it('says nothing after a handful of steps, nor from a list entered in one go', () => {
    expect(paceOf(pressed([0, 4, 8]))).toEqual({ byStep: {} });
    expect(paceOf(pressed([0, 0, 0, 0, 0, 0, 0, 0], 'cut', 'csv'))).toEqual({ byStep: {} });
  });

  it('ten blocks left to cut at four minutes and to sand at two take an hour', () => {
    const log = [...pressed([0, 4, 8, 12, 16, 20]), ...pressed([22, 24, 26, 28, 30, 32], 'sanded')];
    const left = { marked: 0, cut: 10, sanded: 10, 'dry-fitted': 0, glued: 0 };
    expect(timeLeft(left, paceOf(log))).toBe(60 * MINUTE);
    expect(timeLeft(left, { byStep: {} })).toBeUndefined();
  });
});
