import { execFileSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { sheetNamed, type Paper } from '../../../src/print/paper/paper.js';
import { svgOf } from '../../../src/print/svg/svg.js';
import type { Drawing } from '../../../src/sheet/drawing.js';
import { fullSizeOf } from '../../papers/wholeSet.js';
import { pointsAlong } from '../../sheet/cards/bruteFace.js';
import { planOfSample, SAMPLES } from '../../sheet/sample.js';
import { printed } from '../printed.js';
import { readPdf, type Point } from '../readPdf.js';
import { cutApart, glue } from '../taped.js';

/*
 * Face sheets as a builder has them: printed, cut apart, taped together by their letters alone. The whole is the same
 * as the SVG file of the sheet, which is one piece.
 */

/** What a tape shows over the whole sheet, mm. */
const TRUE = 0.1;
/** Lines that are routed to are 0.7 mm wide (ISO 128-2, group 0.7). */
const ROUT = 0.7;

type Spot = readonly [x: number, y: number];

/** The lines of a layer in the SVG's own words, along their arcs: mm, y up. */
function linesInSvg(svg: string, layer: string): Spot[][] {
  const group = new RegExp(`<g[^>]*id="${layer}"[^>]*>(.*?)</g>`, 's').exec(svg)![1]!;
  return [...group.matchAll(/ d="([^"]*)"/g)].map(([, d]) => {
    const vertices: { x: number; y: number; bulge?: number }[] = [];
    for (const [, command, rest] of d!.matchAll(/([MLA])([^MLAZz]*)/g)) {
      const numbers = rest!.match(/-?[\d.]+/g)!.map(Number);
      const [x, y] = [numbers.at(-2)!, -numbers.at(-1)!];
      const before = vertices.at(-1);
      if (command === 'A') {
        // Half the angle of an arc is that of half its chord (SVG 1.1, 8.3.8: radius first, sweep last but two).
        const turn = 2 * Math.asin(Math.hypot(x - before!.x, y - before!.y) / 2 / numbers[0]!);
        before!.bulge = Math.tan(turn / 4) * (numbers.at(-3) === 1 ? -1 : 1);
      }
      vertices.push({ x, y });
    }
    return pointsAlong(vertices, true);
  });
}

async function tapedFrom(drawing: Drawing, paper: Paper) {
  const { bytes } = await printed([{ kind: 'tiled', title: 'Faces', drawings: [drawing] }], { paper });
  const strips = (await readPdf(bytes)).flatMap(cutApart);
  const places = glue(strips);
  const lines = strips.flatMap((strip, i) => {
    const at = places[i]!;
    return strip.lines
      .filter(({ width, dashed }) => Math.abs(width - ROUT) < 0.01 && !dashed)
      .map(({ points, clip }) => ({
        points: points.map(({ x, y }): Spot => [x + at.x, y + at.y]),
        seen: clip!.map((side, k) => side + (k % 2 === 0 ? at.x : at.y)),
      }));
  });
  return { bytes, lines };
}

/** How far a place is from the nearest of lines, where they are seen, mm. */
function offLines([x, y]: Spot, lines: Awaited<ReturnType<typeof tapedFrom>>['lines']): number {
  let least = Infinity;
  for (const { points, seen } of lines) {
    const [left, bottom, right, top] = seen as [number, number, number, number];
    if (x < left - 1 || x > right + 1 || y < bottom - 1 || y > top + 1) continue;
    for (let i = 1; i < points.length; i++) {
      const [[ax, ay], [bx, by]] = [points[i - 1]!, points[i]!];
      const long = (bx - ax) ** 2 + (by - ay) ** 2;
      const t = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / long));
      least = Math.min(least, Math.hypot(ax + t * (bx - ax) - x, ay + t * (by - ay) - y));
    }
  }
  return least;
}

describe.each(SAMPLES.flatMap((name) => ['A4', 'Letter', 'A3'].map((paper) => [name, paper] as const)))(
  'the longest face sheet of %s, printed on %s',
  (name, paper) => {
    const faces = fullSizeOf(planOfSample(name)).filter(({ id }) => id.startsWith('face'));
    const long = ({ must }: Drawing) => must![1] - must![0];
    const drawing = faces.reduce((a, b) => (long(b) > long(a) ? b : a));

    test('is the same when it is taped together by its letters as the SVG, which is one piece', async () => {
      const { lines } = await tapedFrom(drawing, sheetNamed(paper)!);
      const wanted = linesInSvg(svgOf(drawing), 'chamber').filter((line) => line.length > 1);
      const corners = wanted.flat();
      expect(corners.length).toBeGreaterThan(20);
      const least = (spots: readonly Spot[], axis: 0 | 1) => Math.min(...spots.map((spot) => spot[axis]));
      const found = lines.flatMap(({ points }) => points);
      // Where the taped sheet lies on the bench is all that the SVG cannot know.
      const [dx, dy] = [least(found, 0) - least(corners, 0), least(found, 1) - least(corners, 1)];
      for (const [x, y] of corners) expect(offLines([x + dx, y + dy], lines)).toBeLessThan(TRUE);
      const most = (spots: readonly Spot[]) => Math.max(...spots.map(([x]) => x));
      expect(Math.abs(most(found) - most(corners) - dx)).toBeLessThan(TRUE);
    }, 60_000);
  },
);

/**
 * The lines of a page as poppler's converter to SVG has them, mm from the lower left corner; pages neither shrunk nor
 * moved.
 */
function linesByPoppler(file: string, number: number): Point[][] {
  const page = ['-f', String(number), '-l', String(number)];
  const svg = execFileSync('pdftocairo', ['-svg', '-noshrink', '-nocenter', ...page, file, '-'], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  const mm = 25.4 / 72;
  const height = Number(/viewBox="0 0 [\d.]+ ([\d.]+)"/.exec(svg)![1]);
  const lines = [...svg.matchAll(/<path style="fill:none;[^"]*" d="([^"]*)"([^>]*)>/g)];
  return lines.map(([, d, more]) => {
    expect(more).not.toContain('transform');
    const points = [...d!.matchAll(/[ML] (-?[\d.]+) (-?[\d.]+)/g)];
    return points.map(([, x, y]) => ({ x: Number(x) * mm, y: (height - Number(y)) * mm }));
  });
}

test('pages of strips are read the same by poppler as by pdf.js', async () => {
  const drawing = fullSizeOf(planOfSample('fell-short')).find(({ id }) => id.startsWith('face'))!;
  const { bytes } = await tapedFrom(drawing, sheetNamed('A4')!);
  const file = join(mkdtempSync(join(tmpdir(), 'taped-')), 'face.pdf');
  writeFileSync(file, bytes);
  for (const [i, page] of (await readPdf(bytes)).entries()) {
    const others = linesByPoppler(file, i + 1);
    for (const { points, width } of page.lines) {
      if (Math.abs(width - ROUT) > 0.01) continue;
      const isSame = (other: readonly Point[]): boolean =>
        points.every(({ x, y }) => other.some((spot) => Math.hypot(spot.x - x, spot.y - y) < 0.02));
      expect(others.some(isSame)).toBe(true);
    }
  }
});
