import { settled } from '../../src/print/trace/settle.js';
import sheets from '../../templates/sheets.json' with { type: 'json' };
import cutting from '../../templates/cutting.json' with { type: 'json' };
import guides from '../../templates/guides.json' with { type: 'json' };
import { sawnFrom } from '../../src/block/sawn.js';
import { stretchOf } from '../../src/chamber/stretch.js';
import { reportOf } from '../../src/cli/report.js';
import { parseLength } from '../../src/length/length.js';
import type { Plan } from '../../src/plan.js';
import { papersOf } from '../../src/papers/papers.js';
import { labelStocks } from '../../src/print/paper/labelStock.js';
import { cuttingOnce } from '../../src/sheet/cutting/cuttingOnce.js';
import { blockRows } from '../../src/sheet/cutting/cutRows.js';
import type { Drawing, TextShape } from '../../src/sheet/drawing.js';
import type { Cell, DocumentPage, TablePage } from '../../src/sheet/pages.js';
import { routingRows } from '../../src/sheet/face/routerTable.js';
import { trackingRows } from '../../src/sheet/blocks/trackingList.js';
import { setOf } from '../papers/wholeSet.js';

/** What is said of one chamber or its block in one place: `said` as it stands there, read back as mm. */
export interface Said {
  readonly chamber: string;
  /**
   * `depth` – from each face it is routed from; `whole` – of the chamber; sizes of the block, and of the blank it is
   * sawn from; the ends along the face; walls.
   */
  readonly fact:
    | 'depth'
    | 'whole'
    | 'length'
    | 'height'
    | 'sawnLength'
    | 'sawnHeight'
    | 'thick'
    | 'noseEnd'
    | 'tailEnd'
    | 'deck'
    | 'bottom'
    | 'rail';
  readonly said: string;
  readonly mm: number;
  readonly where: string;
}

/** Everything that papers, lists and the report of a plan say of its chambers' depths, ends, sizes and walls. */
export function saidBy(plan: Plan): Said[] {
  const { pages } = setOf(plan, { with: papersOf(plan, { labelStock: labelStocks[0]! }).map(({ name }) => name) });
  return [
    ...pages.flatMap((page) => onPage(page, plan)),
    ...inReport(plan),
    ...inList('tracking.csv', trackingRows(plan), plan, {
      [`${sheets.tracking.columns.length} mm`]: 'sawnLength',
      [`${sheets.tracking.columns.height} mm`]: 'sawnHeight',
      [`${sheets.tracking.columns.thickness} mm`]: 'thick',
      [sheets.tracking.columns.length]: 'sawnLength',
      [sheets.tracking.columns.height]: 'sawnHeight',
      [sheets.tracking.columns.thickness]: 'thick',
    }),
    ...inList('blocks.csv', blockRows(plan, cuttingOnce(plan)), plan, {
      'length mm': 'length',
      'height mm': 'height',
      'thick mm': 'thick',
      'sawn length mm': 'sawnLength',
      'sawn height mm': 'sawnHeight',
    }),
    ...inList('routing.csv', routingRows(plan), plan, { 'depth mm': 'depth', depth: 'depth' }),
  ];
}

const LENGTH = /(?:\d+ )?\d+(?:\/\d+)?(?:\.\d+)? (?:mm|in)/;
const DEEP = /\b(?:deep|through|half way)\b/;

function onPage(page: DocumentPage, plan: Plan): Said[] {
  switch (page.kind) {
    case 'table':
      return onTable(page, plan);
    case 'labels':
      return page.labels.flatMap(({ number, lines }) => {
        const [, ...sizes] = /^saw (.+) × (.+), thick (.+)$/.exec(lines[0]!.replaceAll('\u00a0', ' '))!;
        const facts = ['sawnLength', 'sawnHeight', 'thick'] as const;
        return facts.flatMap((fact, i) => said(number, fact, sizes[i]!, page.title, plan));
      });
    case 'tiled':
      return page.drawings.flatMap((drawing) => (drawing.id.startsWith('face-') ? onFace(drawing, plan) : []));
    default:
      return [];
  }
}

/**
 * On a face the depth stands with its chamber's number, or is the nearest to it; in a narrow chamber it takes two
 * lines.
 */
function onFace(drawing: Drawing, plan: Plan): Said[] {
  const { id, shapes } = settled(drawing);
  const texts = shapes.filter((shape): shape is TextShape => shape.kind === 'text');
  const saysDeep = ({ text }: TextShape) => DEEP.test(text) && text.length < 80;
  const isNextLine = (a: TextShape, b: TextShape) =>
    a.height === b.height && Math.hypot(a.x - b.x, a.y - b.y) < 2 * a.height;
  const depths = texts.filter(
    (each) => LENGTH.test(each.text) && (saysDeep(each) || texts.some((one) => saysDeep(one) && isNextLine(one, each))),
  );
  return plan.chambers.flatMap(({ id: chamber }) =>
    texts
      .filter(({ text }) => text.split(/\s+/).includes(chamber))
      .flatMap((at) => {
        const away = ({ x, y }: TextShape) => Math.hypot(x - at.x, y - at.y);
        const its = depths.reduce((a, b) => (away(b) < away(a) ? b : a), depths[0]!);
        return said(chamber, 'depth', its.text, id, plan);
      }),
  );
}

