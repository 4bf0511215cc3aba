import type { Board } from '../board/board.js';
import type { MouldedBlankSpec } from '../job/spec/stock.js';
import type { Placement } from './placement.js';
import type { Line, SawnStrip } from './sawn.js';

/**
 * What keeps strips from being sawn from a moulded blank, each by how much, mm: the blank is shorter than the board; a
 * strip begins where the blank ends; two strips are sawn into each other, kerf included, or one over the centreline; a
 * strip is named that there is none of; all strips are slid, so that none is left to slide them against.
 */
export type Unfit =
  | { readonly why: 'shorter'; readonly needs: number; readonly has: number }
  | { readonly why: 'beyond'; readonly strip: string; readonly by: number }
  | { readonly why: 'overlap'; readonly strip: string; readonly other: string; readonly by: number; readonly x: number }
  | { readonly why: 'unknown'; readonly strip: string; readonly there: readonly string[] }
  | { readonly why: 'all' };

/** What arithmetic leaves, mm. */
const ROUNDING = 1e-6;

export function unfitFor(
  { strips: said, kerf }: Pick<MouldedBlankSpec, 'strips' | 'kerf'>,
  strips: readonly SawnStrip[],
  moulded: Board,
  { along }: Placement,
  length: number,
  isAlike: boolean,
  areAllSlid: boolean,
): Unfit[] {
  const names = strips.map(({ member }) => member.id);
  const isLooked = (name: string) => !(isAlike && name.startsWith('ML'));
  return [
    ...(moulded.length < length ? [{ why: 'shorter', needs: length, has: moulded.length } as const] : []),
    ...said.flatMap(({ strip }): Unfit[] => (names.includes(strip) ? [] : [{ why: 'unknown', strip, there: names }])),
    ...(areAllSlid ? [{ why: 'all' } as const] : []),
    ...strips.flatMap((strip): Unfit[] => {
      const by = beyond(strip, moulded, along, length);
      return by > 0 && isLooked(strip.member.id) ? [{ why: 'beyond', strip: strip.member.id, by }] : [];
    }),
    ...strips.slice(1).flatMap((strip, i): Unfit[] => {
      const before = strips[i]!;
      if (!isLooked(strip.member.id) || !before.right || !strip.left) return [];
      const [worst] = [0, length]
        .map((x) => ({ x, by: kerf - (at(strip.left!, x) - at(before.right!, x)) }))
        .sort((a, b) => b.by - a.by);
      return worst!.by > ROUNDING
        ? [{ why: 'overlap', strip: strip.member.id, other: before.member.id, ...worst! }]
        : [];
    }),
  ];
}

/** How far out of the blank a strip's inner edge lies where the blank reaches furthest; negative within it, mm. */
function beyond({ left, right, member }: SawnStrip, moulded: Board, along: number, length: number): number {
  if (member.side === 'C') return -Infinity;
  const isRight = member.side === 'R';
  const edge = isRight ? left : right;
  if (!edge) return -Infinity;
  const { outer } = moulded.surface.outlines[isRight ? 1 : 0];
  let least = Infinity;
  for (const x of moulded.grid.xs) {
    if (x < along || x > along + length) continue;
    least = Math.min(least, (isRight ? 1 : -1) * at(edge, x - along) - outer(x));
  }
  return least === Infinity ? -Infinity : least;
}

const at = (line: Line, x: number) => line.at + line.slope * x;
