import { MATERIALS } from '../../src/job/materials.js';
import type { Job, KeepOutSpec, MemberWithJoint } from '../../src/job/job.js';
import { toBoard } from '../../src/layup/frame.js';
import type { Plan } from '../../src/plan.js';

/** Random numbers from 0 up to 1. */
export type Random = () => number;

/** One change that a builder may make to a job. */
export type Change = (plan: Plan, random: Random) => Job;

/** Every kind of change, by what is changed. Invented. */
export const CHANGES: Readonly<Record<string, Change>> = {
  walls: ({ job }, random) => ({
    ...job,
    chambers: {
      ...job.chambers,
      deckSkin: job.chambers.deckSkin * between(random, 0.8, 1.3),
      bottomSkin: job.chambers.bottomSkin * between(random, 0.8, 1.3),
      railWall: job.chambers.railWall * between(random, 0.8, 1.3),
      tolerance: between(random, 0, 2),
    },
  }),
  grid: ({ job }, random) => ({
    ...job,
    chambers: {
      ...job.chambers,
      web: job.chambers.web * between(random, 0.8, 1.3),
      pitch: job.chambers.pitch * between(random, 0.9, 1.2),
      stagger: oneOf(random, 0, 0.25, 0.5),
      solidNose: job.chambers.solidNose * between(random, 0.8, 1.3),
    },
  }),
  shape: ({ job }, random) => ({
    ...job,
    chambers: { ...job.chambers, shape: oneOf(random, 'follow', 'straight', 'square'), floor: between(random, 3, 12) },
  }),
  jointKinds: ({ job }, random) => members(job, (each) => ({ ...each, joint: oneOf(random, 'bonded', 'dotted') })),
  memberThickness: ({ job }, random) =>
    members(job, (each) =>
      typeof each.thickness === 'number' ? { ...each, thickness: each.thickness * between(random, 0.85, 1.1) } : each,
    ),
  memberMaterial: ({ job }, random) =>
    members(job, (each) =>
      each.kind === 'strip' ? { ...each, material: oneOf(random, ...MATERIALS.filter(isFoam)) } : each,
    ),
  unlikeSides: ({ job }, random) => ({
    ...job,
    glueUp: {
      ...job.glueUp,
      left: job.glueUp.right.map((each) => ({ ...each, joint: oneOf(random, 'bonded', 'dotted') })),
    },
  }),
  dots: ({ job }, random) => ({
    ...job,
    dots: {
      ...job.dots,
      diameter: job.dots.diameter * oneOf(random, 1, 0.8, 1.2),
      margin: between(random, 3, 12),
      clearance: between(random, 1, 10),
      spacing: job.dots.spacing * between(random, 0.6, 1.4),
      may: oneOf(random, ['trim'], ['trim', 'split'], ['trim', 'split', 'swallow'], ['trim', 'stagger']),
    },
  }),
  landed: (plan, random) => {
    const { job, glue, layup } = plan;
    const face = layup.rows.map((row) => row.face).find(({ joint }) => glue.dots.some((dot) => dot.joint === joint));
    if (!face) return job;
    const { joint } = face;
    const dots = glue.dots
      .filter((dot) => dot.joint === joint)
      .map(({ s, z, diameter }) => ({
        x: toBoard(face, s, 0, 0)[0] + between(random, -10, 10),
        height: { z: z + between(random, -3, 3) },
        diameter,
      }));
    return { ...job, dots: { ...job.dots, glued: [{ joint, dots, smears: [] }] } };
  },
  notLanded: ({ job }) => ({ ...job, dots: { ...job.dots, glued: [] } }),
  keepOutMore: ({ job }, random) => ({ ...job, keepOuts: [...job.keepOuts, keepOut(job, random)] }),
  keepOutLess: ({ job }) => ({ ...job, keepOuts: job.keepOuts.slice(1), jointKeepOuts: job.jointKeepOuts.slice(1) }),
  routing: ({ job }, random) => {
    const routing = without(job.routing, 'guides');
    const cutterLength = routing.guideStock + between(random, 30, 200);
    const guides = oneOf(
      random,
      undefined,
      { kind: 'count', count: 3 } as const,
      { kind: 'loss', share: 0.1 } as const,
    );
    return { ...job, routing: { ...routing, cutterLength, ...(guides && { guides }) } };
  },
  measured: (plan, random) => ({
    ...plan.job,
    shaped: Array.from({ length: 1 + Math.floor(3 * random()) }, () => measure(plan, random)),
  }),
  notMeasured: ({ job }) => without(job, 'shaped'),
  fill: ({ job }, random) => ({ ...job, fill: oneOf(random, ...MATERIALS.filter(isFoam)) }),
  blocks: ({ job }, random) => ({ ...job, blocks: { ...job.blocks, fit: between(random, -0.5, 1) } }),
  glass: ({ job }, random) => ({ ...without(job, 'glass'), rider: between(random, 40, 110) }),
  weighed: (plan, random) => ({
    ...plan.job,
    weighings: plan.weights.stages
      .slice(0, 1)
      .map(({ stage, weight }) => ({ stage, weight: weight * between(random, 0.97, 1.03), scale: 0.05 })),
  }),
  rowRouted: (plan, random) => {
    const row = oneOf(random, ...plan.layup.rows);
    const chambers = plan.chambers.filter((each) => each.row === row?.id);
    if (!row || chambers.length === 0) return plan.job;
    const { origin, along } = row.face;
    const routed = [{ row: row.id, day: '2026-03-14', face: { origin, along }, chambers }];
    return { ...plan.job, routed };
  },
  thickness: ({ job }, random) => {
    const by = between(random, 0.97, 1.04);
    const profile = job.board.profile.map((each) => ({ ...each, thickness: each.thickness * by }));
    return { ...job, board: { ...job.board, profile } };
  },
  outline: ({ job }, random) => {
    const by = between(random, 0.98, 1.03);
    const { right } = job.board;
    const points = right.points.map((each) => ({ ...each, half: each.half * by }));
    return { ...job, board: { ...job.board, right: { ...right, points } } };
  },
};

