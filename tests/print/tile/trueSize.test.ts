import { describe, expect, it } from 'vitest';
import type { Drawing, Shape } from '../../../src/sheet/drawing.js';
import { rollOf, sheetNamed, type Paper } from '../../../src/print/paper/paper.js';
import { printed } from '../printed.js';
import { readPdf, type Point, type ReadPage } from '../readPdf.js';
import { stripDrawing } from '../strip.js';
import { cutApart, glue } from '../taped.js';

/** What a steel rule shows (issue: right to 0.05 mm over the full length, through all seams). */
const TOLERANCE = 0.05;

/** Upright ticks of this height are looked for in the file, mm. */
const TICK = 23.7;

/** The strip with a tick every 250 mm along its bottom, 3.5 m in all. */
function tickedStrip(): { drawing: Drawing; ticks: readonly Point[] } {
  const strip = stripDrawing('face-R2', 3500, 110, 150);
  const ticks = Array.from({ length: 15 }, (_, i) => {
    const x = 250 * i;
    return { x, y: 150 * Math.abs((2 * x) / 3500 - 1) ** 2.4 };
  });
  const shapes = ticks.map(({ x, y }): Shape => ({
    kind: 'path',
    layer: 'outline',
    closed: false,
    vertices: [
      { x, y },
      { x, y: y + TICK },
    ],
  }));
  return { drawing: { ...strip, shapes: [...strip.shapes, ...shapes] }, ticks };
}

describe('true size, read back from the file by pdf.js', () => {
  const papers: readonly (readonly [Paper, { across: number; along: number } | undefined])[] = [
    [sheetNamed('A4')!, undefined],
    [sheetNamed('Letter')!, undefined],
    [sheetNamed('A0')!, undefined],
    [rollOf(610), undefined],
    [sheetNamed('A4')!, { across: 0.985, along: 1.012 }],
  ];
  it.each(papers)('a strip of 3.5 m measures true through all seams on %o, printer %o', async (paper, printer) => {
    const { drawing, ticks } = tickedStrip();
    const { bytes, findings } = await printed([{ kind: 'tiled', title: 'Faces', drawings: [drawing] }], {
      paper,
      ...(printer ? { printer } : {}),
    });
    expect(findings).toEqual([]);
    // A printer that draws short makes of the file what is on the paper.
    const pages = (await readPdf(bytes)).map((page) => onPaper(page, paper, printer)).flatMap(cutApart);
    const places = glue(pages);
    const found = pages.flatMap((page, i) =>
      page.lines
        .filter(
          ({ points: [a, b], points }) =>
            points.length === 2 && Math.abs(a!.x - b!.x) < 0.01 && Math.abs(Math.abs(a!.y - b!.y) - TICK) < 0.02,
        )
        .map(({ points: [a, b] }) => ({ x: places[i]!.x + a!.x, y: places[i]!.y + Math.min(a!.y, b!.y) })),
    );
    const origin = found.reduce((left, point) => (point.x < left.x ? point : left));
    for (const tick of ticks) {
      const [dx, dy] = [tick.x - ticks[0]!.x, tick.y - ticks[0]!.y];
      const matches = found.filter((point) => Math.abs(point.x - origin.x - dx) < 5);
      expect(matches.length).toBeGreaterThan(0);
      for (const match of matches) {
        expect(Math.abs(match.x - origin.x - dx)).toBeLessThan(TOLERANCE);
        expect(Math.abs(match.y - origin.y - dy)).toBeLessThan(TOLERANCE);
      }
    }
  });

  it('every tiled page carries bars of exactly 100 mm and 4 in, level and upright', async () => {
    const { bytes } = await printed([{ kind: 'tiled', title: 'Faces', drawings: [stripDrawing()] }]);
    for (const page of await readPdf(bytes)) {
      const spans = page.fills.map((points) => ({
        level: Math.max(...points.map((p) => p.x)) - Math.min(...points.map((p) => p.x)),
        upright: Math.max(...points.map((p) => p.y)) - Math.min(...points.map((p) => p.y)),
      }));
      for (const length of [100, 4 * 25.4]) {
        expect(spans.some(({ level }) => Math.abs(level - length) < 0.01)).toBe(true);
        expect(spans.some(({ upright }) => Math.abs(upright - length) < 0.01)).toBe(true);
      }
    }
  });

  it('compensation changes the file and is stamped on every sheet', async () => {
    const pages: Parameters<typeof printed>[0] = [{ kind: 'tiled', title: 'Faces', drawings: [stripDrawing()] }];
    const { bytes } = await printed(pages, { printer: { across: 0.99, along: 1.01 } });
    for (const page of await readPdf(bytes)) {
      expect(page.texts.some(({ text }) => text.includes('across 0.9900, along 1.0100'))).toBe(true);
      // The paper itself keeps its size: A4 (ISO 216), upright or lying.
      expect([page.width, page.height].map(Math.round).sort()).toEqual([210, 297]);
    }
  });

  it('refuses factors beyond 3 % and writes nothing', async () => {
    const result = await printed([{ kind: 'tiled', title: 'Faces', drawings: [stripDrawing()] }], {
      printer: { across: 0.95, along: 1 },
    });
    expect(result.bytes.length).toBe(0);
    expect(result.findings.map(({ where }) => where)).toEqual(['printer.across']);
    expect(result.findings[0]!.what).toContain('-5.0 %');
  });
});

function onPaper(page: ReadPage, paper: Paper, printer: { across: number; along: number } | undefined): ReadPage {
  if (!printer) return page;
  const lying = paper.kind === 'roll' || page.width > page.height;
  const [fx, fy] = lying ? [printer.along, printer.across] : [printer.across, printer.along];
  const move = ({ x, y }: Point): Point => ({ x: x * fx, y: y * fy });
  return {
    ...page,
    lines: page.lines.map(({ clip, ...line }) => ({
      ...line,
      points: line.points.map(move),
      ...(clip && { clip: [clip[0] * fx, clip[1] * fy, clip[2] * fx, clip[3] * fy] }),
    })),
    texts: page.texts.map((text) => ({ ...text, ...move(text) })),
  };
}
