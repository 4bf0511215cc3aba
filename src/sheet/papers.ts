import type { Block } from '../block/block.js';
import type { Plan } from '../plan.js';
import { blockSheet } from './blockSheet.js';
import { cautionSheet } from './cautions.js';
import { cover } from './cover.js';
import { cutPages } from './cutPages.js';
import { cuttingOnce } from './cuttingOnce.js';
import { dotsSheet, sheetJoints } from './dotsSheet.js';
import { dotsTable } from './dotsTable.js';
import type { Drawing } from './drawing.js';
import { faceName, faceSheet } from './faceSheet.js';
import { gluingPages } from './gluingPages.js';
import { guideSheets } from './guideSheet.js';
import { guideCurve, guideSettings } from './guideTables.js';
import { labels } from './labels.js';
import { markingTable } from './markingTable.js';
import { seenFromFar } from './farSide.js';
import { sheetRows, type MirroredRow } from './mirror.js';
import type { DocumentPage, FigurePage, LabelStock, PaperSet, TiledPage } from './pages.js';
import { planParts, planView } from './planView.js';
import { poleTable, storyPole } from './pole.js';
import { setUpTable } from './routerTable.js';
import { sectionSheets } from './sectionSheet.js';
import { trackingList, type Done } from './trackingList.js';
import { wallChart } from './wallChart.js';
import { wallMap } from './wallMap.js';
import { weightPages, type WeightFindings } from './weightsPages.js';
import { WORDS } from './words.js';

/** One kind of paper of the set; its pages are made when they are asked for. */
export interface Paper {
  /** What a builder calls it by to print it alone: `pole`, `face-R2`. */
  readonly name: string;
  readonly pages: () => readonly DocumentPage[];
  /** Left out unless it is asked for by name. */
  readonly onRequest?: boolean;
}

export interface PaperOptions {
  readonly labelStock: LabelStock;
  /** What the code on a block's label says; its number where absent. */
  readonly labelCode?: (block: Block) => string;
  /** What was done so far, ticked on the tracking list. */
  readonly done?: Done;
  /** What of the weight report takes plans of its own to find. */
  readonly weights?: WeightFindings;
  readonly revision?: string;
}

/** All papers of a job in the order in which they are printed. A new kind takes its place here with one line. */
export function papersOf(plan: Plan, options: PaperOptions): Paper[] {
  const rows = sheetRows(plan);
  return [
    { name: 'cover', pages: () => [cover(plan)] },
    { name: 'check', pages: () => [{ kind: 'check', title: WORDS.checkTitle }] },
    { name: 'contents', pages: () => [{ kind: 'contents', title: WORDS.contentsTitle }] },
    { name: 'map', pages: () => [{ kind: 'map', title: WORDS.mapTitle }] },
    { name: 'plan', pages: () => [planView(plan), ...planParts(plan)].map(figure) },
    { name: 'dots', pages: () => [...sheetJoints(plan).map((at) => fullSize(dotsSheet(plan, at))), dotsTable(plan)] },
    { name: 'pole', pages: () => [fullSize(storyPole(plan)), poleTable(plan)] },
    ...faceViews(plan).map((seen): Paper => ({
      name: faceName(seen.row),
      pages: () => [fullSize(faceSheet(seen.plan, seen.row)), markingTable(seen.plan, seen.row)],
    })),
    { name: 'router', pages: () => [setUpTable(plan)] },
    // A guide for every chamber is a hundred sheets: for those who rout that way.
    { name: 'guides', pages: () => guidePages(plan), onRequest: plan.routing.guides.length === 0 },
    { name: 'walls', pages: () => [...rows.map((each) => wallChart(plan, each)), ...wallMap(plan)].map(figure) },
    { name: 'sections', pages: () => sectionSheets(plan).map(figure) },
    { name: 'weights', pages: () => weightPages(plan, options.weights) },
    { name: 'blocks', pages: () => [{ kind: 'tiled', title: WORDS.blocksTitle, drawings: blockDrawings(plan) }] },
    { name: 'cutting', pages: () => cutPages(plan, cuttingOnce(plan)) },
    { name: 'labels', pages: () => [labels(plan, options.labelStock, options.labelCode)] },
    { name: 'tracking', pages: () => [trackingList(plan, options.done)] },
    { name: 'gluing', pages: () => gluingPages(plan, cuttingOnce(plan)) },
    { name: 'cautions', pages: () => [cautionSheet()] },
  ];
}

