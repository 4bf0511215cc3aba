import words from '../../templates/scan.json' with { type: 'json' };
import { printLength } from '../length/length.js';
import type { Units } from '../length/units.js';
import { planOf, type Plan } from '../plan.js';
import { WALL } from '../verdict/thin.js';
import { overruns } from '../proof/overrun.js';
import { understood } from '../typed/args.js';
import { REFUSED, TO_ACT_ON, WELL, type Command, type Io } from './io.js';
import { jobFrom } from './jobFile.js';
import { judged } from './judged.js';
import { lengthOption, type TypedLength } from '../typed/lengthOption.js';
import { shrinkingOf } from './shrinking.js';
import { refuse } from './refuse.js';
import { shapedBy } from '../view/shapedBy.js';
import { say } from '../words/say.js';

/** Nobody sets a router deeper than meant by more than this, mm. */
const MOST_TOO_DEEP = 50;

export const checkCommand: Command = {
  async run(args, io) {
    const asked = understood(args, { 'depth-error': { type: 'string' }, all: { type: 'boolean' } }, 1);
    if ('remedy' in asked) return refuse(io, asked, 'check');
    const written = asked.values['depth-error'];
    const read = jobFrom(asked.operands[0]!, io);
    if (!read) return REFUSED;
    const { job } = read;
    const error = written === undefined ? undefined : lengthOption('--depth-error', written, job.units, MOST_TOO_DEEP);
    if (error && 'remedy' in error) return refuse(io, error);
    const plan = planOf(job);
    const isWell = [
      checkDrawn(plan, asked.values.all === true, io),
      judged(plan, io),
      error === undefined || checkDepth(plan, error, io),
    ];
    return isWell.every(Boolean) ? WELL : TO_ACT_ON;
  },
};

/**
 * The chambers as drawn on the board as shaped: how many must shrink, and by how much; each of them where all are asked
 * for.
 */
function checkDrawn(plan: Plan, all: boolean, io: Io): boolean {
  const shrinking = shrinkingOf(plan);
  if (!shrinking) return true;
  if (plan.job.shaped?.some(({ kind }) => kind === 'scan')) sayShapedBy(plan).forEach((line) => io.out(line));
  const say = shrinking.must ? io.err : io.out;
  shrinking.summary.forEach((line) => say(line));
  if (shrinking.must) {
    if (all) shrinking.each.forEach((line) => say(line));
    else say('  Each of them, with its new size: check --all');
    say('Planned anew for the board as measured:');
  }
  return !shrinking.must;
}

function checkDepth(plan: Plan, error: TypedLength, io: Io): boolean {
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

/** How the board that was scanned differs from the drawing, place by place. */
function sayShapedBy({ drawn, board, job: { units } }: Plan): string[] {
  const by = (mm: number) => (mm < 0 ? '-' : '+') + printLength(Math.abs(mm), units);
  const { shaped, places } = words.report;
  return [
    shaped,
    ...shapedBy(drawn!.board, board).map(({ x, deck, bottom, left, right }) =>
      say(places, {
        x: printLength(x, units),
        deck: by(deck),
        bottom: by(bottom),
        left: by(left),
        right: by(right),
      }),
    ),
  ];
}

/** Rounded down: what is borne must not be overstated. */
function exactly(mm: number, units: Units): string {
  return units === 'mm'
    ? `${(Math.floor(mm * 10) / 10).toFixed(1)} mm`
    : `${(Math.floor((mm / 25.4) * 100) / 100).toFixed(2)} in`;
}
