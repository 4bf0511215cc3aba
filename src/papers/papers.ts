import type { Block } from '../block/block.js';
import { once } from '../kept/once.js';
import type { Plan } from '../plan.js';
import { blockSheets } from '../sheet/blocks/blockSheet.js';
import { cardSheets } from '../sheet/cards/cardSheets.js';
import { cardTables } from '../sheet/cards/cardTables.js';
import { cautionSheet } from '../sheet/cautions.js';
import { cover } from '../sheet/cover.js';
import { cutPages } from '../sheet/cutting/cutPages.js';
import { cuttingOnce } from '../sheet/cutting/cuttingOnce.js';
import { dotsSheet, dottedJoints, sheetJoints } from '../sheet/dots/dotsSheet.js';
import { dotsTable } from '../sheet/dots/dotsTable.js';
import type { Drawing } from '../sheet/drawing.js';
import { faceName, faceSheet } from '../sheet/face/faceSheet.js';
import { gluingPages } from '../sheet/blocks/gluingPages.js';
import { guideSheets } from '../sheet/guides/guideSheet.js';
import { guideCurve, guideSettings } from '../sheet/guides/guideTables.js';
import { labels } from '../sheet/blocks/labels.js';
import { markingTable } from '../sheet/face/markingTable.js';
import { faceViews } from '../sheet/face/faceViews.js';
import { sheetRows } from '../sheet/mirror.js';
import type { DocumentPage, FigurePage, LabelStock, PaperSet } from '../sheet/pages.js';
import { planParts, planView } from '../sheet/plan/planView.js';
import { poleTable, storyPole } from '../sheet/face/pole.js';
import { setUpTable } from '../sheet/face/routerTable.js';
import { sectionSheets } from '../sheet/section/sectionSheet.js';
import { finishPages } from '../sheet/finish/finishPages.js';
import { paperOrder } from '../book/phases.js';
import { bookPages } from '../sheet/book/bookPages.js';
import { closingPage } from '../sheet/book/closingPage.js';
import { finPages } from '../sheet/fin/finPages.js';
import { finSheets } from '../sheet/fin/finSheets.js';
import { glueUpPages } from '../sheet/stock/glueUpPages.js';
import { profileSheets } from '../sheet/stock/profileSheet.js';
import { stockPages } from '../sheet/stock/stockPages.js';
import { stampOf } from '../sheet/stamp.js';
import { templateSheets } from '../sheet/template/templateSheets.js';
import { trackingList, type Done } from '../sheet/blocks/trackingList.js';
import { kindName, useOf, usesOnCover, type PaperKind } from '../sheet/uses.js';
import { wallChart } from '../sheet/plan/wallChart.js';
import { wallMap } from '../sheet/plan/wallMap.js';
import { weightPages, type WeightFindings } from '../sheet/weights/weightsPages.js';
import { WORDS } from '../words/say.js';

/** One paper of the set; its drawings and pages are made when they are asked for. */
export interface Paper {
  /** What a builder calls it by to print it alone: `pole`, `face-R2`. */
  readonly name: string;
  /** What it is for, and when it is valid: several papers may be of one kind. */
  readonly kind: PaperKind;
  /** What of it is marked or cut from at true size. Papers of one kind share runs of pages where they fit. */
  readonly fullSize?: () => readonly Drawing[];
  /** Its other pages, printed after those at full size. */
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
  /** What every page carries instead of the stamp of its full-size sheets. */
  readonly revision?: string;
  /** The one phase that the build book is to hold. */
  readonly phase?: string;
}

/** What a board without dotted joints, or without chambers, has nothing to say on. */
const NEEDS_DOTS: readonly PaperKind[] = ['dots', 'closing'];
const NEEDS_STOCK: readonly PaperKind[] = ['stock', 'profiles'];
const NEEDS_FIN: readonly PaperKind[] = ['fin'];
const NEEDS_CHAMBERS: readonly PaperKind[] = [
  'cards',
  'router',
  'guides',
  'walls',
  'blocks',
  'cutting',
  'labels',
  'tracking',
  'gluing',
];