/**
 * The whole set, or the papers that are asked for by name, in the set's order. Names that no paper has come back as `unknown`, and then
 * the set has no pages.
 */
export function paperSet(
  plan: Plan,
  options: PaperOptions,
  only?: readonly string[],
): { readonly set: PaperSet; readonly unknown: readonly string[] } {
  const papers = papersOf(plan, options);
  const unknown = (only ?? []).filter((name) => !papers.some((paper) => paper.name === name));
  const wanted =
    unknown.length > 0 ? [] : papers.filter(({ name, onRequest }) => (only ? only.includes(name) : !onRequest));
  return {
    set: {
      mark: { job: plan.job.name, ...(options.revision !== undefined && { revision: options.revision }) },
      pages: together(wanted.flatMap(({ pages }) => pages())),
    },
    unknown,
  };
}

/** Full-size sheets that may lie beside each other on one run of pages, by what their names begin with, and what the run is called. */
const RUNS = [
  ['dots-', WORDS.dotsTitle],
  ['face-', WORDS.facesTitle],
] as const;

/** Sheets of one kind as one document, in the place of the first: the print stage lays them on shared runs of pages where they fit. */
function together(pages: readonly DocumentPage[]): readonly DocumentPage[] {
  let all = pages;
  for (const [begin, title] of RUNS) {
    const isOfRun = (page: DocumentPage): page is TiledPage =>
      page.kind === 'tiled' && page.drawings.every(({ id }) => id.startsWith(begin));
    const run = all.filter(isOfRun);
    if (run.length < 2) continue;
    const whole: TiledPage = { kind: 'tiled', title, drawings: run.flatMap(({ drawings }) => drawings) };
    all = all.flatMap((page): DocumentPage[] => (page === run[0] ? [whole] : isOfRun(page) ? [] : [page]));
  }
  return all;
}

/** Every drawing that is cut or marked from at true size, for SVG and DXF: dots, faces, blocks and shared guides. */
export function fullSizeDrawings(plan: Plan): Drawing[] {
  return [
    ...sheetJoints(plan).map((at) => dotsSheet(plan, at)),
    ...faceViews(plan).map((seen) => faceSheet(seen.plan, seen.row)),
    ...blockDrawings(plan),
    ...(plan.routing.guides.length > 0 ? guideSheets(plan) : []),
  ];
}

/** Every face that chambers are marked on: each row's own, and its far one where it is routed from both. */
function faceViews(plan: Plan): { plan: Plan; row: MirroredRow }[] {
  return sheetRows(plan).flatMap((row) => {
    const far = seenFromFar(plan, row);
    return [{ plan, row }, ...(far ? [far] : [])];
  });
}

function blockDrawings(plan: Plan): Drawing[] {
  return sheetRows(plan).map((each) => blockSheet(plan, each));
}

function guidePages(plan: Plan): DocumentPage[] {
  return [
    { kind: 'tiled', title: WORDS.guides.title, drawings: guideSheets(plan) },
    guideSettings(plan),
    ...(plan.routing.guides.length > 0 ? [guideCurve(plan)] : []),
  ];
}

function fullSize(drawing: Drawing): DocumentPage {
  return { kind: 'tiled', title: drawing.title, drawings: [drawing] };
}

function figure(drawing: Drawing): FigurePage {
  // The notes stand under the figure; the title block need not repeat them.
  return { kind: 'figure', title: drawing.title, drawing: { ...drawing, notes: [] }, notes: drawing.notes };
}
