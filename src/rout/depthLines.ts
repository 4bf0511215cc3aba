import type { RoutingSpec } from '../job/spec/routing.js';
import { roundedAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import type { ChamberRouting, RowRouting } from './rout.js';
import { stopsOf } from './setUp.js';

/** How a chamber is routed as it is said at the bench: rounded toward more wall. All mm. */
export interface SaidRouting {
  /** How deep it is cut from each of its faces. */
  readonly depth: number;
  /** The cutter's stand-out for each pass, none deeper than that. */
  readonly stops: readonly number[];
}

/** One setting of the router's stops, and all chambers of a row that are routed with it. */
export interface DepthLine extends SaidRouting {
  readonly from: readonly string[];
  readonly chambers: readonly string[];
}

type Router = Pick<RoutingSpec, 'passDepth' | 'guideStock'>;

/** A half is never said shallower than it is, so that it meets the other; anything else never deeper. */
export function saidRouting({ from, cut }: ChamberRouting, router: Router, units: Units): SaidRouting {
  const kind = from.length > 1 ? 'half' : 'depth';
  const depth = roundedAs(kind, cut, units);
  const stops = stopsOf(depth, router);
  return { depth, stops: stops.map((stop, i) => roundedAs(i + 1 < stops.length ? 'depth' : kind, stop, units)) };
}

/** A line for each different depth that a row is routed to, as it is said, deepest last. */
export function depthLinesOf({ chambers }: Pick<RowRouting, 'chambers'>, router: Router, units: Units): DepthLine[] {
  const lines: (DepthLine & { chambers: string[] })[] = [];
  for (const each of chambers) {
    const said = saidRouting(each, router, units);
    const same = lines.find(({ from, depth }) => depth === said.depth && from.join() === each.from.join());
    if (same) same.chambers.push(each.chamber);
    else lines.push({ ...said, from: each.from, chambers: [each.chamber] });
  }
  return lines.sort((a, b) => a.depth - b.depth);
}
