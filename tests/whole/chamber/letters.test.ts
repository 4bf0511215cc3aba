import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lettersOf } from '../../../src/chamber/letters.js';
import { partedBy, without, type Stretch } from '../../../src/chamber/stretch.js';
import type { Job, KeepOutSpec } from '../../../src/job/job.js';
import { readJob } from '../../../src/job/whole/read.js';
import { planOf, type Plan } from '../../../src/plan.js';
import { jobFiles } from '../../random/jobFile.js';
import { sampleJob } from '../../samples.js';
import { evenly } from '../../evenly.js';

const SEED = 20261126;
const spec = { web: 25, smallest: { length: 75, height: 25, depth: 25 } };
const place: Stretch = { from: 400, to: 680 };

/** What is left of the place when things of those stretches are gone around, and its letters. */
function lettered(gone: readonly Stretch[]) {
  const left = partedBy(spec.web, without(place, gone), spec.smallest.length);
  return left.map((each, i) => ({ ...each, letter: lettersOf(place, left, spec)[i]! }));
}
const letters = (...gone: readonly Stretch[]) => lettered(gone).map(({ letter }) => letter);

describe('the letter of a part says where in its place it lies', () => {
  test('the whole place has none, nor what is left when a little is taken from an end', () => {
    expect(letters()).toEqual(['']);
    expect(letters({ from: 380, to: 420 })).toEqual(['']);
    expect(letters({ from: 640, to: 700 })).toEqual(['']);
  });

  test('the nose half is a and the tail half b, also where the other is left solid', () => {
    expect(letters({ from: 530, to: 550 })).toEqual(['a', 'b']);
    expect(letters({ from: 530, to: 700 })).toEqual(['a']);
    expect(letters({ from: 390, to: 550 })).toEqual(['b']);
  });

  test('what lies between, with room on both sides, is c', () => {
    expect(letters({ from: 390, to: 495 }, { from: 585, to: 690 })).toEqual(['c']);
  });
});

const stretches = fc
  .tuple(fc.integer({ min: 350, max: 720 }), fc.integer({ min: 5, max: 200 }))
  .map(([from, long]): Stretch => ({ from, to: from + long }));

test(`no two parts of a place share a letter, and a part keeps its own when what is beyond its neighbours changes (seed ${SEED})`, () => {
  fc.assert(
    fc.property(fc.array(stretches, { maxLength: 4 }), fc.array(stretches, { maxLength: 4 }), (some, others) => {
      const [before, after] = [lettered(some), lettered(others)];
      expect(new Set(before.map(({ letter }) => letter)).size).toBe(before.length);
      for (const one of before)
        for (const other of after)
          if (one.from === other.from && one.to === other.to) expect(one.letter).toBe(other.letter);
    }),
    { seed: SEED, numRuns: 3000 },
  );
});

/** A chamber's solid in its row: the same figures, the same chamber. */
const solidOf = ({ row, profile, depth }: Plan['chambers'][number]): string => JSON.stringify([row, profile, depth]);

/** How many chambers two plans share, every one under one name. */
function sharedUnderOneName(one: Plan, other: Plan): number {
  const names = new Map(one.chambers.map((each) => [solidOf(each), each.id]));
  const same = other.chambers.filter((each) => names.has(solidOf(each)));
  for (const each of same) expect(each.id).toBe(names.get(solidOf(each)));
  return same.length;
}

const keepOut = fc.record({
  x: evenly(0.15, 0.85),
  y: fc.integer({ min: -150, max: 150 }),
  length: fc.integer({ min: 20, max: 250 }),
});
const written = (length: number, { x, y, length: long }: { x: number; y: number; length: number }, i: number) =>
  ({
    kind: 'rectangle',
    name: `region ${i}`,
    x: Math.round(x * length),
    y: y - 30,
    length: long,
    width: 60,
  }) as const satisfies KeepOutSpec;

// What one plan and the other publish, side by side.
test(
  `a chamber that stays as it is keeps its name when a keep-out comes, goes or moves elsewhere (seed ${SEED})`,
  { timeout: 600_000 },
  () => {
    let shared = 0;
    let parts = 0;
    fc.assert(
      fc.property(jobFiles, fc.array(keepOut, { minLength: 2, maxLength: 5 }), keepOut, (file, some, moved) => {
        const { job } = readJob(JSON.stringify(file), 'random.json', () => undefined);
        fc.pre(job !== undefined);
        const keepOuts = some.map((each, i) => written(job!.board.length, each, i));
        const with_ = (those: Job['keepOuts']) => planOf({ ...job!, keepOuts: those });
        const plan = with_(keepOuts);
        expect(new Set(plan.chambers.map(({ id }) => id)).size).toBe(plan.chambers.length);
        parts += plan.chambers.filter(({ id }) => /[a-z]$/.test(id)).length;
        for (const those of [
          keepOuts.slice(1),
          [written(job!.board.length, moved, 0), ...keepOuts.slice(1)],
          [...keepOuts, written(job!.board.length, moved, 99)],
        ])
          shared += sharedUnderOneName(plan, with_(those));
      }),
      { seed: SEED, numRuns: 12, maxSkipsPerRun: 20, endOnFailure: true },
    );
    expect(shared).toBeGreaterThan(100);
    expect(parts).toBeGreaterThan(10);
  },
);

test('on the prone board the nose half of a split place stays a when its tail half is left solid', () => {
  const job = { ...sampleJob('mere-prone'), jointKeepOuts: [] };
  const whole = planOf({ ...job, keepOuts: [], dots: { ...job.dots } });
  const [first] = whole.chambers.filter(({ id }) => id.endsWith('a'));
  expect(first).toBeDefined();
  const { face } = whole.layup.rows.find(({ id }) => id === first!.row)!;
  const half = whole.chambers.find(({ id }) => id === first!.id.replace(/a$/, 'b'))!;
  const s = half.profile.map(([each]) => each);
  const [from, to] = [Math.min(...s), Math.max(...s)];
  const over: KeepOutSpec = {
    kind: 'rectangle',
    name: 'handle',
    x: face.origin[0] + (from + to) / 2,
    y: face.origin[1] + 200 * face.inward[1],
    length: to - from,
    width: 400,
  };
  const names = planOf({ ...job, keepOuts: [over] }).chambers.map(({ id }) => id);
  expect(names).toContain(first!.id);
  expect(names).not.toContain(half.id);
  expect(names).not.toContain(first!.id.slice(0, -1));
});
