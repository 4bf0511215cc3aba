import { expect, test } from 'vitest';
import type { Member } from '../../src/job/job.js';
import { toBoard, toFace } from '../../src/layup/frame.js';
import type { Face } from '../../src/layup/layup.js';
import { layupOf } from '../../src/layup/layupOf.js';

const material = { name: 'wood', density: 400, source: 'test' };

// By plane geometry: lengths along and square to the face from its origin, wherever that lies.
test('a place told from a face is that place on the board, and back', () => {
  const face = { origin: [30, -20], along: [0.96, 0.28], inward: [-0.28, 0.96] } as unknown as Face;
  expect(toBoard(face, 100, 7, 50)).toEqual([30 + 96 - 14, -20 + 28 + 48, 7]);
  const [s, t] = toFace(face, 112, 56);
  expect([s, t].map((each) => Number(each.toFixed(9)))).toEqual([100, 50]);
});

test('a stringer on the centreline lies half to each side, as thick at the nose and at the tail as was said', () => {
  const centre: Member = { kind: 'stringer', material, routing: 'solid', thickness: { nose: 10, tail: 34 } };
  const strip = { kind: 'strip', material, routing: 'open', joint: 'dotted' } as const;
  const { joints } = layupOf({ centre, centreJoint: 'dotted', right: [strip] }, 2000);
  const at = (x: number) => joints.map((joint) => joint.at + joint.slope * x);
  expect(at(0)).toEqual([-5, 5]);
  expect(at(2000).map((y) => Number(y.toFixed(9)))).toEqual([-17, 17]);
});
