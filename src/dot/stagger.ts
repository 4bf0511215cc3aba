import type { GluingJob } from './gluingJob.js';
import type { Board } from '../board/board.js';
import type { Note } from '../chamber/chamber.js';
import { carvingIn, drawnPlaces, shapesOf, type DrawnRow } from '../chamber/chambers.js';
import { Past } from '../kept/past.js';
import type { Layup, Row } from '../layup/layup.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { jointFaces, type JointFace } from './jointFace.js';
import { plannedJoints } from './planned.js';

type Parity = Row['parity'];

/**
 * What a choice of parities costs: dots that could not be put often enough, mm; chamber given up, mm³; rows shifted.
 */
interface Toll {
  readonly excess: number;
  readonly lost: number;
  readonly shifted: number;
  readonly parities: readonly Parity[];
}

/**
 * The layup with rows shifted where that lets dots sit in webs that meet, if the job allows it and it costs less volume
 * than anything else. Every row may take either parity; by dynamic programming from row to row, so no other choice of
 * parities costs less.
 */
export function restaggered(
  board: Board,
  layup: Layup,
  trees: PatchTrees,
  job: GluingJob,
  past: Past = new Past(),
): { layup: Layup; notes: Note[] } {
  if (!job.dots.may.includes('stagger') || layup.rows.length === 0) return { layup, notes: [] };
  const both = ([0, 1] as const).map((parity) => ({ ...layup, rows: layup.rows.map((row) => ({ ...row, parity })) }));
  const rows = both.map((each) => drawnPlaces(carvingIn(board, each, trees, job, past)));
  const faces = jointFaces(layup, past);

  const single = (i: number, parity: Parity): Toll => ({
    excess: 0,
    lost: -Math.round(1e6 * volumeOf(rows[parity]![i]!)),
    shifted: layup.rows[i]!.parity === parity ? 0 : 1,
    parities: [parity],
  });
  let tolls = ([0, 1] as const).map((parity) => single(0, parity));
  for (let i = 1; i < layup.rows.length; i++) {
    const between = faces.find(
      ({ rows: at }) =>
        at.some(({ row }) => row.id === layup.rows[i - 1]!.id) && at.some(({ row }) => row.id === layup.rows[i]!.id),
    );
    tolls = ([0, 1] as const).map((parity) => {
      const own = single(i, parity);
      const chains = tolls.map((before): Toll => {
        const last = before.parities[i - 1]!;
        const joint = between
          ? jointToll(between, board, trees, [rows[last]![i - 1]!, rows[parity]![i]!], job, past)
          : FREE;
        return {
          excess: before.excess + joint.excess,
          lost: before.lost + own.lost + joint.lost,
          shifted: before.shifted + own.shifted,
          parities: [...before.parities, parity],
        };
      });
      return cheaper(chains[0]!, chains[1]!);
    });
  }
  const { parities } = cheaper(tolls[0]!, tolls[1]!);
  const notes = layup.rows.flatMap((row, i): Note[] =>
    row.parity === parities[i] ? [] : [{ kind: 'shifted', where: row.id, row: row.id, why: 'stagger', by: [] }],
  );
  return { layup: { ...layup, rows: layup.rows.map((row, i) => ({ ...row, parity: parities[i]! })) }, notes };
}

const FREE = { excess: 0, lost: 0 };

/** What the dots of one joint cost the rows on both sides. */
function jointToll(
  face: JointFace,
  board: Board,
  trees: PatchTrees,
  sides: readonly DrawnRow[],
  job: GluingJob,
  past: Past = new Past(),
) {
  const [planned] = plannedJoints(board, [face], trees, sides.flatMap(shapesOf), job, past);
  const excess = planned!.notes.reduce((sum, { has = 0, needs = 0 }) => sum + Math.max(0, has - needs), 0);
  return { excess: Math.round(1000 * excess) / 1000, lost: planned!.lost };
}

function cheaper(a: Toll, b: Toll): Toll {
  if (a.excess !== b.excess) return a.excess < b.excess ? a : b;
  if (a.lost !== b.lost) return a.lost < b.lost ? a : b;
  return a.shifted <= b.shifted ? a : b;
}

function volumeOf(row: DrawnRow): number {
  return shapesOf(row).reduce((sum, { volume }) => sum + volume, 0);
}
