import { describe, expect, test } from 'vitest';
import { jointNamed } from '../../src/job/names.js';
import type { Job } from '../../src/job/job.js';
import { planOf, type Plan } from '../../src/plan.js';
import { WORDS } from '../../src/words/say.js';
import { reportOf } from '../../src/cli/report.js';
import { sampleJob, SAMPLES } from '../samples.js';
import { setOf, wholeSetOf } from '../papers/wholeSet.js';

/** A sample with a smear, shared guides and a dotted centreline, so that everything that has a name is there. */
function withEverything(job: Job): Job {
  const joint = planOf(job).layup.joints.findLast(({ kind }) => kind === 'dotted')!.id;
  const x = job.board.length / 2;
  const smears = [{ from: { x }, to: { x: x + 60 }, width: 8 }];
  return {
    ...job,
    glueUp: { ...job.glueUp, centreJoint: 'dotted' },
    dots: { ...job.dots, glued: [{ joint, smears }] },
    routing: { ...job.routing, guides: { kind: 'count', count: 3 } },
  };
}

const plans = SAMPLES.flatMap((name): [string, Plan][] => [
  [name, planOf(sampleJob(name))],
  [`${name} with everything that has a name`, planOf(withEverything(sampleJob(name)))],
]);

/** All that has a name in a plan. A block goes by the name of the chamber it fills. */
function namesIn({ layup, chambers, glue, routing }: Plan): string[] {
  const faces = layup.rows.flatMap(({ face, through }) => [face, ...(through ? [through] : [])]);
  return [
    ...[
      layup.rows,
      layup.members,
      layup.joints,
      layup.pieces,
      chambers,
      glue.dots,
      glue.smears,
      routing.guides,
    ].flatMap((things) => things.map(({ id }: { readonly id: string }) => id)),
    ...new Set(faces.map(({ id }) => id)),
  ];
}

const explained = new Set(WORDS.cover.names.pairs.flat());

/** Everything that is written on the papers or in the report, but for the list that explains the names. */
function textsOf(plan: Plan): string[] {
  const texts: string[] = reportOf(plan);
  JSON.stringify(wholeSetOf(plan), (_, value: unknown) => {
    if (typeof value === 'string' && !explained.has(value)) texts.push(value);
    return value;
  });
  return texts;
}

/** What used to go by the bare side and number: `joint L2`, `piece C`, `dot R2.3`, `R2:R3`. */
const OLD =
  /\b(joints?|pieces?|members?|strips?|stringers?|dots?|smears?|faces?|into|at)[: ]+[LCR]\d*(?![\w-])|\b[LCR]\d*[.:][LCRs]?\d/i;

describe.each(plans)('%s', (_, plan) => {
  test('no two different things share a name', () => {
    const names = namesIn(plan);
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
  });

  test('a bare name on paper and in the report is a row’s', () => {
    const rows = new Set(plan.layup.rows.map(({ id }) => id));
    const texts = textsOf(plan);
    expect(texts.filter((text) => OLD.test(text))).toEqual([]);
    const bare = texts.flatMap((text) => [...text.matchAll(/(?<![\w.-])[LCR]\d*(?![\w.-])/g)].map(([name]) => name));
    expect([...new Set(bare)].filter((name) => !rows.has(name))).toEqual([]);
    expect(bare.length).toBeGreaterThan(0);
  });

  test('a face is told by its piece and the side of it', () => {
    for (const { face, piece, through } of plan.layup.rows)
      for (const each of [face, ...(through ? [through] : [])]) {
        const { joint, id, inward } = each;
        const toTheRight = inward[1] < 0;
        const { side } = plan.layup.pieces.find((one) => one.id === piece)!;
        const on = side === 'C' ? (toTheRight ? 'right' : 'left') : (side === 'R') === toTheRight ? 'out' : 'in';
        expect(id).toBe(`${piece.replace('P', 'F')}-${on}`);
        expect(plan.layup.joints.map((one) => one.id)).toContain(joint);
      }
  });
});

test('the names are explained on the cover', () => {
  const cover = JSON.stringify(setOf(plans[0]![1], { only: ['cover'] }));
  for (const text of explained) expect(cover).toContain(JSON.stringify(text).slice(1, -1));
});

test('a joint may be written as it was called before it had a letter', () => {
  expect(['L2', 'C', 'R1', 'JL2', 'JC', 'jr1', ' r1 '].map(jointNamed)).toEqual([
    'JL2',
    'JC',
    'JR1',
    'JL2',
    'JC',
    'JR1',
    'JR1',
  ]);
});
