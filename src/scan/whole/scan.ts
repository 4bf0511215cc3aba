import { cleaned, scaled, spanOf, type Hole, type Mended } from '../clean/clean.js';
import type { ScanFault } from '../fault.js';
import { formOf, type Form } from '../form/form.js';
import { alongAxes } from '../place/axes.js';
import { moved, movedAll } from '../place/rigid.js';
import { setUp, type Mark, type SetUp, type Turned } from '../place/setUp.js';
import { readMesh } from '../read/readMesh.js';
import type { Triangles } from '../triangles.js';

/** What a file's lengths may be in, mm. */
export const SCAN_UNITS = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 } as const;
export type ScanUnit = keyof typeof SCAN_UNITS;

/** What a builder says of a mesh. Lengths in mm, `marks` where they are found in the file's unit. */
export interface ScanAsked {
  readonly unit: ScanUnit;
  readonly round?: boolean;
  readonly over?: boolean;
  readonly marks?: readonly Mark[];
  /** What the board measures from tip to tip: the scan is stretched to it. */
  readonly length?: number;
}

/** A place where the scan has no triangles, board frame, mm. */
export interface ScanHole {
  readonly rim: readonly (readonly [x: number, y: number, z: number])[];
  /** How far across it is at most. */
  readonly span: number;
}

/** A mesh of a board, set up: closed, outward-oriented, in the board frame, mm. */
export interface Scan {
  readonly mesh: Triangles;
  /** Where in `mesh.triangles` begin those that close holes and cracks. */
  readonly measured: number;
  readonly holes: readonly ScanHole[];
  readonly form: Form;
  readonly setUp: SetUp;
  readonly mended: Mended;
}

/** Boards are as long as this, mm. */
const SHORTEST = 500;
const LONGEST = 8000;
/** A board is so much longer than wide at least, and so much wider than thick; and no wider than this, mm. */
const SLENDER = 1.7;
const FLAT = 1.5;
const WIDEST = 1600;
/** A stretch to a known length of more than this is a mistake. */
const STRETCH = 0.03;
/** Lengths nearer than this, mm, are the same. */
const SAME_LENGTH = 0.01;
/** Of the whole area what may be missing: more, and it is a scan of one face. */
const MISSING = 0.2;

/** Reads a mesh, puts it right, and lays it as a board lies. */
export function scanOf(bytes: Uint8Array, name: string, asked: ScanAsked): Scan | ScanFault {
  const read = readMesh(bytes, name);
  if ('kind' in read) return read;
  const size = sizesOf(read);
  const length = size[0] * SCAN_UNITS[asked.unit];
  if (!(length >= SHORTEST && length <= LONGEST)) {
    const units = Object.keys(SCAN_UNITS) as ScanUnit[];
    const would = units.filter(
      (unit) => size[0] * SCAN_UNITS[unit] >= SHORTEST && size[0] * SCAN_UNITS[unit] <= LONGEST,
    );
    return { kind: 'size', length: size[0], unit: asked.unit, would };
  }
  if (asked.length !== undefined && Math.abs(asked.length / length - 1) > STRETCH)
    return { kind: 'knownLength', length, known: asked.length };
  return scanAt(SCAN_UNITS[asked.unit], read, asked);
}

/** @param factor what one of the file's numbers is, mm */
function scanAt(factor: number, read: Triangles, asked: ScanAsked): Scan | ScanFault {
  const clean = cleaned(scaled(read, factor));
  if ('kind' in clean) return clean;
  const sizes = sizesOf(clean.mesh);
  if (sizes[0] < SLENDER * sizes[1] || sizes[1] < FLAT * sizes[2] || sizes[1] > WIDEST)
    return { kind: 'noBoard', sizes };
  const missing = areaOf(clean.mesh, clean.measured);
  if (missing.share > MISSING) return { kind: 'oneFace', share: missing.share };
  const turned: Turned = {
    ...asked,
    ...(asked.marks && {
      marks: asked.marks.map(({ found, ...mark }) => ({
        ...mark,
        found: [found[0] * factor, found[1] * factor, found[2] * factor] as const,
      })),
    }),
  };
  const laid = setUp(clean.mesh, turned);
  if ('kind' in laid) return laid;
  const placed: Triangles = { ...clean.mesh, positions: movedAll(laid.place, clean.mesh.positions) };
  const form = formOf(placed, clean.measured);
  if ('kind' in form) return form;
  const { length: known, ...others } = asked;
  if (known !== undefined && Math.abs(form.length - known) > SAME_LENGTH)
    return scanAt((factor * known) / form.length, read, others);
  return standing({ placed, clean, form, laid });
}

/** With heights from the lowest bottom on the centreline. */
function standing(made: {
  readonly placed: Triangles;
  readonly clean: { readonly measured: number; readonly holes: readonly Hole[]; readonly mended: Mended };
  readonly form: Form & { readonly lowest: number };
  readonly laid: SetUp;
}): Scan {
  const { placed, clean, form, laid } = made;
  const { positions } = placed;
  for (let k = 2; k < positions.length; k += 3) positions[k] = positions[k]! - form.lowest;
  const [x, y, z] = laid.place.shift;
  return {
    mesh: placed,
    measured: clean.measured,
    holes: clean.holes.map((hole) => ({
      rim: hole.rim.map(
        (point) => [positions[3 * point]!, positions[3 * point + 1]!, positions[3 * point + 2]!] as const,
      ),
      span: spanOf(hole, positions),
    })),
    form,
    setUp: { ...laid, place: { ...laid.place, shift: [x, y, z - form.lowest] } },
    mended: clean.mended,
  };
}

/**
 * How long, wide and thick triangles are along their principal axes, in their own unit: of many, by some spread over
 * all of them.
 */
function sizesOf({ positions: p, triangles }: Triangles): [number, number, number] {
  const step = 3 * Math.ceil(triangles.length / 3 / LOOKED_AT);
  const some = new Uint32Array(3 * Math.ceil(triangles.length / step));
  for (let t = 0, k = 0; t < triangles.length; t += step, k += 3) some.set(triangles.subarray(t, t + 3), k);
  const axes = alongAxes({ positions: p, triangles: some });
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const point of some)
    moved(axes, [p[3 * point]!, p[3 * point + 1]!, p[3 * point + 2]!]).forEach((value, axis) => {
      low[axis] = Math.min(low[axis]!, value);
      high[axis] = Math.max(high[axis]!, value);
    });
  return [high[0]! - low[0]!, high[1]! - low[1]!, high[2]! - low[2]!];
}

/** Triangles by which the size of a mesh is told. */
const LOOKED_AT = 20_000;

/** What share of the area lies from `from` on. */
function areaOf({ positions: p, triangles }: Triangles, from: number): { share: number } {
  let [whole, part] = [0, 0];
  for (let t = 0; t < triangles.length; t += 3) {
    const [i, j, k] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
    const [ux, uy, uz] = [p[j]! - p[i]!, p[j + 1]! - p[i + 1]!, p[j + 2]! - p[i + 2]!];
    const [vx, vy, vz] = [p[k]! - p[i]!, p[k + 1]! - p[i + 1]!, p[k + 2]! - p[i + 2]!];
    const area = Math.sqrt((uy * vz - uz * vy) ** 2 + (uz * vx - ux * vz) ** 2 + (ux * vy - uy * vx) ** 2);
    whole += area;
    if (t >= from) part += area;
  }
  return { share: part / whole };
}
