import { pathPoints } from '../../../src/contour/chords.js';
import DxfParserModule from 'dxf-parser';
import fc from 'fast-check';
import { XMLParser } from 'fast-xml-parser';
import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import { settled } from '../../../src/print/trace/settle.js';
import { sawnFrom } from '../../../src/block/sawn.js';
import { readJob } from '../../../src/job/whole/read.js';
import { planOf, type Plan } from '../../../src/plan.js';
import { dxfOf } from '../../../src/print/dxf/dxf.js';
import { fontFiles } from '../../../src/print/pen/fonts.js';
import { measureOn } from '../../../src/print/pen/pen.js';
import { svgOf } from '../../../src/print/svg/svg.js';
import { blockSheets } from '../../../src/sheet/blocks/blockSheet.js';
import type { Caption, Drawing, PathShape, Shape, TextShape } from '../../../src/sheet/drawing.js';
import { placesOf } from '../../../src/sheet/moved.js';
import { jobFiles } from '../../random/jobFile.js';
import { sampleJob } from '../../samples.js';
import { planOfSample, SAMPLES } from '../sample.js';

// Its types put the class one step further in than its file does.
const DxfParser = DxfParserModule as unknown as typeof DxfParserModule.default;

const ruler = new PDFDocument({ autoFirstPage: false });
ruler.registerFont('regular', fontFiles().regular);
const measure = measureOn(ruler);

type Point = readonly [number, number];

/**
 * The corners of a text as the embedded font sets it, capitals only: from the words' own box, not from what the sheet
 * reckoned.
 */
function boxOf({ text, x, y, height, angleInDegrees = 0 }: TextShape): Point[] {
  const [w, h] = [(measure(text, false) * height) / 2, height / 2];
  const [cos, sin] = [Math.cos((angleInDegrees * Math.PI) / 180), Math.sin((angleInDegrees * Math.PI) / 180)];
  return [
    [-w, -h],
    [w, -h],
    [w, h],
    [-w, h],
  ].map(([dx, dy]) => [x + dx! * cos - dy! * sin, y + dx! * sin + dy! * cos]);
}

function pointsOf({ vertices }: PathShape): Point[] {
  const flat = pathPoints(vertices, true);
  return Array.from({ length: flat.length / 2 - 1 }, (_, i): Point => [flat[2 * i]!, flat[2 * i + 1]!]);
}

