import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { withDotMoved } from '../../../src/bench/edit/dot.js';
import { planOf } from '../../../src/plan.js';
import { resultOf } from '../../../src/view/result.js';
import { jobOf, sample } from '../read.js';

const mere = sample('mere-prone.yaml');
const job = jobOf(mere);
const { dots } = resultOf(planOf(job));
const dot = dots[1]!;

describe('a planned dot moved', () => {
  const text = withDotMoved(mere, job, dots, dot.id, 12.4, -3);

  test('is written down where it was put, and the others of its joint where they are on show', () => {
    const after = resultOf(planOf(jobOf(text))).dots.filter(({ joint }) => joint === dot.joint);
    const before = dots.filter(({ joint }) => joint === dot.joint);
    expect(after).toHaveLength(before.length);
    before.forEach((was, i) => {
      const isMoved = was.id === dot.id;
      // To a thousandth of a millimetre, as the file has it.
      expect(after[i]!.x).toBeCloseTo(was.x + (isMoved ? 12 : 0), 2);
      expect(after[i]!.z).toBeCloseTo(was.z + (isMoved ? -3 : 0), 2);
      expect(after[i]!.glued).toBe(true);
    });
  });

  test('leaves every line that was there as it was', () => {
    expect(text.startsWith(mere)).toBe(true);
    expect(Object.keys(parse(text) as object)).toEqual([...Object.keys(parse(mere) as object), 'dots']);
  });

  test('moved once more changes that dot’s own numbers alone', () => {
    const again = jobOf(text);
    const shown = resultOf(planOf(again)).dots;
    const twice = withDotMoved(text, again, shown, dot.id, -2, 0);
    const lines = twice.split('\n').filter((line, i) => line !== text.split('\n')[i]);
    expect(lines).toHaveLength(1);
    const moved = resultOf(planOf(jobOf(twice))).dots.find(({ id }) => id === dot.id)!;
    expect(moved.x).toBeCloseTo(dot.x + 10, 2);
  });
});
