import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import type { OffsetPoint, OffsetStation } from '../parts/offsets.js';
import type { Say } from '../mistake/say.js';
import { FAR, modifiedZ } from './outliers.js';

/** A point may lie so far from its neighbour stations' sections, as a share of the thickness, before it is told. */
const BORNE = 0.2;
/** How much sections differ from station to station at least, as a share of the thickness. */
const EXACT = 0.01;

/** Tells the points of a table of offsets that lie far from the sections before and behind, all brought to one size. */
export function sectionsInDoubt(table: readonly OffsetStation[], units: Units, say: Say): void {
  if (table.length < 3 || table.some(({ points }) => points.some(({ y, z }) => Number.isNaN(y + z)))) return;
  const off = table.map((station, i) => {
    // Where one side has none, the next two on the other: so a slip counts for more where it is than beside it.
    const first = Math.min(Math.max(0, i - 1), table.length - 3);
    const near = table.slice(first, first + 3).filter((other) => other !== station);
    return station.points.map((_, p) => offFrom(station, p, near));
  });
  const all = off.flat();
  const most = off.map((points) => Math.max(...points.map(Math.abs)));
  table.forEach((station, i) => {
    const worst = off[i]!.findIndex((each) => Math.abs(each) === most[i]);
    const by = off[i]![worst]!;
    if (most[i]! <= BORNE || modifiedZ(by, all, EXACT) <= FAR) return;
    if (most[i]! < Math.max(...most.slice(Math.max(0, i - 2), i + 3))) return;
    const { y, z, line } = station.points[worst]!;
    const length = (mm: number) => printLength(mm, units);
    say.warning(
      [],
      `the point at ${length(station.x)} from the nose, y ${length(y)}, z ${length(z)} (line ${line} of the table) is far from the sections before and behind`,
      'measure and read it again; until then it is planned as written',
    );
  });
}

/**
 * How much higher a point of a station lies than the same place of other stations does on average, as a share of the
 * thickness.
 */
function offFrom(station: OffsetStation, p: number, others: readonly OffsetStation[]): number {
  const { half, bottom, thickness, apex } = sizeOf(station);
  const point = station.points[p]!;
  const up = (point.z - bottom) / thickness;
  const theirs = others.map((other) => upAt(other, point.y / half, p <= apex));
  return up - theirs.reduce((sum, each) => sum + each, 0) / theirs.length;
}

/**
 * How high a section lies at a share of its half-width, below its widest point or above, as a share of its thickness.
 */
function upAt(station: OffsetStation, share: number, isBelow: boolean): number {
  const { half, bottom, thickness, apex } = sizeOf(station);
  const part: readonly OffsetPoint[] = isBelow
    ? station.points.slice(0, apex + 1)
    : [...station.points.slice(apex)].reverse();
  const y = share * half;
  const next = Math.max(
    1,
    part.findIndex((point) => point.y >= y - 1e-9),
  );
  const [a, b] = [part[next - 1] ?? part[0]!, part[next] ?? part[0]!];
  const z = b.y === a.y ? b.z : a.z + ((b.z - a.z) * (y - a.y)) / (b.y - a.y);
  return (z - bottom) / thickness;
}

function sizeOf({ points }: OffsetStation) {
  const apex = points.reduce((widest, { y }, i) => (y > points[widest]!.y ? i : widest), 0);
  const bottom = points[0]!.z;
  return { apex, half: points[apex]!.y, bottom, thickness: points.at(-1)!.z - bottom };
}
