import { spanAt } from '../contour/span.js';
import { once } from '../kept/once.js';
import type { InBlank } from '../stock/inBlank.js';
import type { StripFit } from '../stock/stripFits.js';
import { sliceMesh } from './slice.js';
import { stockLineAt } from './stockLine.js';

/**
 * How the finished board lies in the foam, as it is marked on the face of a strip that looks toward the centre (of the
 * one at the centre, the left one): one for all strips that lie alike, mm.
 */
export interface BoardInFoam {
  readonly of: readonly string[];
  /** The strip of them next to the centre, on whose face the heights are. */
  readonly strip: string;
  /** How they are moved against the others before gluing, where they are. */
  readonly slid?: StripFit['slid'];
  /** How far the board's nose tip lies behind the nose end of the blank that the strip was sawn from. */
  readonly along: number;
  readonly stations: readonly FoamAt[];
}

/** Heights at so far from the board's nose tip, mm; negative where the foam ends within the board. */
export interface FoamAt {
  readonly x: number;
  /** From the finished bottom down to the foam's, and from the finished deck up to the foam's. */
  readonly under: number;
  readonly over: number;
}

/** Where heights are told, as shares of the board's length, to whole centimetres. */
const STATIONS = [0.1, 0.3, 0.5, 0.7, 0.9];
const ROUND = 10;

/** Made once for each fit: papers, page and command ask for it. */
export const boardInFoam = once((blank: InBlank): BoardInFoam[] => {
  const { mesh, length } = blank.finished;
  return blank.fits.map(({ of, slid, placement: { along } }): BoardInFoam => {
    const those = [...blank.strips.keys()].filter((k) => of.includes(blank.strips[k]!.member.id));
    // They stand from left to right.
    const i = those.find((k) => blank.strips[k]!.member.side !== 'L') ?? those.at(-1)!;
    const { member } = blank.strips[i]!;
    const line = (member.side === 'L' ? member.right : member.left) ?? { at: 0, slope: 0 };
    const slant = Math.hypot(1, line.slope);
    const plane = { a: -line.slope / slant, b: 1 / slant, d: line.at / slant };
    const finished = sliceMesh(mesh, plane, [1 / slant, line.slope / slant]).map(({ points }) =>
      points.map(([x, , z]) => [x, z] as const),
    );
    const foam = stockLineAt(blank, i, line, length);
    const stations = STATIONS.flatMap((share): FoamAt[] => {
      const x = ROUND * Math.round((share * length) / ROUND);
      const stock = foam.heightsAt(x);
      const board = finished.map((loop) => spanAt(loop, x)).find((span) => span !== undefined);
      return stock && board ? [{ x, under: board[0] - stock.bottom, over: stock.deck - board[1] }] : [];
    });
    return { of, strip: member.id, along, stations, ...(slid && { slid }) };
  });
});
