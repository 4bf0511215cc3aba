import { describe, expect, test } from 'vitest';
import { faceLineAt } from '../../src/view/faceLine.js';
import { cutAcross } from '../../src/view/section.js';
import { planOfSample } from '../sheet/sample.js';

const straight = { id: '', on: 'in', piece: '', joint: '', origin: [0, 10], along: [1, 0], inward: [0, 1] } as const;
const box = {
  profile: [
    [100, 20],
    [200, 20],
    [200, 50],
    [100, 50],
  ],
  depth: [0, 30],
} as const;

describe('a chamber in a cross-section', () => {
  test('is as deep and as high as it is routed', () => {
    expect(cutAcross(box, { face: straight }, 150)).toEqual([
      [10, 20],
      [40, 20],
      [40, 50],
      [10, 50],
    ]);
  });

  test('is not there before its beginning and behind its end', () => {
    expect(cutAcross(box, { face: straight }, 99)).toBeUndefined();
    expect(cutAcross(box, { face: straight }, 201)).toBeUndefined();
  });

  test('is cut askew where its face is flared', () => {
    // A face turned by 30°: the plane x = 150 crosses depths t at s = (150 − t·inwardX) / cos 30°, and y = s·sin 30° +
    // t·cos 30°.
    const [sin, cos] = [0.5, Math.sqrt(3) / 2];
    const flared = { ...straight, origin: [0, 0], along: [cos, sin], inward: [-sin, cos] } as const;
    const cut = cutAcross(box, { face: flared }, 150)!;
    const ys = cut.map(([y]) => y);
    const y = (t: number) => ((150 + t * sin) / cos) * sin + t * cos;
    expect(Math.min(...ys)).toBeCloseTo(y(0), 9);
    expect(Math.max(...ys)).toBeCloseTo(y(30) > 0 && (150 + 30 * sin) / cos <= 200 ? y(30) : NaN, 9);
  });
});

test('a face on the centreline ends at the measured bottom and deck', () => {
  const { board, job } = planOfSample('mere-prone');
  const line = faceLineAt(board, { ...straight, origin: [0, 0] });
  for (const { x, bottom, thickness } of job.board.profile.slice(1, -1)) {
    const heights = line.heightsAt(x)!;
    expect(heights.bottom).toBeCloseTo(bottom, 6);
    expect(heights.deck).toBeCloseTo(bottom + thickness, 6);
  }
  expect(line.heightsAt(-1)).toBeUndefined();
});
