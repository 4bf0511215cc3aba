import { easeCorners } from '../../src/contour/ease.js';
import { PATCHES, type Mesh } from '../../src/board/mesh.js';
import type { Chamber } from '../../src/chamber/chamber.js';
import { memberName, type FromCentre } from '../../src/job/names.js';
import type { Joint, LaidMember, Row } from '../../src/layup/layup.js';
import { faceAt } from '../../src/layup/pieces.js';
import type { Plan } from '../../src/plan.js';

/**
 * A board drawn by hand, so that the pictures of its papers change only when the papers do: 1200 mm long, 300 wide, 60
 * thick, the same section all along between a blunt nose and tail, its bottom rising toward the nose. Left and right
 * pieces are open from a joint at 40 mm and a row is routed into each, two chambers a row.
 */

const LENGTH = 1200;
const STATIONS = [0, 100, 300, 600, 900, 1100, LENGTH];
/** `[y, z]` of the right half, from the keel over the rail to the deck, for a half-width of 1 and a thickness of 1. */
const RING = [
  [0, 0],
  [0.8, 0],
  [1, 0.4],
  [0.8, 0.95],
  [0, 1],
] as const;

const half = (x: number) => 150 * Math.min(1, 0.3 + x / 400, 0.3 + (LENGTH - x) / 400);
const bottom = (x: number) => 40 * Math.max(0, 1 - x / 600) ** 2;
const thickness = (x: number) => 60 * Math.min(1, 0.4 + x / 500, 0.4 + (LENGTH - x) / 500);

function mesh(): Omit<Mesh, 'normals'> {
  const ring = [
    ...RING,
    ...[...RING]
      .slice(1, -1)
      .reverse()
      .map(([y, z]) => [-y, z] as const),
  ];
  const n = ring.length;
  const positions = STATIONS.flatMap((x) => ring.flatMap(([y, z]) => [x, y * half(x), bottom(x) + z * thickness(x)]));
  const triangles: number[] = [];
  const patches: number[] = [];
  const add = (patch: (typeof PATCHES)[number], ...corners: number[]) => {
    triangles.push(...corners);
    patches.push(PATCHES.indexOf(patch));
  };
  for (let row = 0; row + 1 < STATIONS.length; row++) {
    ring.forEach(([, z], i) => {
      const j = (i + 1) % n;
      const patch = Math.max(z, ring[j]![1]) === 0 ? 'bottom' : Math.min(z, ring[j]![1]) > 0.9 ? 'deck' : 'rail';
      const [a, b, c, d] = [row * n + i, row * n + j, row * n + n + j, row * n + n + i];
      add(patch, a, b, c);
      add(patch, a, c, d);
    });
  }
  const last = (STATIONS.length - 1) * n;
  for (let i = 1; i + 1 < n; i++) {
    add('rail', 0, i + 1, i);
    add('rail', last, last + i, last + i + 1);
  }
  return {
    positions: Float64Array.from(positions),
    triangles: Uint32Array.from(triangles),
    patches: Uint8Array.from(patches),
    chordError: 0.05,
  };
}

const FOAM = { name: 'foam', density: 30, source: 'invented' };
const joints: Joint[] = [
  { id: 'JL1', side: 'L', number: 1, kind: 'dotted', at: -40, slope: 0 },
  { id: 'JR1', side: 'R', number: 1, kind: 'dotted', at: 40, slope: 0 },
];
const member = (at: FromCentre, left?: Joint, right?: Joint): LaidMember => ({
  id: memberName(at),
  ...at,
  kind: 'strip',
  material: FOAM,
  routing: 'open',
  ...(left && { left }),
  ...(right && { right }),
});
const members = [
  member({ side: 'L', number: 2 }, undefined, joints[0]),
  { ...member({ side: 'C', number: 0 }, joints[0], joints[1]), routing: 'solid' as const },
  member({ side: 'R', number: 2 }, joints[1]),
];
const pieces = [
  { id: 'PL1', side: 'L' as const, number: 1, members: [members[0]!] },
  { id: 'PC', side: 'C' as const, number: 0, members: [members[1]!] },
  { id: 'PR1', side: 'R' as const, number: 1, members: [members[2]!] },
];
const rows: Row[] = [
  {
    id: 'L1',
    side: 'L',
    number: 1,
    piece: 'PL1',
    face: faceAt(pieces[0]!, joints[0]!, 'right'),
    members: [members[0]!],
    end: 'rail',
    parity: 0,
  },
  {
    id: 'R1',
    side: 'R',
    number: 1,
    piece: 'PR1',
    face: faceAt(pieces[2]!, joints[1]!, 'left'),
    members: [members[2]!],
    end: 'rail',
    parity: 0,
  },
];

