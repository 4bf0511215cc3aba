import type { Manifold } from 'manifold-3d';

/** Volume, mm³, and its moments about the origin, from the kernel's own triangles: tetrahedra to the origin. */
export function momentsOfSolid(solid: Manifold) {
  const { vertProperties: v, triVerts, numProp } = solid.getMesh();
  let [amount, x, xx, yy] = [0, 0, 0, 0];
  for (let t = 0; t < triVerts.length; t += 3) {
    const corner = (k: number) => [0, 1, 2].map((axis) => v[triVerts[t + k]! * numProp + axis]!);
    const [a, b, c] = [corner(0), corner(1), corner(2)] as [number[], number[], number[]];
    const sixfold =
      a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) -
      a[1]! * (b[0]! * c[2]! - b[2]! * c[0]!) +
      a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!);
    const square = (axis: number) => {
      const [p, q, r] = [a[axis]!, b[axis]!, c[axis]!];
      return (sixfold / 60) * (p * p + q * q + r * r + p * q + q * r + r * p);
    };
    amount += sixfold / 6;
    x += (sixfold / 24) * (a[0]! + b[0]! + c[0]!);
    xx += square(0);
    yy += square(1);
  }
  return { amount, x, xx, yy };
}
