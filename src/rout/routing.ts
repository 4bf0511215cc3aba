import type { Board } from '../board/board.js';
import type { Chamber, Note, Web } from '../chamber/chamber.js';
import { websOf, type CarvingJob, type Chambers } from '../chamber/chambers.js';
import type { Glue } from '../dot/dot.js';
import type { Job } from '../job/job.js';
import type { RoutingSpec } from '../job/spec/routing.js';
import type { Layup } from '../layup/layup.js';
import { WRITTEN_STEP } from '../length/rounded.js';
import type { PatchTrees } from '../wall/patchTree.js';
import { cutAcross } from './cutAcross.js';
import { familyOf, type Size } from './family.js';
import { guideOffset } from './opening.js';
import type { CurvePoint, Guide, GuideSetting, Routing } from './rout.js';
import { setUpOf } from './setUp.js';
import { sharedCutOf } from './shared.js';

export interface Routed {
  /** As given, or cut to shared guides. */
  readonly chambers: Chambers;
  readonly routing: Routing;
}

/**
 * How the chambers are routed; where the job wants guides shared, the chambers as those guides cut them. A chamber that
 * takes glue away whole keeps a guide of its own where the shared one would cut across it.
 */
export function routed(
  board: Board,
  layup: Layup,
  trees: PatchTrees,
  given: Chambers,
  glue: Glue,
  job: RoutedJob,
): Routed {
  const shared = sharing(board, layup, trees, given.chambers, glue, job);
  const { tolerance, cutterDiameter } = job.chambers;
  const setUps = layup.rows.map((row) =>
    setUpOf(
      row,
      shared.chambers.filter((chamber) => chamber.row === row.id),
      { ...job.routing, tolerance },
    ),
  );
  return {
    chambers: {
      ...given,
      chambers: shared.chambers,
      webs: shared.webs ?? given.webs,
      notes: [...given.notes, ...setUps.flatMap(({ notes }) => notes), ...shared.notes],
    },
    routing: {
      rows: setUps.map(({ setUp }) => setUp),
      offset: guideOffset(job.routing.bush, cutterDiameter),
      guides: shared.guides,
      settings: shared.settings,
      curve: shared.curve,
    },
  };
}

export type RoutedJob = Pick<Job, 'chambers' | 'dots' | 'routing' | 'routed' | 'units'>;

/** These parts of a job as one thing that stays the same while they do. */
export function routedJobOf(
  carved: CarvingJob,
  dots: Job['dots'],
  routed: Job['routed'],
  units: Job['units'],
): RoutedJob {
  return { ...carved, dots, units, ...(routed && { routed }) };
}

interface Sharing {
  readonly chambers: readonly Chamber[];
  readonly webs?: readonly Web[];
  readonly guides: readonly Guide[];
  readonly settings: readonly GuideSetting[];
  readonly curve: readonly CurvePoint[];
  readonly notes: readonly Note[];
}

function sharing(
  board: Board,
  layup: Layup,
  trees: PatchTrees,
  chambers: readonly Chamber[],
  glue: Glue,
  job: RoutedJob,
): Sharing {
  if (!job.routing.guides) return { chambers, guides: [], settings: [], curve: [], notes: [] };
  const { cutterDiameter } = job.chambers;
  // What is routed already is cut to no other guide.
  const isDone = ({ row }: Chamber) => job.routed?.some((made) => made.row === row) === true;
  const family = familyOf(
    chambers.filter((chamber) => !isDone(chamber)),
    job.routing.guides,
    job.chambers,
    job.units,
  );
  const cuts = family.cuts.map((cut) => {
    const row = layup.rows.find(({ id }) => id === cut.chamber.row)!;
    const shared = sharedCutOf(cut, row.face, cutterDiameter, board, trees, WRITTEN_STEP[job.units]);
    const across = shared ? cutAcross(cut.chamber, shared.chamber.profile, glue, layup, job.dots.clearance) : [];
    return { ...cut, across, shared: across.length === 0 ? shared : undefined };
  });
  const sizes = [...new Set(cuts.flatMap(({ shared, size }) => (shared && size ? [size] : [])))];
  sizes.sort((a, b) => b.length * b.height - a.length * a.height || b.length - a.length);
  const nameOf = (size: Size) => `G${sizes.indexOf(size) + 1}`;
  const corner = job.routing.bush / 2;
  const out = 2 * guideOffset(job.routing.bush, cutterDiameter);
  const cutOf = new Map(cuts.map(({ chamber, shared }) => [chamber.id, shared?.chamber ?? chamber]));
  const cut = chambers.map((chamber) => cutOf.get(chamber.id) ?? chamber);
  return {
    chambers: cut,
    webs: layup.rows.flatMap((row) => websOf(cut.filter((chamber) => chamber.row === row.id))),
    guides: sizes.map((size): Guide => ({
      id: nameOf(size),
      cut: { ...size, corner: cutterDiameter / 2 },
      opening: { length: size.length + out, height: size.height + out, corner },
      chambers: cuts.flatMap((each) => (each.shared && each.size === size ? [each.chamber.id] : [])),
    })),
    settings: cuts.flatMap(({ shared, size }) => (shared && size ? [{ ...shared.setting, guide: nameOf(size) }] : [])),
    curve: family.curve,
    notes: [
      ...beyondShare(job.routing.guides, family.lost),
      ...cuts.flatMap(({ chamber: { id, row, place }, across, shared }): Note[] =>
        shared
          ? []
          : [{ kind: 'guide', where: id, row, place, why: across.length === 0 ? 'opening' : 'across', by: across }],
      ),
    ],
  };
}

/** Said where guides lose more than the job allows, because none of their shape lose less. */
function beyondShare(guides: NonNullable<RoutingSpec['guides']>, lost: number): Note[] {
  if (guides.kind === 'count' || lost <= guides.share) return [];
  return [{ kind: 'guide', where: 'guides', why: 'share', by: [`${(Math.ceil(1000 * lost) / 10).toFixed(1)} %`] }];
}
