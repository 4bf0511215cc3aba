import { CALIPER_STEP, printFine } from '../../length/fine.js';
import { printLength } from '../../length/length.js';
import { printAs, WRITTEN_STEP } from '../../length/rounded.js';
import type { Plan } from '../../plan.js';
import { faceViews } from '../face/faceViews.js';
import { markingTable } from '../face/markingTable.js';
import { JOINED_WITHIN } from '../face/offsets.js';
import type { DocumentPage, TextBlock } from '../pages.js';
import { say, WORDS } from '../../words/say.js';

/** How true a mark by tape and square is, and a card laid on it, mm: common practice, no source. */
const MARKED_WITHIN = 0.5;

/** What goes with the corner cards: how they are used and how true that is, and the marking table of every face. */
export function cardTables(plan: Plan): DocumentPage[] {
  return [howTo(plan), ...faceViews(plan).map((seen) => markingTable(seen.plan, seen.row))];
}

/** What is there is not said to be more, mm. */
const downToCaliper = (mm: number): number => Math.floor(mm / CALIPER_STEP.in) * CALIPER_STEP.in;

function howTo({ job }: Plan): DocumentPage {
  const { cards } = WORDS;
  const { units } = job;
  const { tolerance, cutterDiameter } = job.chambers;
  const all = 2 * MARKED_WITHIN + JOINED_WITHIN;
  // A sixteenth of an inch would be more than any of these.
  const small = (mm: number) => (units === 'mm' ? printLength(mm, units) : printFine(mm, units));
  const values = {
    radius: printLength(cutterDiameter / 2, units),
    mark: small(MARKED_WITHIN),
    together: small(2 * MARKED_WITHIN),
    joined: small(JOINED_WITHIN),
    all: small(all),
    step: printLength(WRITTEN_STEP[units], units),
    tolerance: printLength(tolerance, units),
  };
  const there =
    units === 'mm' ? printAs('there', tolerance - all, units) : printFine(downToCaliper(tolerance - all), units);
  const left = say(tolerance > all ? cards.left : cards.nothingLeft, { left: there });
  const inPlaces = (sentence: string) => say(sentence, { ...values, left });
  return {
    kind: 'text',
    title: cards.tableTitle,
    blocks: [
      { kind: 'list', numbered: true, items: cards.how.map(inPlaces) },
      { kind: 'heading', text: cards.trueHeading },
      { kind: 'list', items: cards.trueWays.map(inPlaces) },
      { kind: 'heading', text: cards.wallsHeading },
      ...cards.walls.map((words): TextBlock => ({ kind: 'paragraph', text: inPlaces(words) })),
    ],
  };
}