/** All papers of a job in the order of the phases that they belong to; none that would be empty. */
export function papersOf(plan: Plan, options: PaperOptions): Paper[] {
  const without = [
    ...(dottedJoints(plan).length > 0 ? [] : NEEDS_DOTS),
    ...(plan.chambers.length > 0 ? [] : NEEDS_CHAMBERS),
    ...(plan.stock ? [] : NEEDS_STOCK),
    ...(plan.fins.length > 0 ? [] : NEEDS_FIN),
  ];
  const there = everyPaper(plan, options).filter(({ kind }) => !without.includes(kind));
  return there.sort((a, b) => paperOrder.indexOf(a.kind) - paperOrder.indexOf(b.kind));
}

/** A new paper takes its place here with one line. */
function everyPaper(plan: Plan, options: PaperOptions): Paper[] {
  const rows = sheetRows(plan);
  const full = fullSizeOf(plan);
  return [
    { name: 'cover', kind: 'cover', pages: () => [coverOf(plan, papersOf(plan, options), options)] },
    { name: 'check', kind: 'check', pages: () => [{ kind: 'check', title: WORDS.checkTitle }] },
    { name: 'contents', kind: 'contents', pages: () => [{ kind: 'contents', title: WORDS.contentsTitle }] },
    { name: 'map', kind: 'map', pages: () => [{ kind: 'map', title: WORDS.mapTitle }] },
    { name: 'book', kind: 'book', pages: () => bookOf(plan, papersOf(plan, options), options.phase) },
    { name: 'plan', kind: 'plan', pages: () => [planView(plan), ...planParts(plan)].map(figure) },
    { name: 'dots', kind: 'dots', fullSize: full.dots, pages: () => [dotsTable(plan)] },
    { name: 'stock', kind: 'stock', pages: () => stockPages(plan) },
    { name: 'profiles', kind: 'profiles', fullSize: full.profiles, pages: () => [] },
    { name: 'glue-up', kind: 'glueUp', pages: () => glueUpPages(plan) },
    { name: 'templates', kind: 'templates', fullSize: full.templates, pages: () => [], onRequest: !plan.stock },
    { name: 'pole', kind: 'pole', fullSize: full.pole, pages: () => [poleTable(plan)] },
    ...faceViews(plan).map((seen, i): Paper => ({
      name: faceName(seen.row),
      kind: 'face',
      fullSize: () => [full.face!()[i]!],
      pages: () => [markingTable(seen.plan, seen.row)],
    })),
    { name: 'cards', kind: 'cards', fullSize: () => cardSheets(plan), pages: () => cardTables(plan), onRequest: true },
    { name: 'router', kind: 'router', pages: () => [setUpTable(plan)] },
    // A guide for every chamber is a hundred sheets: for those who rout that way.
    {
      name: 'guides',
      kind: 'guides',
      fullSize: full.guides,
      pages: () => [guideSettings(plan), ...(sharesGuides(plan) ? [guideCurve(plan)] : [])],
      onRequest: !sharesGuides(plan),
    },
    {
      name: 'walls',
      kind: 'walls',
      pages: () => [...rows.map((each) => wallChart(plan, each)), ...wallMap(plan)].map(figure),
    },
    { name: 'sections', kind: 'sections', pages: () => sectionSheets(plan).map(figure) },
    { name: 'weights', kind: 'weights', pages: () => weightPages(plan, options.weights) },
    { name: 'blocks', kind: 'blocks', fullSize: full.blocks, pages: () => [] },
    { name: 'cutting', kind: 'cutting', pages: () => cutPages(plan, cuttingOnce(plan)) },
    { name: 'labels', kind: 'labels', pages: () => [labels(plan, options.labelStock, options.labelCode)] },
    { name: 'tracking', kind: 'tracking', pages: () => [trackingList(plan, options.done)] },
    { name: 'gluing', kind: 'gluing', pages: () => gluingPages(plan, cuttingOnce(plan)) },
    { name: 'closing', kind: 'closing', pages: () => [closingPage(plan)] },
    { name: 'finish', kind: 'finish', pages: () => finishPages(plan) },
    { name: 'fin', kind: 'fin', fullSize: full.fin, pages: () => finPages(plan) },
    { name: 'cautions', kind: 'cautions', pages: () => [cautionSheet()] },
  ];
}

