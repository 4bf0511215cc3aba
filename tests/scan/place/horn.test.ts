import { expect, it } from 'vitest';
import { Matrix4, Quaternion, Vector3 } from 'three';
import { hornOf } from '../../../src/scan/place/horn.js';
import { after, inverse, moved } from '../../../src/scan/place/rigid.js';
import { randomFrom } from '../bodies.js';

it('brings points back to where three (https://github.com/mrdoob/three.js) took them from', () => {
  const random = randomFrom(87);
  const some = () => 1000 * (random() - 0.5);
  for (let trial = 0; trial < 40; trial++) {
    const points = Array.from({ length: 3 + (trial % 5) }, () => [some(), some(), some()] as const);
    const turn = new Quaternion(some(), some(), some(), some()).normalize();
    const put = new Matrix4().compose(new Vector3(some(), some(), some()), turn, new Vector3(1, 1, 1));
    const there = points.map((p) => new Vector3(...p).applyMatrix4(put).toArray());
    const found = hornOf(points, there);
    points.forEach((p, i) => {
      moved(found, p).forEach((value, axis) => expect(value).toBeCloseTo(there[i]![axis]!, 6));
      moved(after(inverse(found), found), p).forEach((value, axis) => expect(value).toBeCloseTo(p[axis]!, 6));
    });
  }
});
