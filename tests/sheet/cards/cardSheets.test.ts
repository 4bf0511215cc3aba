import { curveNatural, line as through } from 'd3-shape';
import DxfParserModule from 'dxf-parser';
import { beforeAll, describe, expect, test } from 'vitest';
import { seeded } from '../../../src/block/nest/seeded.js';
import type { Chamber } from '../../../src/chamber/chamber.js';
import { readJob } from '../../../src/job/whole/read.js';
import { printLength } from '../../../src/length/length.js';
import { planOf, type Plan } from '../../../src/plan.js';
import { dxfOf } from '../../../src/print/dxf/dxf.js';
import { svgOf } from '../../../src/print/svg/svg.js';
import { cardSheets } from '../../../src/sheet/cards/cardSheets.js';
import { cornerCards, type CornerCard } from '../../../src/sheet/cards/cornerCards.js';
import type { Part, PathShape, TextShape } from '../../../src/sheet/drawing.js';
import { faceViews } from '../../../src/sheet/face/faceViews.js';
import { markingTable } from '../../../src/sheet/face/markingTable.js';
import type { Cell } from '../../../src/sheet/pages.js';
import { hardJob, TABLE } from '../../random/hardJob.js';
import { planOfSample, SAMPLES } from '../sample.js';
import { across, awayFrom, bruteFace, pointsAlong } from './bruteFace.js';

// Its types put the class one step further in than its file does.
const DxfParser = DxfParserModule as unknown as typeof DxfParserModule.default;

/** A hard board of `tests/random`: long lines with many bends (6), ends that lean (15), rows of two faces (24). */
function hardPlan(number: number): Plan {
  const { file, table } = hardJob(seeded(2026 * 100_003 + number));
  const { job } = readJob(JSON.stringify(file), 'hard.json', (name) => (name === TABLE ? table : undefined));
  return planOf(job!);
}

type Spot = readonly [number, number];

/** A card as somebody reads it off the sheet. */
interface Read {
  readonly rout: PathShape;
  readonly deck: readonly Spot[];
  readonly bottom: readonly Spot[];
  /** Its short marks, left to right. */
  readonly marks: readonly number[];
  readonly texts: readonly TextShape[];
}

function readOff({ shapes }: Part): Read {
  const paths = shapes.filter((shape): shape is PathShape => shape.kind === 'path');
  const onLayer = (layer: string) => paths.filter((path) => path.layer === layer);
  const [rout, ...more] = onLayer('chamber');
  expect(more).toEqual([]);
  const level = onLayer('edge').filter(({ vertices }) => vertices[0]!.x < vertices.at(-1)!.x - 1);
  const lines = level
    .map(({ vertices }) => vertices.map(({ x, y }): Spot => [x, y]))
    .sort((a, b) => b[0]![1] - a[0]![1]);
  const marks = [...new Set(onLayer('mark').map(({ vertices }) => vertices[0]!.x))].sort((a, b) => a - b);
  const texts = shapes.filter((shape): shape is TextShape => shape.kind === 'text');
  return { rout: rout!, deck: lines[0]!, bottom: lines.at(-1)!, marks, texts };
}

const heightOn = (line: readonly Spot[], x: number): number => {
  const i = Math.max(
    1,
    line.findIndex(([each]) => each >= x),
  );
  const [a, b] = [line[i - 1]!, line[i]!];
  return a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
};

/** The face on which an end is marked, and what the plan publishes of its chamber, as it comes out there. */
function publishedAt(plan: Plan, { chamber: id, face }: CornerCard['serves'][number]) {
  const chamber = plan.chambers.find((each) => each.id === id)!;
  const row = plan.layup.rows.find((each) => each.id === chamber.row)!;
  const at = [row.face, row.through].find((each) => each && (face === undefined || each.id === face))!;
  const cross = at === row.face ? (s: number) => s : across(row.face, at);
  const contour = chamber.contour.map((v) => ({ ...v, x: cross(v.x) }));
  return { at, contour, seenFromLeft: at.inward[1] > 0 };
}

