import type { Fit } from './fit.js';
import { isShort } from './isShort.js';
import type { SawnStrip } from './sawn.js';
import { SIDES, type StockSide } from './skin.js';

/** A place where less stock stands over the finished surface than is asked for. */
export interface ShortPlace {
  readonly side: StockSide;
  /** The strip it lies on, as in `LaidMember`. */
  readonly strip: string;
  /** What there is where it is least, mm; negative where the board would reach out of its stock. */
  readonly over: number;
  /** Where that is, board frame, mm. */
  readonly at: readonly [x: number, y: number, z: number];
  /** Where it begins and ends along the board, mm. */
  readonly from: number;
  readonly to: number;
  /** The blank does not reach so far, wherever the board is laid in it. */
  readonly isOutOfReach: boolean;
}

/** Short points this far apart along the board belong to one place, mm. */
const TOGETHER = 150;

/** Every place that is short, the worst first. */
export function shortPlaces(
  { skin, over, outOfReach }: Fit,
  strips: readonly SawnStrip[],
  asked: number,
): ShortPlace[] {
  const groups = new Map<string, number[]>();
  over.forEach((each, i) => {
    if (!isShort(each, asked)) return;
    const key = `${skin.side[i]} ${skin.strip[i]}`;
    groups.set(key, [...(groups.get(key) ?? []), i]);
  });
  const lost = new Set(outOfReach);
  const x = (i: number) => skin.at[3 * i]!;
  return [...groups.values()]
    .flatMap((points) => {
      const runs: number[][] = [];
      for (const i of points.sort((a, b) => x(a) - x(b))) {
        const run = runs.at(-1);
        if (run && x(i) - x(run.at(-1)!) <= TOGETHER) run.push(i);
        else runs.push([i]);
      }
      return runs;
    })
    .map((run): ShortPlace => {
      const worst = run.reduce((a, b) => (over[b]! < over[a]! ? b : a));
      return {
        side: SIDES[skin.side[worst]!]!,
        strip: strips[skin.strip[worst]!]!.member.id,
        over: over[worst]!,
        at: [skin.at[3 * worst]!, skin.at[3 * worst + 1]!, skin.at[3 * worst + 2]!],
        from: x(run[0]!),
        to: x(run.at(-1)!),
        isOutOfReach: lost.has(worst),
      };
    })
    .sort((a, b) => a.over - b.over);
}
