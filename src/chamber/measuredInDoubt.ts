import words from '../../templates/measured.json' with { type: 'json' };
import type { Board } from '../board/board.js';
import { FAR, median, modifiedZ } from '../job/doubts/outliers.js';
import type { Doubt } from '../job/finding.js';
import type { Measured, ShapedSpec } from '../job/spec/shaped.js';
import { printLength } from '../length/length.js';
import type { Units } from '../length/units.js';
import type { Chamber } from './chamber.js';
import { heightsAt } from './measured.js';
import { say } from '../words/say.js';

/**
 * How far shaping by hand strays from the drawing before it is told: mm, or a share of what is drawn, whichever is
 * more. Common practice, no source.
 */
const STRAYS = {
  thickness: { mm: 3, share: 0.08 },
  width: { mm: 10, share: 0.03 },
  wall: { mm: 3, share: 0.4 },
} as const;
/** A caliper on foam is read to this, mm; differences between measures below it say nothing. */
const EXACT = 0.8;
/** Fewer measures of a kind have no middle to be far from. */
const FEWEST = 4;

/**
 * Tells what was measured after shaping and lies far from the drawing, or far from how the other measures differ from
 * it (`modifiedZ`). What cannot be at all was refused when the job was read. The plan is drawn through all of them.
 */
export function measuredInDoubt(
  said: readonly ShapedSpec[],
  drawn: { readonly board: Board; readonly chambers: readonly Chamber[] },
  units: Units,
): Doubt[] {
  const shaped = said.filter((each) => each.kind !== 'scan');
  const off = shaped.map((measured) => measured.value - (drawnAt(measured, drawn) ?? NaN));
  return shaped.flatMap((measured, i): Doubt[] => {
    const { kind, value } = measured;
    const by = off[i]!;
    if (Number.isNaN(by)) return [];
    const others = off.filter((each, o) => o !== i && shaped[o]!.kind === kind && !Number.isNaN(each));
    const { mm, share } = STRAYS[kind];
    const length = (each: number) => printLength(each, units);
    const isFar = Math.abs(by) > Math.max(mm, share * (value - by));
    const isOdd =
      others.length >= FEWEST && modifiedZ(by, others, EXACT) > FAR && Math.abs(by - median(others)) > 2 * EXACT;
    if (!isFar && !isOdd) return [];
    const than = by < 0 ? words.less : words.more;
    const rest = isOdd ? say(words.rest, { rest: length(Math.abs(median(others))) }) : '';
    return [
      {
        where: { path: `shaped[${i}].${kind === 'wall' ? measured.wall : kind}` },
        what: say(words.what, { value: length(value), by: length(Math.abs(by)), than }) + rest,
        remedy: words.remedy,
      },
    ];
  });
}

/** What the drawing has where something was measured, mm; nothing where it is not on the board. */
function drawnAt(measured: Measured, { board, chambers }: Parameters<typeof measuredInDoubt>[1]): number | undefined {
  if (measured.kind === 'wall') {
    const wall = chambers.find(({ id }) => id === measured.chamber)?.wall[measured.wall];
    return wall === undefined ? undefined : wall + board.mesh.chordError;
  }
  if (measured.kind === 'width') {
    const [left, right] = board.surface.outlines;
    return left.outer(measured.x) + right.outer(measured.x);
  }
  const at = heightsAt(board, measured.x, measured.y);
  return at && at.deck - at.bottom;
}