/** Where two straight lines meet. */
function meeting([a, b]: readonly [Spot, Spot], [c, d]: readonly [Spot, Spot]): Spot {
  const [rx, ry, qx, qy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const u = ((c[0] - a[0]) * qy - (c[1] - a[1]) * qx) / (rx * qy - ry * qx);
  return [a[0] + u * rx, a[1] + u * ry];
}

const boards: [string, () => Plan][] = [
  ...SAMPLES.map((name): [string, () => Plan] => [name, () => planOfSample(name)]),
  ...[6, 15, 24].map((number): [string, () => Plan] => [`hard board ${number}`, () => hardPlan(number)]),
];

describe.each(boards)('the corner cards of %s', (_, make) => {
  let plan: Plan;
  let cards: readonly CornerCard[] = [];
  let parts: readonly Part[] = [];
  beforeAll(() => {
    plan = make();
    cards = cornerCards(plan);
    const sheets = cardSheets(plan);
    // The sheets hold the cards row by row, each row's in their order.
    parts = [...new Set(cards.map(({ row }) => row))].flatMap(
      (row) => sheets.find(({ id }) => id === `cards-${row}`)!.apart!,
    );
    const inOrder = [...new Set(cards.map(({ row }) => row))].flatMap((row) =>
      cards.filter((card) => card.row === row),
    );
    cards = inOrder;
  }, 120_000);

  test('serve every end of every chamber once on each face that it is marked on', () => {
    const served = cards.flatMap(({ ends, serves }) =>
      serves.flatMap(({ chamber, face }) => ends.map((end) => `${chamber} ${end} ${face ?? ''}`)),
    );
    const faces = (id: string) => {
      const row = plan.layup.rows.find((each) => each.id === plan.chambers.find((one) => one.id === id)!.row)!;
      const isMarkedTwice = plan.routing.rows.some((each) => each.row === row.id && each.from.length > 1);
      const from = plan.routing.rows.flatMap((each) => each.chambers).find((each) => each.chamber === id)!.from;
      return isMarkedTwice ? [row.face.id, ...(from.length > 1 ? [row.through!.id] : [])] : [''];
    };
    const wanted = plan.chambers.flatMap(({ id }) =>
      faces(id).flatMap((face) => ['nose', 'tail'].map((end) => `${id} ${end} ${face}`)),
    );
    expect(served.sort()).toEqual(wanted.sort());
    expect(parts).toHaveLength(cards.length);
  });

  test('show the line as it is routed, and the finished edges, where they are on the face', () => {
    const faces = new Map<string, ReturnType<typeof bruteFace>>();
    cards.forEach((card, i) => {
      const { rout, deck, bottom, marks } = readOff(parts[i]!);
      const drawn = pointsAlong(rout.vertices, rout.closed);
      card.serves.forEach((served, k) => {
        const { at, contour, seenFromLeft } = publishedAt(plan, served);
        if (!faces.has(at.id)) faces.set(at.id, bruteFace(plan, at));
        const edges = faces.get(at.id)!;
        expect(served.turnedOver).toBe((card.noseAt === 'left') !== seenFromLeft);
        // Ends that share a card may differ by a tenth of a millimetre, and in where they are by as much again.
        const [near, low] = k === 0 ? [0.05, 0.05] : [0.2, 0.2];
        const mark = card.noseAt === 'left' ? marks[0]! : marks.at(-1)!;
        const isNoseLeft = card.noseAt === 'left';
        const along = (x: number) => served.stations[0]! + (isNoseLeft ? x - mark : mark - x);
        const up = edges(served.stations[0]!).bottom - heightOn(bottom, mark);
        const onFace = ([x, y]: Spot): Spot => [along(x), y + up];
        const said = `${served.chamber} ${card.ends.join()}`;
        const whole = pointsAlong(contour, true);
        const seen = drawn.map(onFace);
        for (const point of seen) expect([said, awayFrom(point, whole) <= near]).toEqual([said, true]);
        const [from, to] = [deck[0]![0], deck.at(-1)![0]].map(along).sort((a, b) => a - b) as [number, number];
        for (const point of whole.filter(([s]) => s > from && s < to))
          expect([said, awayFrom(point, seen.concat(rout.closed ? [seen[0]!] : [])) <= near]).toEqual([said, true]);
        for (const share of [0.01, 0.3, 0.6, 0.99]) {
          const x = deck[0]![0] + share * (deck.at(-1)![0] - deck[0]![0]);
          const there = edges(along(x));
          expect(Math.abs(heightOn(deck, x) + up - there.deck)).toBeLessThan(low);
          expect(Math.abs(heightOn(bottom, x) + up - there.bottom)).toBeLessThan(low);
        }
      });
    });
  });

  test('have the heights of their corners as the marking table has them, and say them', () => {
    const rows = faceViews(plan).flatMap((seen) =>
      markingTable(seen.plan, seen.row).rows.flatMap((row) =>
        row.kind === 'row' && row.cells[1] !== '' ? [{ face: seen.row.row.face.id, cells: row.cells }] : [],
      ),
    );
    const step = plan.job.units === 'mm' ? 0.1 : 25.4 / 16;
    const textOf = (cell: Cell) => (typeof cell === 'object' ? cell.text : String(cell));
    cards.forEach((card, i) => {
      const { rout, deck, bottom, texts } = readOff(parts[i]!);
      const { at } = publishedAt(plan, card.serves[0]!);
      const { cells } = rows.find(
        (row) => row.face === at.id && String(row.cells[0]).split(' ')[0] === card.serves[0]!.chamber,
      )!;
      card.ends.forEach((end) => {
        // The end is the line between two arcs that lies furthest out; the long lines begin at the arcs' other ends.
        const n = rout.vertices.length;
        const vertex = (k: number): Spot => [rout.vertices[(k + n) % n]!.x, rout.vertices[(k + n) % n]!.y];
        const out = (end === 'nose') === (card.noseAt === 'left') ? -1 : 1;
        const arcs = rout.vertices.flatMap(({ bulge }, k) => (bulge ? [k] : []));
        const outmost = arcs
          .filter((k) => rout.closed || (k > 0 && k < n - 1))
          .map((k, j, all) => [k, all[(j + 1) % all.length]!] as const)
          .filter(([a, b]) => b === (a + 2) % n || b === (a + 1) % n)
          .reduce((a, b) =>
            out * (vertex(b[0] + 1)[0] + vertex(b[1])[0]) > out * (vertex(a[0] + 1)[0] + vertex(a[1])[0]) ? b : a,
          );
        const [first, second] = outmost;
        const wall = [vertex(first + 1), vertex(second)] as const;
        const corners = [
          meeting([vertex(first - 1), vertex(first)], wall),
          meeting([vertex(second + 1), vertex(second + 2)], wall),
        ].sort((a, b) => b[1] - a[1]);
        const measured = [
          heightOn(deck, corners[0]![0]) - corners[0]![1],
          corners[1]![1] - heightOn(bottom, corners[1]![0]),
        ];
        const columns = end === 'nose' ? [3, 6] : [5, 8];
        measured.forEach((mm, k) => {
          const told = textOf(cells[columns[k]!]!).split(' at ')[0]!;
          const up = Math.ceil((mm - 0.02) / step) * step;
          const also = Math.ceil((mm + 0.02) / step) * step;
          const possible = [up, also].map((each) => printLength(each, plan.job.units));
          expect(possible, `${card.serves[0]!.chamber} ${end}`).toContain(told);
          const words = texts.map(({ text }) => text).join(' ');
          expect(words).toContain(told);
        });
        const where = textOf(cells[end === 'nose' ? 1 : 2]!);
        expect(texts.map(({ text }) => text).join(' ')).toContain(where);
      });
    });
  });

  test('are shared wherever every line is the same, so that there are no two alike', () => {
    cards.forEach((card, i) => {
      for (const [k, other] of cards.slice(0, i).entries()) {
        if (other.ends.join() !== card.ends.join() || other.noseAt !== card.noseAt) continue;
        const [a, b] = [readOff(parts[i]!), readOff(parts[k]!)];
        const mark = ({ marks }: Read) => (card.noseAt === 'left' ? marks[0]! : marks.at(-1)!);
        const low = (read: Read) => heightOn(read.bottom, mark(read));
        const isNear = (p: readonly Spot[], q: readonly Spot[]) =>
          p.length === q.length &&
          p.every(
            ([x, y], j) =>
              Math.abs(x - mark(a) - (q[j]![0] - mark(b))) < 0.08 && Math.abs(y - low(a) - (q[j]![1] - low(b))) < 0.08,
          );
        const flat = (read: Read) => read.rout.vertices.map(({ x, y }): Spot => [x, y]);
        const ends = (read: Read) => [read.deck[0]!, read.deck.at(-1)!, read.bottom[0]!, read.bottom.at(-1)!];
        const alike = isNear(flat(a), flat(b)) && isNear(ends(a), ends(b)) && a.marks.length === b.marks.length;
        if (alike) {
          // Then they differ along deck or bottom line, or in where their heights are taken.
          const off = Math.max(
            ...[0.2, 0.4, 0.6, 0.8].flatMap((share) =>
              (['deck', 'bottom'] as const).map((line) => {
                const at = (read: Read) => read[line][0]![0] + share * (read[line].at(-1)![0] - read[line][0]![0]);
                return Math.abs(heightOn(a[line], at(a)) - low(a) - heightOn(b[line], at(b)) + low(b));
              }),
            ),
          );
          expect(off, `${parts[i]!.name}, ${parts[k]!.name}`).toBeGreaterThan(0.08);
        }
      }
    });
  });

  test('with the marking table give every long line: a batten or straightedge through its marks keeps to it', () => {
    const faces = new Map<string, ReturnType<typeof bruteFace>>();
    const value = (cell: Cell) => (cell as { value: number }).value;
    for (const { plan: seen, row: view } of faceViews(plan)) {
      const { face } = view.row;
      if (!faces.has(face.id)) faces.set(face.id, bruteFace(seen, face));
      const edges = faces.get(face.id)!;
      const rows = markingTable(seen, view).rows.flatMap((row) => (row.kind === 'row' ? [row.cells] : []));
      for (const chamber of seen.chambers.filter((each) => each.row === view.row.id)) {
        const its = rows.filter(([id]) => String(id).split(' ')[0] === chamber.id);
        const first = its[0]!;
        for (const [side, columns] of [
          ['upper', [3, 4, 5]],
          ['lower', [6, 7, 8]],
        ] as const) {
          const between = its.map((cells) => cells[columns[1]]!).filter((cell) => cell !== '' && cell !== 'straight');
          const height = (s: number, cell: Cell) =>
            side === 'upper' ? edges(s).deck - value(cell) : edges(s).bottom + value(cell);
          const placeOf = (cell: Cell, usual: number) => {
            const said = (cell as { text: string }).text.split(' at ')[1];
            return said === undefined ? usual : lengthOf(said);
          };
          const marks = [
            [placeOf(first[columns[0]]!, value(first[1]!)), first[columns[0]]!],
            ...between.map((cell) => [placeOf(cell, NaN), cell] as const),
            [placeOf(first[columns[2]]!, value(first[2]!)), first[columns[2]]!],
          ] as [number, Cell][];
          if (between.length === 1 && Number.isNaN(marks[1]![0])) marks[1]![0] = (marks[0]![0] + marks[2]![0]) / 2;
          const points = marks.map(([s, cell]): Spot => [s, height(s, cell)]);
          const joined =
            points.length === 3 && !String((marks[1]![1] as { text: string }).text).includes(' at ')
              ? battenThrough(points)
              : straightThrough(points);
          const drawn = longLineAt(chamber, side);
          const rounding = plan.job.units === 'mm' ? 0.1 : 25.4 / 16;
          for (const [s, z] of joined) {
            const there = drawn(s);
            if (there === undefined) continue;
            const outside = (side === 'upper' ? 1 : -1) * (z - there);
            const said = `${chamber.id} ${side} at ${s.toFixed(0)}`;
            expect([said, outside <= 0.5]).toEqual([said, true]);
            // Rounded places of bends on steep lines take a little more.
            expect([said, outside >= -0.5 - 1.3 * rounding]).toEqual([said, true]);
          }
        }
      }
    }
  });

  test('come as SVG and DXF of which a machine cuts nothing', () => {
    for (const sheet of cardSheets(plan)) {
      expect(svgOf(sheet)).not.toMatch(/NaN|Infinity|undefined/);
      const made = dxfOf(sheet);
      if (!('dxf' in made)) throw new Error(JSON.stringify(made.findings));
      const { entities } = new DxfParser().parseSync(made.dxf) as unknown as {
        entities: { layer: string; type: string }[];
      };
      expect(entities.filter(({ layer }) => layer.startsWith('CUT'))).toEqual([]);
      expect(entities.filter(({ layer, type }) => layer === 'MARK_BY_HAND' && type === 'LWPOLYLINE')).toHaveLength(
        sheet.apart!.length,
      );
    }
  });
});

/** How high a chamber as published reaches, or how low, at a place of its long lines; undefined where it is rounded. */
function longLineAt({ contour }: Chamber, side: 'upper' | 'lower'): (s: number) => number | undefined {
  const arcs = contour.flatMap((v, i): Spot[] => (v.bulge ? [[v.x, contour[(i + 1) % contour.length]!.x]] : []));
  const points = pointsAlong(contour, true);
  return (s) => {
    if (arcs.some(([a, b]) => Math.min(a, b) <= s && s <= Math.max(a, b))) return undefined;
    const heights = points.slice(1).flatMap((b, i) => {
      const a = points[i]!;
      return a[0] < s === b[0] < s ? [] : [a[1] + ((s - a[0]) / (b[0] - a[0])) * (b[1] - a[1])];
    });
    return heights.length === 0 ? undefined : side === 'upper' ? Math.max(...heights) : Math.min(...heights);
  };
}

const straightThrough = (points: readonly Spot[]): Spot[] =>
  points.slice(1).flatMap((b, i) =>
    Array.from({ length: 40 }, (_, k): Spot => {
      const [a, t] = [points[i]!, k / 39];
      return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    }),
  );

/** A batten bent through three marks: the natural cubic spline, as `curveNatural` of d3-shape draws it. */
function battenThrough(points: readonly Spot[]): Spot[] {
  const beziers: Spot[][] = [];
  let at: Spot = [0, 0];
  const path = {
    moveTo: (x: number, y: number) => void (at = [x, y]),
    lineTo: (x: number, y: number) => void (at = [x, y]),
    bezierCurveTo(a: number, b: number, c: number, d: number, x: number, y: number) {
      beziers.push([at, [a, b], [c, d], [x, y]]);
      at = [x, y];
    },
    closePath: () => undefined,
  };
  through<Spot>()
    .curve(curveNatural)
    .context(path as unknown as CanvasRenderingContext2D)([...points]);
  return beziers.flatMap((corners) =>
    Array.from({ length: 20 }, (_, i): Spot => {
      const t = i / 19;
      const weights = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
      return [0, 1].map((axis) =>
        corners.reduce((sum, corner, k) => sum + weights[k]! * corner[axis]!, 0),
      ) as unknown as Spot;
    }),
  );
}

function lengthOf(said: string): number {
  const inches = /^(?:(\d+) ?)?(?:(\d+)\/(\d+))? in$/.exec(said);
  if (!inches) return parseFloat(said);
  return 25.4 * (Number(inches[1] ?? 0) + Number(inches[2] ?? 0) / Number(inches[3] ?? 1));
}
