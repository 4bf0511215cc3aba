import type { Layer } from '../../sheet/drawing.js';
import { grown, heightOf, joinBoxes, shifted, widthOf, type Box } from '../trace/box.js';
import { documentLeaf, documentSheet, headOf, type Room } from './documentSheet.js';
import type { Book, Leaf, PrintContext, TiledEntry } from './leaf.js';
import { narrow } from '../trace/line.js';
import { isInStrips, pageOf, windowBox, type Run } from '../tile/nest.js';
import { outside } from '../tile/outside.js';
import type { Pen } from '../pen/pen.js';
import type { MapPage } from '../../sheet/pages.js';
import { wrap } from '../pen/wrap.js';

const LETTERS = 2.5;
const LINE = LETTERS * 1.75;
/** The tallest picture of a run on the map, mm. */
const TALLEST_RUN = 150;
const LARGEST_SCALE = 0.1;

/** A run's place on the map pages. */
interface Panel {
  readonly entry: TiledEntry;
  readonly run: Run;
  /** Sheets of the same document before this run. */
  readonly before: number;
  readonly first: boolean;
  /** What lies in it, in as many lines as that takes; none where each is named by itself. */
  readonly names: readonly string[];
  readonly extent: Box;
  readonly scale: number;
  readonly height: number;
}

/**
 * The map of all tiled documents of the set: how their sheets lie, numbered, with the drawing under them, how many
 * there are beside the fewest any layout could need, and how large the whole is when glued, to check with a tape.
 */
export function layMap(page: MapPage, context: PrintContext, tiled: readonly TiledEntry[]): readonly Leaf[] {
  const { room } = documentSheet(context, false);
  const notes = context.words.map.notes.flatMap((note) => wrap(note, room.width, LETTERS, false, context.measure));
  const notesHeight = notes.length * LINE + 4;
  const pages: Panel[][] = [[]];
  let left = room.height - notesHeight;
  for (const panel of tiled.flatMap((entry) => panelsOf(entry, room, context))) {
    if (panel.height > left && pages[pages.length - 1]!.length > 0) {
      pages.push([]);
      left = room.height;
    }
    pages[pages.length - 1]!.push(panel);
    left -= panel.height;
  }
  return pages.map((panels, i) =>
    documentLeaf(context, false, headOf(page, i === 0), (pen, inner, book) => {
      let y = inner.top;
      if (i === 0) {
        notes.forEach((note, k) => pen.text(note, inner.left, y - (k + 0.5) * LINE, { height: LETTERS }));
        y -= notesHeight;
      }
      for (const panel of panels) {
        pen.tagged('Figure', () => drawPanel(pen, panel, inner, y, context, book), panel.entry.title);
        y -= panel.height;
      }
    }),
  );
}

function panelsOf(entry: TiledEntry, room: Room, { measure }: PrintContext): readonly Panel[] {
  let before = 0;
  let first = true;
  return entry.plan.runs.flatMap((run): Panel[] => {
    // What is whole on one sheet needs no map.
    if (run.windows.length === 1) {
      before += 1;
      return [];
    }
    const lines = run.placed.flatMap(({ trace, up }) =>
      trace.lines.filter(({ layer }) => MAPPED.includes(layer)).map(({ box }) => shifted(box, 0, up)),
    );
    const extent = joinBoxes([...lines, ...run.windows.map((window) => windowBox(run, window))]);
    const scale = Math.min(LARGEST_SCALE, room.width / widthOf(extent), TALLEST_RUN / heightOf(extent));
    const named = run.placed.map(({ drawing }) => drawing.title).join(' · ');
    // Strips of several drawings have the name of each under it.
    const names = isNamedEach(run) ? [] : wrap(named, room.width, LETTERS, true, measure);
    const height = heightOf(extent) * scale + (1 + names.length) * LINE + (first ? 2 * LINE : 0) + LINE + 3;
    const panel = { entry, run, before, first, names, extent, scale, height };
    before += run.pages.length;
    first = false;
    return [panel];
  });
}