/** By the number of edges that a ray to the right crosses. */
function isInside([x, y]: Point, polygon: readonly Point[]): boolean {
  let inside = false;
  polygon.forEach(([ax, ay], i) => {
    const [bx, by] = polygon[(i + 1) % polygon.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}

/** Whether a box lies wholly inside: a box's sides at every half millimetre. */
function liesInside(box: readonly Point[], polygon: readonly Point[]): boolean {
  return box.every(([ax, ay], i) => {
    const [bx, by] = box[(i + 1) % box.length]!;
    const steps = Math.ceil(2 * Math.hypot(bx - ax, by - ay));
    return Array.from({ length: steps }, (_, k) => k / steps).every((t) =>
      isInside([ax + t * (bx - ax), ay + t * (by - ay)], polygon),
    );
  });
}

interface Part {
  readonly outline: PathShape;
  readonly words: readonly TextShape[];
  readonly leaders: readonly PathShape[];
}

function partOf(shapes: readonly Shape[]): Part {
  const paths = shapes.filter((shape) => shape.kind === 'path');
  const outlines = paths.filter(({ layer }) => layer === 'block');
  expect(outlines).toHaveLength(1);
  return {
    outline: outlines[0]!,
    words: shapes.filter((shape) => shape.kind === 'text'),
    leaders: paths.filter(({ layer }) => layer === 'dimension'),
  };
}

/** What is said of each block by its number: read off the words, as somebody at the bench would. */
function numbersIn(words: readonly TextShape[], plan: Plan): { id: string; turnedOver: boolean; words: TextShape }[] {
  const ids = new Set(plan.blocks.map(({ id }) => id));
  return words.flatMap((each) =>
    each.text.split(' · ').flatMap((part) => {
      const id = /^[^ :]+/.exec(part)?.[0] ?? '';
      return ids.has(id) ? [{ id, turnedOver: part.endsWith('turn over'), words: each }] : [];
    }),
  );
}

function holds(plan: Plan): void {
  const sheets = blockSheets(plan);
  const parts = sheets.flatMap((sheet) =>
    sheet.apart!.map(({ shapes, captions }) => partOf([...shapes, ...firstPlace(captions)])),
  );
  const said = parts.flatMap((part) => numbersIn(part.words, plan).map((number) => ({ ...number, part })));
  expect(said.map(({ id }) => id).sort()).toEqual(plan.blocks.map(({ id }) => id).sort());
  const noseAt = (id: string) => {
    const row = plan.layup.rows.find((each) => each.id === plan.blocks.find((block) => block.id === id)!.row)!;
    return row.face.inward[1] > 0 ? 'left' : 'right';
  };
  // Wherever the words may come to stand: at the first place, at the last, and at a few between.
  const everywhere = sheets.flatMap((sheet) =>
    sheet.apart!.flatMap(({ shapes, captions }) =>
      captions.flatMap((caption) =>
        [...placesOf(caption)]
          .filter((_, i, { length }) => i % Math.ceil(length / 3) === 0 || i === length - 1)
          .map((place) => partOf([...shapes, ...place])),
      ),
    ),
  );
  for (const { outline, words, leaders } of everywhere) {
    const polygon = pointsOf(outline);
    for (const each of words) {
      expect([each.text, each.height >= 5]).toEqual([each.text, true]);
      const box = boxOf(each);
      if (liesInside(box, polygon)) continue;
      // Outside, clear of the outline, and a leader leads from beside the words into it.
      expect([each.text, box.some((corner) => isInside(corner, polygon))]).toEqual([each.text, false]);
      expect([each.text, leaders.length]).toEqual([each.text, 1]);
    }
    for (const { vertices } of leaders) {
      const ends = vertices.map(({ x, y }): Point => [x, y]);
      expect(ends.filter((end) => isInside(end, polygon))).toHaveLength(1);
    }
    const numbers = numbersIn(words, plan);
    const drawn = noseAt(numbers.find(({ turnedOver }) => !turnedOver)!.id);
    for (const { id, turnedOver } of numbers) expect([id, turnedOver]).toEqual([id, noseAt(id) !== drawn]);
    // Nose and deck by name, the nose at its own end of the line.
    const line = words.find(({ text }) => text.includes('NOSE'))!.text;
    expect(line).toContain('DECK');
    expect(line.startsWith('NOSE')).toBe(drawn === 'left');
    // True size, level: the box of the outline is what the saw is set to.
    for (const { id } of numbers) {
      const sawn = sawnFrom(plan.blocks.find((block) => block.id === id)!.made.outline);
      const [xs, ys] = [polygon.map(([x]) => x), polygon.map(([, y]) => y)];
      expect(Math.abs(Math.max(...xs) - Math.min(...xs) - sawn.length)).toBeLessThan(0.11);
      expect(Math.abs(Math.max(...ys) - Math.min(...ys) - sawn.height)).toBeLessThan(0.11);
    }
  }
  for (const sheet of sheets) apart(sheet);
}

const firstPlace = (captions: readonly Caption[]): readonly Shape[] => [...placesOf(captions[0]!)][0]!;

/** No part of a sheet touches another. */
function apart({ id, apart: groups }: Drawing): void {
  const boxes = groups!.map(({ shapes, captions }) => {
    const points = [...shapes, ...firstPlace(captions)].flatMap((shape): readonly Point[] =>
      shape.kind === 'text' ? boxOf(shape) : shape.kind === 'path' ? pointsOf(shape) : [[shape.x, shape.y]],
    );
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)] as const;
  });
  boxes.forEach(([l, r, b, t], i) => {
    for (const [l2, r2, b2, t2] of boxes.slice(i + 1)) {
      expect([id, l < r2 && l2 < r && b < t2 && b2 < t]).toEqual([id, false]);
    }
  });
}

describe.each(SAMPLES)('on the outlines of the blocks of %s', (name) => {
  const plan = planOfSample(name);

  test('every block has its number, inside or on a leader, with nose, deck and hand', () => holds(plan));

  test('the files have each outline as one closed line to cut, and every number on a layer that is not cut', () => {
    for (const sheet of blockSheets(plan)) {
      const made = dxfOf(sheet);
      if (!('dxf' in made)) throw new Error(JSON.stringify(made.findings));
      const { entities } = new DxfParser().parseSync(made.dxf) as unknown as {
        entities: { type: string; layer: string; shape?: boolean; text?: string }[];
      };
      const cut = entities.filter(({ layer }) => layer.startsWith('CUT'));
      expect(cut).toHaveLength(sheet.apart!.length);
      for (const { type, shape } of cut) expect([type, shape]).toEqual(['LWPOLYLINE', true]);
      const words = settled(sheet).shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
      const written = entities.flatMap(({ type, text }) =>
        type === 'TEXT'
          ? [text!.replace(/\\U\+([0-9A-F]{4})/g, (_, code: string) => String.fromCharCode(parseInt(code, 16)))]
          : [],
      );
      expect(written.filter((text) => text !== '100 mm').sort()).toEqual([...words].sort());
      // A sheet of foam, not a line: no wider than it is usually sold.
      const xs = sheet.shapes.flatMap((shape) =>
        shape.kind === 'path' ? shape.vertices.map(({ x }) => x) : [shape.x],
      );
      expect(Math.max(...xs) - Math.min(...xs)).toBeLessThanOrEqual(600);
      const read = JSON.stringify(new XMLParser({ processEntities: true }).parse(svgOf(sheet)));
      for (const text of words) expect(read).toContain(JSON.stringify(text).slice(1, -1));
    }
  });
});

test('on a board whose chambers share four guides, four outlines serve all blocks, each with its thickness', () => {
  const job = sampleJob('fell-short');
  const plan = planOf({ ...job, routing: { ...job.routing, guides: { kind: 'count', count: 4 } } });
  holds(plan);
  const parts = blockSheets(plan).flatMap(({ apart: groups }) => groups!);
  expect(parts.length).toBe(new Set(plan.blocks.map(({ id, guide }) => guide ?? id)).size);
});

test('and on boards drawn at random', () => {
  let blocks = 0;
  fc.assert(
    fc.property(jobFiles, (file) => {
      const { job } = readJob(JSON.stringify(file), 'random.json', () => undefined);
      if (!job) return;
      const plan = planOf(job);
      blocks += plan.blocks.length;
      holds(plan);
    }),
    { seed: 15, numRuns: 25 },
  );
  expect(blocks).toBeGreaterThan(100);
});
