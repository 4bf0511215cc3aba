import type { Point } from '../../contour/point.js';
import core from 'paper/dist/paper-core.js';
import type { Say } from '../mistake/say.js';

/** Its types come as one namespace; what is imported is the scope that holds it. */
const scope = core as unknown as paper.PaperScope;

/** How far the straight lines that stand for a curve may lie from it, in millimetres. */
const FLATNESS = 0.02;
/** An outline of less, mm², goes around nothing. */
const LEAST_AREA = 1;
/** A path of more curves than this is a picture, not a keep-out. */
const MOST_CURVES = 2000;

/**
 * One closed outline out of SVG path data (SVG 1.1, section 8.3), as `[x, y]` corners in millimetres. Says when it is
 * none: unreadable, in several parts, without area or crossing itself. A path that is left open is closed with a
 * straight line, as it would be filled.
 *
 * @param worth millimetres in one unit of the path's numbers
 */
export function closedPath(data: string, worth: number, say: Say): Point[] {
  const wrong = (what: string, remedy: string): Point[] => {
    say.error([], what, remedy);
    return [];
  };
  if (!/^[\sMmLlHhVvCcSsQqTtAaZz0-9eE+.,-]+$/.test(data) || !/^\s*[Mm]/.test(data))
    return wrong('this is not the data of an SVG path', 'begin with M and close with Z: M0 0 H50 V20 H0 Z');
  if (!scope.project) scope.setup(new scope.Size(1, 1));
  const path = scope.PathItem.create(data);
  path.remove();
  const parts = path instanceof scope.CompoundPath ? (path.children as paper.Path[]) : [path as paper.Path];
  const kept = parts.filter((part) => part.segments.length > 0);
  if (kept.length !== 1)
    return wrong(`the path has ${kept.length} parts`, 'one closed outline; several become several keep-outs');
  const outline = kept[0]!;
  if (outline.segments.length > MOST_CURVES)
    return wrong(`the path has ${outline.segments.length} points`, `at most ${MOST_CURVES}`);
  outline.closed = true;
  outline.scale(worth, new scope.Point(0, 0));
  if (!outline.segments.every(({ point }) => Number.isFinite(point.x) && Number.isFinite(point.y)))
    return wrong('a number is missing in the path', 'as many numbers as each of its letters takes');
  if (outline.getCrossings(outline).length > 0) return wrong('the outline crosses itself', 'an outline that does not');
  if (Math.abs(outline.area) < LEAST_AREA) return wrong('the outline has no area', 'one that goes around something');
  outline.flatten(FLATNESS);
  return outline.segments.map(({ point }): Point => [point.x, point.y]);
}