function drawPanel(pen: Pen, panel: Panel, room: Room, top: number, context: PrintContext, book: Book): void {
  const { entry, run, extent, scale, before } = panel;
  const { map, page } = context.words;
  let y = top;
  if (panel.first) {
    const { sheets, areaBound } = entry.plan;
    pen.text(entry.title, room.left, y - LINE / 2, { height: 3.5, bold: true, fit: room.width });
    y -= LINE;
    pen.text(`${map.count}: ${String(sheets)} (${map.bound} ${String(areaBound)})`, room.left, y - LINE / 2 - 0.5, {
      height: LETTERS,
    });
    y -= LINE;
  }
  const ink = joinBoxes(
    run.placed.flatMap(({ trace, up }) => [...trace.lines, ...trace.texts].map((traced) => shifted(traced.box, 0, up))),
  );
  const size = `${String(Math.round(widthOf(ink)))} × ${String(Math.round(heightOf(ink)))} mm`;
  const firstPage = book.tiled.find((other) => other.plan === entry.plan)?.page ?? 0;
  const last = before + run.pages.length;
  const pages = `${page} ${String(firstPage + before)}–${String(firstPage + last - 1)}`;
  for (const line of panel.names) {
    pen.text(line, room.left, y - LINE / 2, { height: LETTERS, bold: true });
    y -= LINE;
  }
  // Strips are of several drawings, which are glued into one no more than they are one.
  const glued = isInStrips(run) ? pages : `${pages}; ${map.assembled}: ${size}`;
  pen.text(glued, room.left, y - LINE / 2, { height: LETTERS, fit: room.width });
  y -= LINE;
  const px = (x: number): number => room.left + (x - extent.minX) * scale;
  const py = (v: number): number => y + (v - extent.maxY) * scale;
  const boxes = run.windows.map((window): Box => {
    const { minX, minY, maxX, maxY } = windowBox(run, window);
    return { minX: px(minX), minY: py(minY), maxX: px(maxX), maxY: py(maxY) };
  });
  const numbers = boxes.map((box, i): Numbered => numberIn(box, String(before + pageOf(run, i) + 1), context));
  for (const { trace, up } of run.placed) {
    for (const line of trace.lines) {
      if (!MAPPED.includes(line.layer)) continue;
      const points = line.points.map((value, i) => (i % 2 === 0 ? px(value) : py(value + up)));
      for (const part of outside(
        points,
        numbers.map(({ ground }) => ground),
      ))
        pen.line(part, narrow);
    }
  }
  if (isNamedEach(run)) {
    for (const { drawing, trace, up } of run.placed) {
      const lowest = shifted(joinBoxes(trace.lines.map(({ box }) => box)), 0, up).minY;
      pen.text(drawing.title, room.left, py(lowest) - LINE / 2, { height: LETTERS, fit: room.width });
    }
  }
  boxes.forEach((box, i) => {
    pen.rectangle(grown(box, -0.15), narrow);
    const { text, x, y, height } = numbers[i]!;
    pen.text(text, x, y, { height, bold: true, align: 'centre' });
  });
}

const isNamedEach = (run: Run): boolean => isInStrips(run) && run.placed.length > 1;

/** The lines that show on a map what lies where. */
const MAPPED: readonly Layer[] = ['outline', 'cut', 'edge', 'joint', 'guide', 'block'];

/** A sheet's number and the ground that lines leave free for it. */
interface Numbered {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly ground: Box;
}

function numberIn(box: Box, text: string, { measure }: PrintContext): Numbered {
  const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const height = Math.min(LETTERS, heightOf(box) * 0.5, (widthOf(box) * 0.7) / measure(text, true));
  const [half, tall] = [(measure(text, true) * height) / 2 + 0.6, height / 2 + 0.6];
  return { text, x, y, height, ground: { minX: x - half, minY: y - tall, maxX: x + half, maxY: y + tall } };
}
