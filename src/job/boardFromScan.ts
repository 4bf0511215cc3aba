import type { FormStation } from '../scan/form/form.js';
import type { Scan } from '../scan/whole/scan.js';
import type { BoardSpec, NoseShape, OutlineSpec, SectionStation } from './spec/board.js';

/** The board of a scan, as if it had been measured at its stations; unknown throughout where there is none. */
export function boardFromScan(scan: Scan | undefined): BoardSpec {
  if (!scan) {
    const unknown: OutlineSpec = { nose: { kind: 'round' }, tail: { kind: 'round' }, points: [] };
    return { length: NaN, right: unknown, profile: [], sections: [] };
  }
  const { form } = scan;
  const { length, stations } = form;
  const outline = (side: 0 | 1): OutlineSpec => {
    const end = (shape: typeof form.nose): NoseShape =>
      typeof shape === 'string' ? { kind: shape } : { kind: 'square', half: shape.square[side] };
    const tail = end(form.tail);
    return {
      nose: end(form.nose),
      tail: tail.kind === 'pointed' ? { kind: 'pin' } : tail,
      points: stations.map(({ x, half }) => ({ x, half: half[side] })),
    };
  };
  const sections = (side: 0 | 1) =>
    stations.map((station): SectionStation => ({
      x: station.x,
      kind: 'points',
      points: station.sections[side].map(({ y, z }) => ({ y, z, edge: false })),
    }));
  const [first, second] = [stations[0]!, stations[1]!];
  const [last, before] = [stations.at(-1)!, stations.at(-2)!];
  return {
    length,
    right: outline(1),
    left: outline(0),
    profile: [
      tipOf(0, first, second),
      ...stations.map(({ x, bottom, thickness }) => ({ x, bottom, thickness })),
      tipOf(length, last, before),
    ],
    sections: sections(1),
    leftSections: sections(0),
    scan,
  };
}

/** Bottom and thickness at a tip: straight on from the last two stations, never thicker and never less than nothing. */
function tipOf(x: number, near: FormStation, far: FormStation) {
  const on = (key: 'bottom' | 'thickness') => near[key] + ((x - near.x) / (near.x - far.x)) * (near[key] - far[key]);
  return { x, bottom: on('bottom'), thickness: Math.min(near.thickness, Math.max(0, on('thickness'))) };
}
