import type { Chamber, Note, Web } from '../chamber/chamber.js';
import type { Layup } from '../layup/layup.js';
import type { Dot, Glue, GlueLoss, GlueSide, Smear } from './dot.js';
import type { Gluing } from './glued.js';

/** Completes what was planned for the centre and the right side with its mirror image on the left, in the layup of the whole board. */
export function mirrored(half: Gluing, layup: Layup): Gluing {
  const parities = new Map(half.layup.rows.map(({ id, parity }) => [id, parity]));
  const rows = layup.rows.map((row) => ({ ...row, parity: parities.get(toRight(row.id)) ?? row.parity }));
  const { chambers, webs, notes, asked } = half.chambers;
  // Rows go from left to right, so the mirrored ones come first, the outermost before the others.
  const inRows = <T extends { readonly row: string }>(things: readonly T[], turned: (thing: T) => T) =>
    rows.flatMap(({ id, side }) => {
      const own = things.filter(({ row }) => row === toRight(id));
      return side === 'L' ? own.map(turned) : own;
    });
  return {
    layup: { ...layup, rows },
    chambers: {
      chambers: inRows(chambers, leftChamber),
      webs: inRows(webs, leftWeb),
      notes: [...notes.filter(({ where }) => isRight(where)).map(leftNote), ...notes],
      asked,
    },
    glue: leftAndRight(half.glue),
  };
}

/** Names of the right side: rows, chambers, joints, dots. */
const isRight = (name: string): boolean => /^R\d/.test(name);
const toLeft = (name: string): string => (isRight(name) ? `L${name.slice(1)}` : name);
const toRight = (name: string): string => (/^L\d/.test(name) ? `R${name.slice(1)}` : name);

function leftChamber(chamber: Chamber): Chamber {
  const { deck, bottom, rail } = chamber.at;
  const turned = ([x, y, z]: readonly [number, number, number]) => [x, 0 - y, z] as const;
  return {
    ...chamber,
    id: toLeft(chamber.id),
    row: toLeft(chamber.row),
    at: { deck: turned(deck), bottom: turned(bottom), rail: turned(rail) },
  };
}

function leftWeb(web: Web): Web {
  return { ...web, row: toLeft(web.row), between: [toLeft(web.between[0]), toLeft(web.between[1])] };
}

function leftNote(note: Note): Note {
  return { ...note, where: toLeft(note.where), by: note.by.map(toLeft) };
}

function leftAndRight({ dots, smears, losses }: Glue): Glue {
  const sides = (each: readonly GlueSide[]) =>
    each.map(({ row, way, chambers }) => ({ row: toLeft(row), way, chambers: chambers.map(toLeft) }));
  const left = <T extends Dot | Smear>(spots: readonly T[]): T[] => {
    const joints = [...new Set(spots.filter(({ joint }) => isRight(joint)).map(({ joint }) => joint))].reverse();
    return joints.flatMap((joint) =>
      spots
        .filter((spot) => spot.joint === joint)
        .map((spot) => ({ ...spot, id: toLeft(spot.id), joint: toLeft(spot.joint), sides: sides(spot.sides) })),
    );
  };
  const leftLoss = (loss: GlueLoss): GlueLoss => ({ ...loss, place: toLeft(loss.place), by: loss.by.map(toLeft) });
  return {
    dots: [...left(dots), ...dots],
    smears: [...left(smears), ...smears],
    losses: [...losses.filter(({ place }) => isRight(place)).map(leftLoss), ...losses],
  };
}