function chamber(row: string, place: number, from: number, to: number, low: number, high: number): Chamber {
  const eased = easeCorners(
    [
      [from, low],
      [to, low - 2],
      [to, high - 2],
      [from, high],
    ],
    8,
  )!;
  const y = row === 'L1' ? -100 : 100;
  return {
    id: `${row}-0${place}`,
    row,
    place,
    ...eased,
    depth: [0, 50],
    wall: { deck: 10.1, bottom: 9.15, rail: 22.4 },
    at: { deck: [from, y, 60], bottom: [to, y, 0], rail: [to, 1.4 * y, 30] },
    volume: ((to - from) * (high - low) * 50) / 1e6,
  };
}

export function smallPlan(): Plan {
  const chambers = ['L1', 'R1'].flatMap((row) => [
    chamber(row, 2, 315, 585, 16, 46),
    chamber(row, 3, 615, 885, 12, 44),
  ]);
  const outline = { outer: half, inner: () => 0, notchAt: LENGTH };
  const plan = {
    job: {
      name: 'Small & plain <"drawn">',
      units: 'mm',
      board: { profile: STATIONS.map((x) => ({ x, bottom: bottom(x), thickness: thickness(x) })) },
      chambers: { pitch: 300, datum: 150, stagger: 0.5, web: 30, cutterDiameter: 16 },
      keepOuts: [{ name: 'leash plug', kind: 'disc', x: 1050, y: 60, radius: 30 }],
      jointKeepOuts: [],
      fill: FOAM,
      routing: { bush: 24 },
      dots: { diameter: 16, blank: { nose: 50, tail: 50, below: 10 } },
    },
    board: {
      surface: { outlines: [outline, outline] },
      grid: { xs: Float64Array.from(STATIONS) },
      mesh: mesh(),
      length: LENGTH,
      width: 300,
      thickness: 60,
      volume: 15,
    },
    layup: { joints, members, pieces, rows },
    chambers,
    webs: ['L1', 'R1'].map((row) => ({ row, between: [`${row}-02`, `${row}-03`], from: 585, to: 615 })),
    notes: [],
    fins: [],
    asked: { deck: 10, bottom: 9, rail: 22 },
    glue: {
      dots: ['L1', 'R1'].map((at) => ({ id: `D${at}.1`, joint: `J${at}`, s: 600, z: 20, x: 600, diameter: 16 })),
      smears: [],
      losses: [],
    },
    routing: {
      rows: ['L1', 'R1'].map((row) => ({
        row,
        from: [row],
        chambers: chambers.map(({ id }) => ({ chamber: id, from: [row], cut: 50, stops: [62] })),
      })),
      offset: 4,
      guides: [
        {
          id: 'G1',
          cut: { length: 260, height: 26, corner: 8 },
          opening: { length: 268, height: 34, corner: 12 },
          chambers: chambers.map(({ id }) => id),
        },
      ],
      settings: chambers.map(({ id }) => ({ chamber: id, guide: 'G1', s: 450, z: 30, tiltInDegrees: 0 })),
      curve: [],
    },
    blocks: chambers.map(({ id, row, contour, profile, volume }) => {
      const s = profile.map(([each]) => each);
      const z = profile.map(([, each]) => each);
      const size = (values: number[]) => Math.max(...values) - Math.min(...values);
      const made = { outline: contour, length: size(s), height: size(z), thickness: 50, volume, weight: 0.01 };
      return { id, row, ...made, made };
    }),
  };
  // Only what the papers read is here.
  return plan as unknown as Plan;
}
