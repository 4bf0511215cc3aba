import core from 'paper/dist/paper-core.js';
import { expect, test } from 'vitest';
import { pathData } from '../../src/contour/pathData.js';

const scope = core as unknown as paper.PaperScope;
const downward = (v: { x: number; y: number }) => ({ x: v.x, y: -v.y });
const number = (value: number) => String(value);

/** As another library reads it, its curves in as many pieces as it likes. */
function read(data: string): paper.Path {
  if (!(scope.project as paper.Project | null)) scope.setup(new scope.Size(1, 1));
  return new scope.Path({ pathData: data, insert: false });
}

// paper.js reads SVG paths by itself; it draws arcs as Bézier curves, true to a few parts in ten thousand.
test('a slot read back by another library has its straights and its half circles, and goes the way it went', () => {
  const slot = [
    { x: 0, y: 0 },
    { x: 60, y: 0, bulge: 1 },
    { x: 60, y: 20 },
    { x: 0, y: 20, bulge: 1 },
  ];
  const path = read(pathData(slot, true, downward, number));
  expect(path.closed).toBe(true);
  expect(path.length / (120 + 20 * Math.PI)).toBeCloseTo(1, 3);
  expect(Math.abs(path.area) / (60 * 20 + Math.PI * 100)).toBeCloseTo(1, 3);
  expect([path.bounds.left, path.bounds.right, path.bounds.top, path.bounds.bottom]).toEqual(
    [-10, 70, -20, 0].map((v) => expect.closeTo(v, 2)),
  );
});

test('an arc beyond half a circle, and one that turns right, come back with their own length and side', () => {
  // Three quarters of a circle of 10 mm: the bulge is the tangent of a quarter of 270°.
  const bulge = Math.tan((270 / 4) * (Math.PI / 180));
  const left = read(
    pathData(
      [
        { x: 10, y: 0, bulge },
        { x: 0, y: -10 },
      ],
      false,
      downward,
      number,
    ),
  );
  expect(left.closed).toBe(false);
  expect(left.length / (15 * Math.PI)).toBeCloseTo(1, 3);
  expect(left.bounds.left).toBeCloseTo(-10, 2);
  const right = read(
    pathData(
      [
        { x: 0, y: 0, bulge: -1 },
        { x: 20, y: 0 },
      ],
      false,
      downward,
      number,
    ),
  );
  // A clockwise half circle from left to right goes over the top: `y` up in the frame, less than 0 in the picture.
  expect([right.bounds.top, right.bounds.bottom]).toEqual([-10, 0].map((v) => expect.closeTo(v, 2)));
  const up = read(
    pathData(
      [
        { x: 0, y: 0 },
        { x: 20, y: 5 },
      ],
      false,
      downward,
      number,
    ),
  );
  expect(up.lastSegment.point.y).toBe(-5);
});
