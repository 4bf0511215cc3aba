import printing from '../../../templates/printing.json' with { type: 'json' };
import { pathPoints } from '../../contour/chords.js';
import core from 'paper/dist/paper-core.js';
import type { Drawing } from '../../sheet/drawing.js';
import { boxOfPoints, overlaps } from '../trace/box.js';
import { cleanVertices, contoursOf, type Contour } from '../trace/contour.js';
import type { Finding } from '../../finding/finding.js';
import { pathData } from '../../contour/pathData.js';
import { say } from '../../words/say.js';

const { cut: words } = printing;
type Sentence = (typeof words)['open'];

/** Contours that differ by less than this everywhere are the same cut made twice, mm. */
const SAME_CUT = 0.05;

/**
 * What a cutter would spoil: contours that are open, too short, cross themselves, cross another on the same layer, or
 * lie on another. Empty when the drawing may be cut.
 */
export function cutFindings(drawing: Drawing): readonly Finding[] {
  const contours = contoursOf(drawing);
  const findings: Finding[] = [];
  const report = (contour: Contour, { what, remedy }: Sentence, other = 0): void => {
    const { number, layer } = contour;
    const where = say(words.where, { drawing: drawing.id, number, layer });
    findings.push({ where, what: say(what, { other }), remedy });
  };
  const sound: { contour: Contour; path: paper.Path; points: Float64Array }[] = [];
  for (const contour of contours) {
    const { shape } = contour;
    if (shape.kind === 'circle') {
      if (!(shape.radius > 0)) report(contour, words.noSize);
    } else if (!shape.closed) {
      report(contour, words.open);
      continue;
    } else if (cleanVertices(shape).length < 2) {
      report(contour, words.noLength);
      continue;
    }
    const { path, points } = traced(contour);
    if (shape.kind === 'path' && path.getCrossings(path).length > 0) {
      report(contour, words.crossesItself);
      continue;
    }
    sound.push({ contour, path, points });
  }
  sound.forEach((a, i) => {
    for (const b of sound.slice(i + 1)) {
      if (a.contour.layer !== b.contour.layer || !overlaps(boxOfPoints(a.points), boxOfPoints(b.points))) continue;
      if (lieOnEachOther(a, b)) {
        report(b.contour, words.twice, a.contour.number);
      } else if (a.path.getCrossings(b.path).length > 0) {
        report(b.contour, words.crosses, a.contour.number);
      }
    }
  });
  return findings;
}

interface Traced {
  readonly path: paper.Path;
  readonly points: Float64Array;
}

function traced({ shape }: Contour): Traced {
  if (shape.kind === 'circle') {
    const around = [
      { x: shape.x + shape.radius, y: shape.y, bulge: 1 },
      { x: shape.x - shape.radius, y: shape.y, bulge: 1 },
    ];
    return { path: pathOf(around), points: pathPoints(around, true) };
  }
  const vertices = cleanVertices(shape);
  return { path: pathOf(vertices), points: pathPoints(vertices, true) };
}

function pathOf(vertices: Parameters<typeof pathData>[0]): paper.Path {
  const data = pathData(
    vertices,
    true,
    (v) => ({ x: v.x, y: -v.y }),
    (value) => value.toFixed(6),
  );
  return new (project().Path)({ pathData: data, insert: false });
}

/**
 * The library without its canvas. Its types name the module without `.js`, so they are taken from its global namespace.
 */
const geometry = core as unknown as paper.PaperScope;

/** Paths live in a project; its size is of no account, as it is never shown. */
function project(): paper.PaperScope {
  if (!(geometry.project as paper.Project | null)) geometry.setup(new geometry.Size(1, 1));
  return geometry;
}

/** Whether every point of each lies on the other. */
const lieOnEachOther = (a: Traced, b: Traced): boolean => liesOn(a, b.path) && liesOn(b, a.path);

function liesOn({ points }: Traced, path: paper.Path): boolean {
  for (let i = 0; i < points.length; i += 2) {
    const point = new geometry.Point(points[i]!, -points[i + 1]!);
    if (path.getNearestPoint(point).getDistance(point) > SAME_CUT) return false;
  }
  return true;
}
