import { PATCHES } from '../../src/board/mesh.js';
import type { Plan } from '../../src/plan.js';
import { reportOf } from '../../src/cli/report.js';
import { depthTo, endJoint, routedChambers } from '../../src/proof/published.js';

/** Rounding of the computation, mm. */
const NEAR = 0.01;
/** What is left of a far face this thin, mm, is gone. */
const THROUGH = 0.05;

/**
 * Everything in which what a plan says of itself does not fit together: counts, names, depths, what is left solid;
 * empty when all is well.
 */
export function contradictions(plan: Plan): string[] {
  const { chambers, blocks, routing, layup, notes, webs, glue, asked, job } = plan;
  const ids = chambers.map(({ id }) => id);
  const found: string[] = [];
  const same = (what: string, a: unknown, b: unknown) => {
    if (JSON.stringify(a) !== JSON.stringify(b)) found.push(`${what}: ${JSON.stringify(a)} and ${JSON.stringify(b)}`);
  };
  const known = (what: string, names: readonly string[]) => {
    for (const name of names) if (!ids.includes(name)) found.push(`${what} names ${name}, which is no chamber`);
  };
  same('every name once', new Set(ids).size, ids.length);
  same('a block for each chamber', blocks.map(({ id }) => id).sort(), [...ids].sort());
  const told = reportOf(plan).flatMap((line) => /, (\d+) chambers? and as many blocks/.exec(line)?.[1] ?? []);
  same('chambers told', told, [String(ids.length)]);
  const { deckSkin, bottomSkin, railWall, tolerance } = job.chambers;
  [deckSkin, bottomSkin, railWall].forEach((wall, i) => {
    if (Math.abs(asked[PATCHES[i]!] - wall - tolerance) > NEAR)
      found.push(`${PATCHES[i]} asked is not that of the job`);
  });

  for (const row of layup.rows) {
    const own = chambers.filter((chamber) => chamber.row === row.id);
    const routed = routing.rows.find((each) => each.row === row.id);
    same(`webs of ${row.id}`, webs.filter((web) => web.row === row.id).length, Math.max(0, own.length - 1));
    same(
      `routed in ${row.id}`,
      (routed?.chambers ?? []).map(({ chamber }) => chamber).sort(),
      own.map(({ id }) => id).sort(),
    );
    const deepest = Math.max(0, ...own.map(({ depth }) => depth[1]));
    if (routed && own.length > 0 && Math.abs(routed.depth - deepest) > NEAR)
      found.push(`${row.id} is told ${routed.depth} mm deep, its deepest chamber goes ${deepest} mm`);
    const [first, last] = [own[0]?.place ?? 1, own.at(-1)?.place ?? 0];
    for (let place = first; place <= last; place++) {
      const isTold = notes.some((note) => note.row === row.id && note.place === place && note.kind === 'solid');
      if (!own.some((chamber) => chamber.place === place) && !isTold)
        found.push(`place ${place} of ${row.id} is left solid in silence`);
    }
  }
  for (const { chamber, row, from, to } of routedChambers(plan)) {
    const joint = row.end === 'face' ? endJoint(row) : undefined;
    if (!joint) continue;
    const left = [from, to].map((s) => depthTo(joint, row, s) - chamber.depth[1]);
    const isThrough = Math.max(...left) <= THROUGH;
    const isBlind = notes.some(({ where, why }) => where === chamber.id && why === 'blind');
    if (isThrough === isBlind)
      found.push(`${chamber.id} ${isThrough ? 'goes' : 'does not go'} through, and says otherwise`);
  }
  for (const { id, sides } of [...glue.dots, ...glue.smears])
    known(
      id,
      sides.flatMap((side) => side.chambers),
    );
  for (const guide of routing.guides) {
    known(guide.id, guide.chambers);
    same(
      `set at ${guide.id}`,
      routing.settings.flatMap((setting) => (setting.guide === guide.id ? [setting.chamber] : [])).sort(),
      [...guide.chambers].sort(),
    );
  }
  return found;
}
