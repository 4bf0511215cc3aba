import { describe, expect, test } from 'vitest';
import { keepOutInPlan } from '../../../src/view/keepOutInPlan.js';
import { withKeepOutMoved } from '../../../src/bench/edit/keepOut.js';
import { jobOf, sample } from '../read.js';

const mere = sample('mere-prone.yaml');
const job = jobOf(mere);
const middles = (text: string) => new Map(jobOf(text).keepOuts.map((each) => [each.name, keepOutInPlan(each).middle]));
const indexOf = (name: string) => job.keepOuts.findIndex((each) => each.name === name);

describe('a keep-out moved', () => {
  test('keeps its place written from the tail, where it was written so', () => {
    const before = middles(mere).get('leash plug')!;
    const text = withKeepOutMoved(mere, job, indexOf('leash plug'), -20.4, 0);
    expect(middles(text).get('leash plug')).toEqual([before[0] - 20, before[1]]);
    expect(text).toContain('fromTail: 200');
  });

  test('off the centreline gets a side, and loses it for the other across it', () => {
    const right = withKeepOutMoved(mere, job, indexOf('fin box'), 0, 30);
    expect(right).toMatch(/name: fin box.*right: 30/);
    const left = withKeepOutMoved(right, jobOf(right), indexOf('fin box'), 0, -50);
    expect(left).toMatch(/name: fin box.*left: 20/);
    expect(left).not.toMatch(/name: fin box.*right/);
    expect(middles(left).get('fin box')![1]).toBe(-20);
  });

  test('on both sides moves on both, whichever is taken hold of', () => {
    const before = middles(mere);
    const name = (side: string) => `deck lashing ${side}`;
    const text = withKeepOutMoved(mere, job, indexOf(name('left')), 10, -15);
    const after = middles(text);
    expect(after.get(name('left'))).toEqual([before.get(name('left'))![0] + 10, before.get(name('left'))![1] - 15]);
    expect(after.get(name('right'))).toEqual([before.get(name('right'))![0] + 10, before.get(name('right'))![1] + 15]);
  });

  test('drawn on a joint is none of those in plan', () => {
    const vent = mere.replace('keepOuts:\n', 'keepOuts:\n  - {name: vent, at: 900, joint: R2, up: 60, disc: 10}\n');
    const moved = withKeepOutMoved(vent, jobOf(vent), 0, 5, 0);
    expect(moved).toContain('name: vent, at: 900');
    expect(moved).toContain('name: leash plug, fromTail: 175');
  });
});
