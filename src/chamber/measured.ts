import type { BoardSpec } from '../job/spec/board.js';
import { boardOf, type Board } from '../board/board.js';
import type { Correction } from '../board/correct.js';
import { boardFromScan } from '../job/boardFromScan.js';
import type { ShapedSpec } from '../job/spec/shaped.js';
import { registered } from '../scan/whole/registered.js';
import type { Chamber, Note } from './chamber.js';

/** A board and its chambers as drawn. */
interface Drawn {
  readonly board: Board;
  readonly chambers: readonly Chamber[];
}

/**
 * What measurements on the shaped board say of its surface against the drawn one. A wall of a chamber that is not there
 * says nothing.
 */
export function correctionsFrom(shaped: readonly ShapedSpec[], drawn: Drawn): Correction[] {
  return shaped.flatMap((measured): Correction[] => {
    if (measured.kind === 'scan') return [];
    if (measured.kind === 'thickness') return ofThickness(measured, drawn.board);
    if (measured.kind === 'width') {
      const [left, right] = drawn.board.surface.outlines;
      const by = (measured.value - left.outer(measured.x) - right.outer(measured.x)) / 2;
      return ([0, 1] as const).map((side) => ({ part: 'rail', side, x: measured.x, by }));
    }
    return ofWall(measured, drawn);
  });
}

/**
 * The board as it was shaped: as drawn, corrected by what was measured on it; or as it was scanned anew, laid over the
 * drawn one.
 */
export function measuredBoard(
  spec: BoardSpec,
  shaped: readonly ShapedSpec[],
  board: Board,
  chambers: readonly Chamber[],
): Board {
  const scanned = shaped.find((each) => each.kind === 'scan');
  if (scanned) return boardOf(boardFromScan(registered(scanned.scan, board.mesh)));
  return boardOf(spec, correctionsFrom(shaped, { board, chambers }));
}

const NONE: readonly Chamber[] = [];

/**
 * Of the drawn chambers those by which the surface is corrected: a measured wall is told by where its drawn chamber
 * stands.
 */
export function walledBy(shaped: readonly ShapedSpec[], chambers: readonly Chamber[]): readonly Chamber[] {
  return shaped.some(({ kind }) => kind === 'wall') ? chambers : NONE;
}

/** A wall was measured at a chamber that the drawn plan does not have. */
export function unknownChambers(shaped: readonly ShapedSpec[], { chambers }: Drawn): Note[] {
  return shaped.flatMap((measured): Note[] => {
    if (measured.kind !== 'wall' || chambers.some(({ id }) => id === measured.chamber)) return [];
    return [{ kind: 'measured', where: measured.chamber, why: 'no-chamber', by: [] }];
  });
}

function ofThickness({ x, y, value, off }: ShapedSpec & { kind: 'thickness' }, board: Board): Correction[] {
  const at = heightsAt(board, x, y);
  if (!at) return [];
  // A correction acts in full at the middle of deck or bottom and less toward the rail; so much the more must be given.
  const more = (value - (at.deck - at.bottom)) / (at.deckUp - at.bottomUp);
  const share = off === 'both' ? 0.5 : 1;
  return [
    ...(off === 'bottom' ? [] : [{ part: 'deck', x, y, by: more * share } as const]),
    ...(off === 'deck' ? [] : [{ part: 'bottom', x, y, by: -more * share } as const]),
  ];
}

function ofWall({ chamber, wall, value }: ShapedSpec & { kind: 'wall' }, { board, chambers }: Drawn): Correction[] {
  const drawn = chambers.find(({ id }) => id === chamber);
  if (!drawn) return [];
  const [x, y] = drawn.at[wall];
  // The wall is reported as what is certain; on the mesh there is more by what the mesh may lie outside the surface.
  const by = value - (drawn.wall[wall] + board.mesh.chordError);
  if (wall === 'rail') return [{ part: 'rail', side: y < 0 ? 0 : 1, x, by }];
  const at = heightsAt(board, x, y);
  if (!at) return [];
  return [{ part: wall, x, y, by: wall === 'deck' ? by / at.deckUp : -by / (1 - at.bottomUp) }];
}

/**
 * Heights of deck and bottom at a place in plan, mm, and how far up they are between the middle of the bottom (0) and
 * of the deck (1).
 */
export function heightsAt({ surface }: Board, x: number, y: number) {
  const side = y < 0 ? 0 : 1;
  const half = surface.outlines[side].outer(x);
  const share = Math.abs(y) / half;
  if (!(share < 1)) return undefined;
  const find = (from: number, to: number) => {
    // Along the bottom the share rises from keel to rail, along the deck it falls from rail to middle.
    let [low, high] = from < to ? [from, to] : [to, from];
    const rising = from < to;
    for (let i = 0; i < 50; i++) {
      const middle = (low + high) / 2;
      if (surface.lengthwise([middle]).at(x, side).across[0]! < share === rising) low = middle;
      else high = middle;
    }
    return surface.lengthwise([(low + high) / 2]).at(x, side).up[0]!;
  };
  const bottomUp = find(0, 2);
  const deckUp = find(3, 2);
  const height = (up: number) => surface.bottom(x) + surface.thickness(x) * up;
  return { bottomUp, deckUp, bottom: height(bottomUp), deck: height(deckUp) };
}
