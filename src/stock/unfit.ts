import type { Board } from '../board/board.js';
import type { MouldedBlankSpec } from '../job/spec/stock.js';
import { placementOf } from './placementOf.js';
import type { Line, SawnStrip } from './sawn.js';
import type { StripFits } from './stripFits.js';

/**
 * What keeps strips from being sawn from a moulded blank, each by how much, mm: the blank is shorter, or narrower once
 * it is glued, than the board with what is asked over it; a strip begins where the blank ends; two strips are sawn into
 * each other, kerf included, or one over the centreline; a strip is named that there is none of; all strips are slid,
 * so that none is left to slide them against.
 */
export type Unfit =
  | { readonly why: 'shorter' | 'narrower'; readonly needs: number; readonly has: number }
  | { readonly why: 'beyond'; readonly strip: string; readonly by: number }
  | Overlap
  | { readonly why: 'unknown'; readonly strip: string; readonly there: readonly string[] }
  | { readonly why: 'all' };

interface Overlap {
  readonly why: 'overlap';
  readonly strip: string;
  readonly other: string;
  readonly by: number;
  /** Which of them is to be sawn further out, and by how much: half of it where its mirror image moves too. */
  readonly outward: { readonly strip: string; readonly by: number };
  /** From the board's nose tip. */
  readonly x: number;
}

/** What arithmetic leaves, mm. */
const ROUNDING = 1e-6;

/** @param glued how wide the blank is once it is glued, mm */
export function unfitFor(
  { strips: said, kerf }: Pick<MouldedBlankSpec, 'strips' | 'kerf'>,
  { strips, fits, isAlike, areAllSlid }: StripFits,
  moulded: Board,
  board: Board,
  asked: number,
  glued: number,
): Unfit[] {
  const names = strips.map(({ member }) => member.id);
  const looked = strips.filter(({ member }) => !(isAlike && member.side === 'L'));
  const alongOf = ({ member }: SawnStrip) => placementOf(fits, member.id).along;
  const measures = [
    { why: 'shorter', needs: board.length + 2 * asked, has: moulded.length },
    { why: 'narrower', needs: board.width + 2 * asked, has: glued },
  ] as const;
  return [
    ...measures.filter(({ needs, has }) => has < needs - ROUNDING),
    ...said.flatMap(({ strip }): Unfit[] => (names.includes(strip) ? [] : [{ why: 'unknown', strip, there: names }])),
    ...(areAllSlid ? [{ why: 'all' } as const] : []),
    ...looked.flatMap((strip): Unfit[] => {
      const by = beyond(strip, moulded, alongOf(strip), board.length);
      return by > 0 ? [{ why: 'beyond', strip: strip.member.id, by }] : [];
    }),
    ...strips.slice(1).flatMap((strip, i): Unfit[] => {
      const before = strips[i]!;
      if (!looked.includes(strip) || !before.right || !strip.left) return [];
      const from = alongOf(strip);
      const [{ by, x }] = [0, board.length]
        .map((x) => ({ x, by: kerf - (at(strip.left!, x) - at(before.right!, x + from - alongOf(before))) }))
        .sort((a, b) => b.by - a.by) as [{ by: number; x: number }];
      const outer = strip.member.side === 'L' ? before : strip;
      const doBothMove = isAlike && before.member.side === 'L';
      const outward = { strip: outer.member.id, by: doBothMove ? by / 2 : by };
      return by > ROUNDING ? [{ why: 'overlap', strip: strip.member.id, other: before.member.id, by, outward, x }] : [];
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