type FullSize = Readonly<Partial<Record<PaperKind, () => readonly Drawing[]>>>;

/**
 * The full-size sheets of each kind, drawn when they are first asked for, and once: pages, stamp, cover and other files
 * show the same.
 */
const fullSizeOf = once((plan: Plan): FullSize => {
  const later = (draw: () => readonly Drawing[]) => {
    let done: readonly Drawing[] | undefined;
    return () => (done ??= draw());
  };
  return {
    dots: later(() => sheetJoints(plan).map((at) => dotsSheet(plan, at))),
    profiles: later(() => profileSheets(plan)),
    templates: later(() => templateSheets(plan)),
    pole: later(() => [storyPole(plan)]),
    face: later(() => faceViews(plan).map((seen) => faceSheet(seen.plan, seen.row))),
    guides: later(() => guideSheets(plan)),
    blocks: later(() => blockSheets(plan)),
    fin: later(() => finSheets(plan)),
  };
});

/**
 * The whole set, or the papers that are asked for by name, in the set's order. Names that no paper has come back as
 * `unknown`, and then the set has no pages.
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
    set: { mark: { job: plan.job.name, revision: options.revision ?? revisionOf(plan) }, pages: pagesOf(wanted, plan) },
    unknown,
  };
}

/**
 * The pages of papers, each saying what it is for; full-size sheets of one kind as one document, in the place of the
 * first of them.
 */
function pagesOf(papers: readonly Paper[], plan: Plan): DocumentPage[] {
  return papers.flatMap(({ kind, fullSize, pages }, i): DocumentPage[] => {
    const isFirst = papers.findIndex((other) => other.kind === kind) === i;
    const drawings =
      fullSize && isFirst ? papers.flatMap((other) => (other.kind === kind ? other.fullSize!() : [])) : [];
    const title = drawings.length === 1 ? drawings[0]!.title : kindName(kind);
    const sheets: DocumentPage[] = drawings.length > 0 ? [{ kind: 'tiled', title, drawings }] : [];
    return [...sheets, ...pages()].map((page) => ({ ...page, of: kind, use: useOf(kind, page.kind, plan) }));
  });
}

/** Every drawing that is cut or marked from at true size, for SVG and DXF: all that the whole set prints so. */
export function fullSizeDrawings(plan: Plan): Drawing[] {
  const { guides, templates, ...others } = fullSizeOf(plan);
  return [
    ...Object.values(others),
    ...(sharesGuides(plan) ? [guides!] : []),
    ...(plan.stock ? [templates!] : []),
  ].flatMap((drawings) => drawings());
}

/** What every page carries where no revision was given: the stamp of all that the full-size sheets show. */
export function revisionOf(plan: Plan): string {
  return stampOf(fullSizeDrawings(plan));
}

function coverOf(plan: Plan, papers: readonly Paper[], options: PaperOptions): DocumentPage {
  const stamp = revisionOf(plan);
  const kinds = papers.filter(({ onRequest }) => !onRequest).map(({ kind }) => kind);
  const sheets = (kind: PaperKind, of: Plan) => fullSizeOf(of)[kind]?.() ?? [];
  return cover(plan, usesOnCover(plan, [...new Set(kinds)], options.revision ?? stamp, stamp, sheets));
}

function bookOf(plan: Plan, papers: readonly Paper[], phase?: string): readonly DocumentPage[] {
  const called = (kind: string) => {
    const paper = papers.find((each) => each.kind === kind);
    return paper && { name: kindName(paper.kind), onRequest: paper.onRequest ?? false };
  };
  return bookPages(plan, called, phase);
}

const sharesGuides = ({ routing }: Plan): boolean => routing.guides.length > 0;

function figure(drawing: Drawing): FigurePage {
  // The notes stand under the figure; the title block need not repeat them.
  return { kind: 'figure', title: drawing.title, drawing: { ...drawing, notes: [] }, notes: drawing.notes };
}