/** What the columns of each table say, by their titles in the templates. */
function onTable(page: TablePage, plan: Plan): Said[] {
  const ids = new Set(plan.chambers.map(({ id }) => id));
  const isOf = (title: string) => page.title.startsWith(title.split('{')[0]!);
  const facts: Record<string, Said['fact']> = isOf(sheets.marking.title)
    ? {
        [sheets.marking.columns.from]: 'noseEnd',
        [sheets.marking.columns.to]: 'tailEnd',
        [sheets.marking.columns.deep]: 'depth',
      }
    : isOf(sheets.tracking.title)
      ? {
          [sheets.tracking.columns.length]: 'sawnLength',
          [sheets.tracking.columns.height]: 'sawnHeight',
          [sheets.tracking.columns.thickness]: 'thick',
        }
      : isOf(cutting.making.title)
        ? { [cutting.making.columns.thick]: 'thick' }
        : isOf(cutting.sizes.title)
          ? { length: 'sawnLength', height: 'sawnHeight', thick: 'thick' }
          : isOf(guides.settings.title)
            ? { [guides.settings.columns.deep]: 'depth' }
            : isOf(guides.setUp.title)
              ? { [guides.setUp.columns.deep]: 'depth' }
              : {};
  return page.rows.flatMap((row) => {
    if (row.kind === 'heading') return [];
    const its = row.cells.flatMap((cell) =>
      typeof cell === 'string' ? cell.split(/[,\s]+/).filter((word) => ids.has(word)) : [],
    );
    return page.columns.flatMap(({ title }, i) => {
      const fact = facts[title];
      const cell = row.cells[i]!;
      const words = typeof cell === 'object' ? cell.text : String(cell);
      return fact && words !== '' ? its.flatMap((id) => said(id, fact, words, page.title, plan)) : [];
    });
  });
}

function inList(
  where: string,
  [header, ...rows]: readonly (readonly Cell[])[],
  plan: Plan,
  facts: Record<string, Said['fact']>,
): Said[] {
  return rows.flatMap((cells) =>
    header!.flatMap((title, i) => {
      const fact = facts[String(title)];
      const cell = cells[i]!;
      const words = typeof cell === 'number' ? `${cell} mm` : String(cell);
      return fact ? said(String(cells[0]), fact, words, where, plan) : [];
    }),
  );
}

/** The report's lines: chamber, from nose, length, height, depth, the three walls, litres. */
function inReport(plan: Plan): Said[] {
  return reportOf(plan).flatMap((line) => {
    const cells = line.trim().split(/ {2,}/);
    const facts = [undefined, 'noseEnd', undefined, undefined, 'whole', 'deck', 'bottom', 'rail'] as const;
    if (cells.length !== 9 || !plan.chambers.some(({ id }) => id === cells[0])) return [];
    return facts.flatMap((fact, i) =>
      fact && !cells[i]!.includes('Infinity') ? said(cells[0]!, fact, cells[i]!, 'report', plan) : [],
    );
  });
}

function said(chamber: string, fact: Said['fact'], words: string, where: string, { job }: Plan): Said[] {
  const found = LENGTH.exec(words)?.[0];
  const read = parseLength(found ?? words, job.units);
  if (!read.ok) throw new Error(`${where}: ${chamber} ${fact}: ${words}`);
  return [{ chamber, fact, said: found ?? words, mm: read.value, where }];
}

/** What is said beyond what was proved, and what is said in two ways; none of a sound set of papers. */
export function wrongNumbers(plan: Plan, all: readonly Said[] = saidBy(plan)): string[] {
  const wrong: string[] = [];
  const chambers = new Map(plan.chambers.map((chamber) => [chamber.id, chamber]));
  const blocks = new Map(plan.blocks.map((block) => [block.id, block.made]));
  const cuts = new Map(plan.routing.rows.flatMap((row) => row.chambers.map((each) => [each.chamber, each] as const)));
  const texts = new Map<string, Said>();
  // What floating-point sums leave.
  const none = 2e-4;
  for (const each of all) {
    const { chamber, fact, mm, said: words, where } = each;
    const its = chambers.get(chamber)!;
    const made = blocks.get(chamber)!;
    const sawn = sawnFrom(made.outline);
    const step = sawn.sides ? 0 : plan.job.units === 'mm' ? 1 : 25.4 / 16;
    const { from, to } = stretchOf(its.contour.map(({ x, y }) => [x, y] as const));
    const { cut, from: faces } = cuts.get(chamber)!;
    const most = {
      // Halves that meet overlap within the chamber.
      depth: faces.length > 1 ? its.depth[1] : cut,
      whole: its.depth[1],
      length: made.length,
      height: made.height,
      // A blank has the outline marked on it: it is up to a step of the rule larger, but where the saw alone gives the
      // finished block.
      sawnLength: sawn.length + step,
      sawnHeight: sawn.height + step,
      thick: made.thickness,
      noseEnd: Infinity,
      tailEnd: to,
      ...its.wall,
    }[fact];
    const least = fact === 'noseEnd' ? from : fact === 'depth' && faces.length > 1 ? cut : -Infinity;
    if (mm > most + none) wrong.push(`${where}: ${chamber} ${fact} ${words}, proved ${most}`);
    if (mm < least - none) wrong.push(`${where}: ${chamber} ${fact} ${words}, begins at ${least}`);
    const key = `${chamber} ${fact}`;
    const before = texts.get(key);
    // Lists count the same figure in millimetres.
    if (before && Math.abs(before.mm - mm) > none)
      wrong.push(`${key}: ${before.said} in ${before.where}, ${words} in ${where}`);
    if (!before) texts.set(key, each);
  }
  return wrong;
}
