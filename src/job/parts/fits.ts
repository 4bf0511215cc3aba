import type { OutlineSpec } from '../spec/board.js';
import type { BoardSpec } from '../spec/board.js';
import { printLength } from '../../length/length.js';
import { printAs, roundedAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';
import { halfWidthAt, widestHalf } from '../half-width.js';
import type { ChamberSpec, GlueUpSpec, Member } from '../job.js';
import type { Say } from '../mistake/say.js';

/**
 * Says the first member of a side that begins outside the board everywhere along it, so that nothing of it would be
 * left.
 */
export function checkMembersFit(glueUp: GlueUpSpec, board: BoardSpec, units: Units, say: Say): void {
  checkSide(glueUp.right, glueUp.centre, board.right, board.length, units, say.at('members'));
  if (glueUp.left || board.left) {
    const where = glueUp.left ? say.at('left') : say.at('members');
    checkSide(glueUp.left ?? glueUp.right, glueUp.centre, board.left ?? board.right, board.length, units, where);
  }
}

function checkSide(
  members: readonly Member[],
  centre: Member | undefined,
  outline: OutlineSpec,
  length: number,
  units: Units,
  say: Say,
): void {
  const places = outline.points.map(({ x }) => x);
  const room = places.map((x) => halfWidthAt(outline, length, x));
  const begin = places.map((x) => (centre ? thicknessAt(centre, x, length) / 2 : 0));
  for (const [i, member] of members.entries()) {
    const outside = places.length > 0 && places.every((_, p) => begin[p]! >= room[p]!);
    if (outside) {
      const inner = printLength(Math.min(...begin), units);
      const widest = printLength(widestHalf(outline), units);
      say.error(
        [i],
        `this member begins ${inner} from the centreline, outside the board`,
        `less than ${widest}, half of the board at its widest: thinner members inside it, or fewer`,
      );
      return;
    }
    places.forEach((x, p) => (begin[p]! += thicknessAt(member, x, length)));
  }
}

function thicknessAt({ thickness = NaN }: Member, x: number, length: number): number {
  if (typeof thickness === 'number') return thickness;
  return thickness.nose + ((thickness.tail - thickness.nose) * x) / length;
}

/** Says walls, webs and cutters that leave no chamber anywhere. */
export function checkChambersFit(chambers: ChamberSpec, board: BoardSpec, units: Units, say: Say): void {
  const { smallest, tolerance, pitch, web, cutterDiameter, deckSkin, bottomSkin, railWall, solidNose, solidTail } =
    chambers;
  const print = (mm: number): string => printLength(mm, units);

  if (web >= pitch)
    say.error(
      ['web'],
      `the web of ${print(web)} leaves nothing of the pitch of ${print(pitch)}`,
      'a web less than the pitch',
    );
  else if (web + smallest.length > pitch) {
    const most = print(pitch - web);
    say.error(
      ['smallest', 'length'],
      `web and smallest chamber together are longer than the pitch of ${print(pitch)}`,
      `at most ${most}, or a longer pitch`,
    );
  }

  const thickest = largest(board.profile.map(({ thickness }) => thickness));
  const height = thickest - deckSkin - bottomSkin - 2 * tolerance;
  if (height < smallest.height) {
    const left = height > 0 ? `leave ${print(height)}` : 'leave nothing';
    say.error(
      ['deckSkin'],
      `deck skin, bottom skin and twice the tolerance ${left} of ${print(thickest)}, the board at its thickest`,
      `walls that leave at least ${printAs('needed', smallest.height, units)}, the smallest height of a chamber`,
    );
  }

  const widest = largest([board.right, board.left ?? board.right].map(widestHalf));
  if (railWall + tolerance + smallest.depth > widest) {
    const most = printAs('there', Math.max(0, widest - tolerance - smallest.depth), units);
    say.error(
      ['railWall'],
      `the rail wall leaves no chamber in half of the board, ${print(widest)} at its widest`,
      `at most ${most}`,
    );
  }

  if (solidNose + solidTail + smallest.length > board.length) {
    const length = printLength(board.length, units, 'feet');
    say.error(
      ['solidNose'],
      `solid nose and solid tail leave no room for a chamber in ${length}`,
      `together at most ${printAs('there', Math.max(0, board.length - smallest.length), units)}`,
    );
  }
  if (chambers.datum > board.length) {
    say.error(
      ['datum'],
      'the first mark of the grid lies behind the tail',
      `at most ${printLength(roundedAs('there', board.length, units), units, 'feet')}`,
    );
  }

  for (const size of ['length', 'height'] as const) {
    if (cutterDiameter > smallest[size]) {
      const what = `the cutter is wider than the smallest ${size} of a chamber, ${print(smallest[size])}`;
      say.error(['cutter'], what, `a smaller cutter, or smallest: {${size}: ${print(cutterDiameter)}}`);
    }
  }
}

/** Not-a-number where nothing was measured: then nothing can be said about room. */
function largest(values: readonly number[]): number {
  return values.length === 0 ? NaN : Math.max(...values);
}
