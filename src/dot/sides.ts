import type { Chamber } from '../chamber/chamber.js';
import { chambersOf, type CarvedRow } from '../chamber/chambers.js';
import { stretchOf, type Stretch } from '../chamber/stretch.js';
import { lineOnRow, type Keep } from './around.js';
import type { GlueLoss, GlueSide } from './dot.js';
import { gapTo, type Spot } from './spot.js';

export type Sides = ReadonlyMap<Spot, readonly GlueSide[]>;

/** What glue meets on either side, in the chambers as carved. */
export function sidesOf(rows: readonly CarvedRow[], keeps: readonly Keep[], losses: readonly GlueLoss[]): Sides {
  const sides = new Map<Spot, GlueSide[]>();
  const runs = new Map(
    rows.map((row) => [
      row.carving.row.id,
      chambersOf(row).map((chamber): Run => ({ chamber, ...stretchOf(chamber.profile) })),
    ]),
  );
  for (const keep of keeps) {
    const { spot, at } = keep;
    const open = runs.get(at.row.id)!.filter(({ chamber }) => chamber.depth[1] > keep.obstacle.beyond);
    const trimmed = losses.some(({ row, by }) => row === at.row.id && by.includes(spot.name));
    const side = sideOf(lineOnRow(spot, at), open, trimmed);
    sides.set(spot, [...(sides.get(spot) ?? []), { row: at.row.id, ...side }]);
  }
  return sides;
}

/** A chamber and the stretch of its row that it takes. */
interface Run extends Stretch {
  readonly chamber: Chamber;
}

function sideOf(line: Pick<Spot, 'from' | 'to'>, runs: readonly Run[], trimmed: boolean): Omit<GlueSide, 'row'> {
  const middle = (line.from[0] + line.to[0]) / 2;
  const around = runs.find(({ from, to }) => from < middle && middle < to)?.chamber;
  if (around) return { way: gapTo(around.profile, line).inside ? 'swallowed' : 'passed', chambers: [around.id] };
  const before = runs.findLast(({ to }) => to <= middle)?.chamber;
  const behind = runs.find(({ from }) => from >= middle)?.chamber;
  const beside = [before, behind].flatMap((chamber) => (chamber ? [chamber.id] : []));
  if (before && behind && before.place === behind.place) return { way: 'split', chambers: beside };
  return { way: trimmed ? 'trimmed' : beside.length < 2 ? 'end' : 'web', chambers: beside };
}
