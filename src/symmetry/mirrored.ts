import type { GluingJob } from '../dot/gluingJob.js';
import type { Chamber, Note, Web } from '../chamber/chamber.js';
import type { Layup } from '../layup/layup.js';
import type { Dot, Glue, GlueLoss, GlueSide, Smear } from '../dot/dot.js';
import type { Arrangement } from './arrangement.js';
import { leftNames, type LeftNames } from './leftNames.js';

/**
 * Completes what was planned for the centre and the right side with its mirror image on the left, in the layup of the
 * whole board.
 */
export function mirrored(half: Arrangement, layup: Layup, job: GluingJob): Arrangement {
  const names = leftNames(half, layup, job);
  const mirrorOf = new Map(
    half.layup.rows.flatMap((row) => (row.side === 'R' ? [[names.of(row.id), row] as const] : [])),
  );
  const rows = layup.rows.map((row) => {
    const planned = mirrorOf.get(row.id) ?? half.layup.rows.find(({ id }) => id === row.id);
    return { ...row, parity: planned?.parity ?? row.parity };
  });
  const { chambers, webs, notes, asked } = half.chambers;
  // Rows go from left to right, so the mirrored ones come first, the outermost before the others.
  const inRows = <T extends { readonly row: string }>(things: readonly T[], turned: (thing: T) => T) =>
    rows.flatMap(({ id }) => {
      const mirror = mirrorOf.get(id);
      const own = things.filter(({ row }) => row === (mirror?.id ?? id));
      return mirror ? own.map(turned) : own;
    });
  return {
    layup: { ...layup, rows },
    chambers: {
      chambers: inRows(chambers, (chamber) => leftChamber(chamber, names)),
      webs: inRows(webs, (web) => leftWeb(web, names)),
      notes: [...notes.filter(({ where }) => names.has(where)).map((note) => leftNote(note, names)), ...notes],
      asked,
    },
    glue: leftAndRight(half.glue, names),
  };
}

function leftChamber(chamber: Chamber, names: LeftNames): Chamber {
  const { deck, bottom, rail } = chamber.at;
  const turned = ([x, y, z]: readonly [number, number, number]) => [x, 0 - y, z] as const;
  return {
    ...chamber,
    id: names.of(chamber.id),
    row: names.of(chamber.row),
    at: { deck: turned(deck), bottom: turned(bottom), rail: turned(rail) },
  };
}

function leftWeb(web: Web, names: LeftNames): Web {
  return { ...web, row: names.of(web.row), between: [names.of(web.between[0]), names.of(web.between[1])] };
}

function leftNote(note: Note, names: LeftNames): Note {
  const by = note.by.map(note.why === 'keep-out' ? names.ofKeepOut : names.of);
  return { ...note, where: names.of(note.where), ...(note.row !== undefined && { row: names.of(note.row) }), by };
}

function leftAndRight({ dots, smears, losses }: Glue, names: LeftNames): Glue {
  const sides = (each: readonly GlueSide[]) =>
    each.map(({ row, way, chambers }) => ({ row: names.of(row), way, chambers: chambers.map(names.of) }));
  const left = <T extends Dot | Smear>(spots: readonly T[]): T[] => {
    const joints = [...new Set(spots.filter(({ joint }) => names.has(joint)).map(({ joint }) => joint))].reverse();
    return joints.flatMap((joint) =>
      spots
        .filter((spot) => spot.joint === joint)
        .map((spot) => ({ ...spot, id: names.of(spot.id), joint: names.of(joint), sides: sides(spot.sides) })),
    );
  };
  const leftLoss = (loss: GlueLoss): GlueLoss => ({
    ...loss,
    row: names.of(loss.row),
    place: names.of(loss.place),
    by: loss.by.map(names.of),
  });
  /** What glue on the centreline meets on its right, it meets on its left as well. */
  const right = <T extends Dot | Smear>(spots: readonly T[]): T[] =>
    spots.map((spot) => {
      const onRight = spot.sides.filter(({ row }) => names.has(row));
      return names.has(spot.joint) ? spot : { ...spot, sides: [...sides(onRight), ...spot.sides] };
    });
  return {
    dots: [...left(dots), ...right(dots)],
    smears: [...left(smears), ...right(smears)],
    losses: [...losses.filter(({ row }) => names.has(row)).map(leftLoss), ...losses],
  };
}
