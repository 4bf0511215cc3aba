import { formOf } from '../form/form.js';
import { laidOver } from '../place/icp.js';
import { after, moved, movedAll } from '../place/rigid.js';
import type { Triangles } from '../triangles.js';
import type { Scan } from './scan.js';

/**
 * A scan of a shaped board laid over the board as drawn, by shape: in the frame of the drawing, where its nose need not
 * lie at 0 nor its bottom touch it.
 */
export function registered(scan: Scan, drawn: Triangles): Scan {
  const { mesh, measured, holes } = scan;
  const by = laidOver(mesh.positions, drawn);
  const placed: Triangles = { ...mesh, positions: movedAll(by, mesh.positions) };
  let tip = Infinity;
  for (let k = 0; k < placed.positions.length; k += 3) tip = Math.min(tip, placed.positions[k]!);
  const fromTip = placed.positions.map((value, k) => (k % 3 === 0 ? value - tip : value));
  const form = formOf({ ...mesh, positions: fromTip }, measured);
  if ('kind' in form) throw new Error(`a scan that had a form has none where it was moved to: ${form.kind}`);
  const length = form.length + tip;
  return {
    ...scan,
    mesh: placed,
    holes: holes.map((hole) => ({ ...hole, rim: hole.rim.map((point) => moved(by, point)) })),
    form: {
      ...form,
      length,
      lowest: 0,
      stations: form.stations
        .map((station) => ({ ...station, x: station.x + tip, bottom: station.bottom + form.lowest }))
        .filter(({ x }) => x > AT_TIP && x < length - AT_TIP),
    },
    setUp: { ...scan.setUp, place: after(by, scan.setUp.place) },
  };
}

/** A station nearer to a tip, mm, is not told from it. */
const AT_TIP = 1;
