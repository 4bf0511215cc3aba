import { counted } from '../length/counted.js';
import { printAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import { planOf, type Plan } from '../plan.js';
import { overruns } from '../wall/overrun.js';
import { thinWalls } from '../wall/prove.js';
import { understood } from '../typed/args.js';
import { REFUSED, TO_ACT_ON, WELL, type Command, type Io } from './io.js';
import { jobFrom } from './jobFile.js';
import { lengthOption } from './lengthOption.js';
import { USAGE } from './usage.js';
import { proved, sayThin, WALL } from '../sheet/sound.js';

/** Nobody sets a router deeper than meant by more than this, mm. */
const MOST_TOO_DEEP = 50;

export const checkCommand: Command = {
  async run(args, io) {
    const asked = understood(args, { 'depth-error': { type: 'string' } }, 1);
    if ('why' in asked) {
      io.err(`${asked.why}\n\n  chamberwright ${USAGE.check}`);
      return REFUSED;
    }
    const written = asked.values['depth-error'];
    const read = jobFrom(asked.operands[0]!, io);
    if (!read) return REFUSED;
    const { job } = read;
    const error = written === undefined ? undefined : lengthOption('--depth-error', written, job.units, MOST_TOO_DEEP);
    if (error && 'why' in error) {
      io.err(error.why);
      return REFUSED;
    }
    const plan = planOf(job);
    const isSound = [checkPlan(plan, io), checkDrawn(plan, io), error === undefined || checkDepth(plan, error, io)];
    return isSound.every(Boolean) ? WELL : TO_ACT_ON;
  },
};

function checkPlan(plan: Plan, io: Io): boolean {
  const thin = proved(plan);
  for (const wall of thin) io.err(sayThin(wall, plan.job.units));
  if (thin.length === 0) io.out(`${counted(plan.chambers.length, 'chamber')}: every wall is at least what is asked.`);
  return thin.length === 0;
}

/** The chambers as drawn on the board as shaped: which must shrink, and to what. */
function checkDrawn({ drawn, chambers, layup, trees, board, asked, blocks, job }: Plan, io: Io): boolean {
  if (!drawn) return true;
  const thin = thinWalls(drawn.chambers, layup.rows, trees, board.mesh.chordError, asked);
  const must = new Set(thin.map(({ chamber }) => chamber));
  if (must.size === 0) {
    io.out('As shaped: all chambers as drawn still keep their walls.');
    return true;
  }
  io.err(`As shaped: ${must.size} of ${drawn.chambers.length} chambers as drawn must shrink.`);
  for (const id of must) {
    for (const wall of thin.filter(({ chamber }) => chamber === id)) io.err(`  ${sayThin(wall, job.units)}`);
    const before = drawn.blocks.find((block) => block.id === id)!;
    const after = blocks.find((block) => block.id === id);
    const isThere = after && chambers.some((chamber) => chamber.id === id);
    io.err(
      `    ${isThere ? `to ${sizeOf(after, job.units)}, from ${sizeOf(before, job.units)}` : 'no chamber of the smallest size fits there any more'}`,
    );
  }
  return false;
}

function checkDepth(plan: Plan, error: { mm: number; understood: string }, io: Io): boolean {
  io.out(`Depth error asked about: ${error.understood}.`);
  const { chambers: spec, units } = plan.job;
  const stated = { deck: spec.deckSkin, bottom: spec.bottomSkin, rail: spec.railWall };
  const [first] = overruns(plan.chambers, plan.layup.rows, plan.trees, plan.board.mesh.chordError, stated, spec.floor);
  if (!first || first.gives === 'nothing') {
    io.out('Routed too deep: no chamber has a floor or a wall behind it that could give.');
    return true;
  }
  const gives = first.gives === 'floor' ? 'the floor before its solid member' : `its ${WALL[first.gives]}`;
  const said = `Routed too deep: the plan bears ${exactly(first.by, units)}; ${first.chamber} goes first (${gives}).`;
  if (first.by >= error.mm) io.out(said);
  else io.err(said);
  return first.by >= error.mm;
}

function sizeOf(block: Plan['blocks'][number], units: Units): string {
  return [block.length, block.height, block.thickness].map((mm) => printAs('block', mm, units)).join(' × ');
}

/** Rounded down: what is borne must not be overstated. */
function exactly(mm: number, units: Units): string {
  return units === 'mm'
    ? `${(Math.floor(mm * 10) / 10).toFixed(1)} mm`
    : `${(Math.floor((mm / 25.4) * 100) / 100).toFixed(2)} in`;
}