const isFoam = ({ name }: { name: string }): boolean => /^(eps|xps)/.test(name);

const between = (random: Random, low: number, high: number): number => low + (high - low) * random();

function without<T extends object, K extends keyof T>(whole: T, key: K): Omit<T, K> {
  const { [key]: left, ...rest } = whole;
  void left;
  return rest;
}

export function oneOf<T>(random: Random, ...things: readonly T[]): T {
  return things[Math.floor(random() * things.length)]!;
}

function members(job: Job, changed: (member: MemberWithJoint) => MemberWithJoint): Job {
  return { ...job, glueUp: { ...job.glueUp, right: job.glueUp.right.map(changed) } };
}

function keepOut({ board, keepOuts }: Job, random: Random): KeepOutSpec {
  const widest = Math.max(...board.right.points.map(({ half }) => half));
  const place = { x: board.length * between(random, 0.2, 0.8), y: widest * oneOf(random, 0, 0.3, -0.3, 0.6) };
  const name = `more ${keepOuts.length}`;
  const depth = oneOf(random, undefined, { from: 'deck', deep: between(random, 10, 30) } as const);
  const of = { name, ...place, ...(depth && { depth }) };
  return random() < 0.5
    ? { ...of, kind: 'disc', radius: between(random, 15, 70) }
    : { ...of, kind: 'rectangle', length: between(random, 40, 200), width: between(random, 10, 60) };
}

function measure({ board, chambers }: Plan, random: Random): NonNullable<Job['shaped']>[number] {
  const x = board.length * between(random, 0.25, 0.75);
  const [left, right] = board.surface.outlines;
  const chamber = oneOf(random, ...chambers);
  const off = between(random, 0.97, 1.03);
  const kind = oneOf(random, 'thickness', 'width', 'wall');
  if (kind === 'width') return { kind, x, value: (left.outer(x) + right.outer(x)) * off };
  if (kind === 'thickness' || !chamber)
    return { kind: 'thickness', x, y: 0, value: board.surface.thickness(x) * off, off: oneOf(random, 'deck', 'both') };
  const wall = oneOf(random, 'deck', 'bottom', 'rail');
  return { kind, chamber: chamber.id, wall, value: chamber.wall[wall] * off };
}
