import { grown, heightOf, joinBoxes, shifted, widthOf, type Box } from './box.js';
import { documentLeaf, documentSheet, headOf, type Room } from './documentSheet.js';
import { hasInk, mergedInk } from './ink.js';
import type { Book, Leaf, Studio, TiledEntry } from './leaf.js';
import { narrow } from './line.js';
import { windowBox, type Run } from './nest.js';
import type { Pen } from './pen.js';
import type { MapPage } from './set.js';
import { wrap } from './wrap.js';

const LETTERS = 2.5;
const LINE = LETTERS * 1.75;
/** The tallest picture of a run on the map, mm. */
const TALLEST_RUN = 90;
const LARGEST_SCALE = 0.1;

/** A run's place on the map pages. */
interface Panel {
  readonly entry: TiledEntry;
  readonly run: Run;
  /** Sheets of the same document before this run. */
  readonly before: number;
  readonly first: boolean;
  readonly extent: Box;
  readonly scale: number;
  readonly height: number;
}

/**
 * The map of all tiled documents of the set: how their sheets lie, numbered, with the drawing under them, how many there are
 * beside the fewest any layout could need, and how large the whole is when glued, to check with a tape.
 */
export function layMap(page: MapPage, studio: Studio, tiled: readonly TiledEntry[]): readonly Leaf[] {
  const { room } = documentSheet(studio, false);
  const notes = studio.words.map.notes.flatMap((note) => wrap(note, room.width, LETTERS, false, studio.measure));
  const notesHeight = notes.length * LINE + 4;
  const pages: Panel[][] = [[]];
  let left = room.height - notesHeight;
  for (const panel of tiled.flatMap((entry) => panelsOf(entry, room))) {
    if (panel.height > left && pages[pages.length - 1]!.length > 0) {
      pages.push([]);
      left = room.height;
    }
    pages[pages.length - 1]!.push(panel);
    left -= panel.height;
  }
  return pages.map((panels, i) =>
    documentLeaf(studio, false, headOf(page, i === 0), (pen, inner, book) => {
      let y = inner.top;
      if (i === 0) {
        notes.forEach((note, k) => pen.text(note, inner.left, y - (k + 0.5) * LINE, { height: LETTERS }));
        y -= notesHeight;
      }
      for (const panel of panels) {
        drawPanel(pen, panel, inner, y, studio, book);
        y -= panel.height;
      }
    }),
  );
}

function panelsOf(entry: TiledEntry, room: Room): readonly Panel[] {
  let before = 0;
  return entry.plan.runs.map((run, i): Panel => {
    const extent = joinBoxes(run.windows.map((window) => windowBox(run, window)));
    const scale = Math.min(LARGEST_SCALE, room.width / widthOf(extent), TALLEST_RUN / heightOf(extent));
    const height = heightOf(extent) * scale + 2 * LINE + (i === 0 ? 2 * LINE : 0) + 3;
    const panel = { entry, run, before, first: i === 0, extent, scale, height };
    before += run.windows.length;
    return panel;
  });
}

function drawPanel(pen: Pen, panel: Panel, room: Room, top: number, studio: Studio, book: Book): void {
  const { entry, run, extent, scale, before } = panel;
  const { map, page } = studio.words;
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
  const last = before + run.windows.length;
  const pages = `${page} ${String(firstPage + before)}–${String(firstPage + last - 1)}`;
  const names = run.placed.map(({ drawing }) => drawing.title).join(' · ');
  pen.text(names, room.left, y - LINE / 2, { height: LETTERS, bold: true, fit: room.width });
  y -= LINE;
  pen.text(`${pages}; ${map.assembled}: ${size}`, room.left, y - LINE / 2, { height: LETTERS, fit: room.width });
  y -= LINE;
  const px = (x: number): number => room.left + (x - extent.minX) * scale;
  const py = (v: number): number => y + (v - extent.maxY) * scale;
  for (const { trace, up } of run.placed) {
    for (const line of trace.lines) {
      if (line.layer !== 'outline' && line.layer !== 'guide' && line.layer !== 'block') continue;
      pen.line(
        line.points.map((value, i) => (i % 2 === 0 ? px(value) : py(value + up))),
        narrow,
      );
    }
  }
  const merged = mergedInk(run.placed);
  run.windows.forEach((window, i) => {
    const box = windowBox(run, window);
    const { pane } = run;
    const drawn = { minX: px(box.minX), minY: py(box.minY), maxX: px(box.maxX), maxY: py(box.maxY) };
    pen.rectangle(grown(drawn, -0.15), narrow);
    const number = String(before + i + 1);
    const letters = Math.min(LETTERS, heightOf(drawn) * 0.25);
    // In the upper corner, or further down where the drawing leaves room for the number.
    const reach = (letters + 1) / scale;
    const free = [0, 1, 2, 3].find((step) => {
      const maxY = box.maxY - (step * (pane.height - reach)) / 3;
      return !hasInk(merged, { minX: box.minX, minY: maxY - reach, maxX: box.minX + pane.width, maxY });
    });
    const numberY = drawn.maxY - ((free ?? 0) * (heightOf(drawn) - letters - 1)) / 3 - letters / 2 - 0.5;
    pen.text(number, (drawn.minX + drawn.maxX) / 2, numberY, {
      height: letters,
      bold: true,
      align: 'centre',
      fit: widthOf(drawn) - 1.6,
    });
  });
}
