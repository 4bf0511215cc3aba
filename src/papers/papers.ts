import type { Block } from '../block/block.js';
import { USUAL_GLASS } from '../job/usual-glass.js';
import { once } from '../kept/once.js';
import type { Plan } from '../plan.js';
import { blockSheets } from '../sheet/blocks/blockSheet.js';
import { cardSheets } from '../sheet/cards/cardSheets.js';
import { cardTables } from '../sheet/cards/cardTables.js';
import { cautionSheet } from '../sheet/cautions.js';
import { cover } from '../sheet/cover.js';
import { cutPages, cutTables } from '../sheet/cutting/cutPages.js';
import { cuttingOnce } from '../sheet/cutting/cuttingOnce.js';
import { dotsSheet, dottedJoints, sheetJoints } from '../sheet/dots/dotsSheet.js';
import { dotsTable } from '../sheet/dots/dotsTable.js';
import type { Drawing } from '../sheet/drawing.js';
import { faceName, faceSheet } from '../sheet/face/faceSheet.js';
import { gluingPages } from '../sheet/blocks/gluingPages.js';
import { guideSheets } from '../sheet/guides/guideSheet.js';
import { guideCurve, guideSettings } from '../sheet/guides/guideTables.js';
import { labels } from '../sheet/blocks/labels.js';
import { faceViews } from '../sheet/face/faceViews.js';
import { sheetRows } from '../sheet/mirror.js';
import { choosePapers } from './choose.js';
import { isRead } from './files.js';
import type { Paper, SortedPapers } from './paper.js';
import type { DocumentPage, FigurePage, LabelStock, PageSize, PaperSet } from '../sheet/pages.js';
import { planParts, planView } from '../sheet/plan/planView.js';
import { poleTable, storyPole } from '../sheet/face/pole.js';
import { setUpTable } from '../sheet/face/routerTable.js';
import { sectionSheets } from '../sheet/section/sectionSheet.js';
import { clothSheets } from '../sheet/finish/clothSheets.js';
import { finishPages } from '../sheet/finish/finishPages.js';
import { paperOrder } from '../book/phases.js';
import type { Progress } from '../book/standing.js';
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

export interface PaperOptions {
  readonly labelStock: LabelStock;
  /** What the code on a block's label says; its number where absent. */
  readonly labelCode?: (block: Block) => string;
  /** What was done so far, ticked on the tracking list. */
  readonly done?: Done;
  /** What of the work is done, ticked in the build book. */
  readonly progress?: Progress;
  /** What of the weight report takes plans of its own to find. */
  readonly weights?: WeightFindings;
  /** What every page carries instead of the stamp of its full-size sheets. */
  readonly revision?: string;
  /** What lists and notes are printed on; A4 or Letter, whichever goes with the job's units, where absent. */
  readonly page?: PageSize;
  /** The one phase that the build book is to hold. */
  readonly phase?: string;
}

/** What a board without dotted joints, or without chambers, has nothing to say on. */
const NEEDS_DOTS: readonly PaperKind[] = ['dots', 'dots-full', 'closing'];
const NEEDS_STOCK: readonly PaperKind[] = ['stock', 'profiles'];
const NEEDS_FIN: readonly PaperKind[] = ['fin'];
const NEEDS_CLOTH: readonly PaperKind[] = ['cloth'];
const NEEDS_CHAMBERS: readonly PaperKind[] = [
  'cards',
  'router',
  'guides',
  'walls',
  'blocks',
  'cutting',
  'fences',
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
    ...(hasCloth(plan) ? [] : NEEDS_CLOTH),
  ];
  const there = everyPaper(plan, options).filter(({ kind }) => !without.includes(kind));
  return there.sort((a, b) => paperOrder.indexOf(a.kind) - paperOrder.indexOf(b.kind));
}

/** A new paper takes its place here with one line; in which order they come is said by the phases of the work. */
function everyPaper(plan: Plan, options: PaperOptions): Paper[] {
  const rows = sheetRows(plan);
  const full = fullSizeOf(plan);
  const goes = 'to print';
  const goesToLookAt = 'to look at';
  const goesOnRequest = 'on request';
  const none = () => [];
  const withStock = plan.stock ? goes : goesOnRequest;
  return [
    { name: 'cover', kind: 'cover', goes, pages: (wholeSet) => [coverOf(plan, wholeSet, options)] },
    { name: 'check', kind: 'check', goes, pages: () => [{ kind: 'check', title: WORDS.checkTitle }] },
    { name: 'contents', kind: 'contents', goes, pages: () => [{ kind: 'contents', title: WORDS.contentsTitle }] },
    { name: 'map', kind: 'map', goes, pages: () => [{ kind: 'map', title: WORDS.mapTitle }] },
    { name: 'book', kind: 'book', goes, pages: (wholeSet) => bookOf(plan, wholeSet, options) },
    { name: 'cautions', kind: 'cautions', goes, pages: () => [cautionSheet()] },
    { name: 'plan', kind: 'plan', goes: goesToLookAt, pages: () => [planView(plan), ...planParts(plan)].map(figure) },
    { name: 'stock', kind: 'stock', goes, pages: () => stockPages(plan) },
    { name: 'profiles', kind: 'profiles', goes, fullSize: full.profiles, pages: none },
    { name: 'glue-up', kind: 'glueUp', goes, pages: () => glueUpPages(plan) },
    { name: 'templates', kind: 'templates', goes: withStock, fullSize: full.templates, pages: none },
    { name: 'pole', kind: 'pole', goes, fullSize: full.pole, pages: none },
    { name: 'tape', kind: 'tape', goes: goesOnRequest, pages: () => [poleTable(plan)] },
    { name: 'dots', kind: 'dots', goes, pages: () => [dotsTable(plan)] },
    { name: 'dots-full', kind: 'dots-full', goes: goesOnRequest, fullSize: full['dots-full'], pages: none },
    ...faceViews(plan).map((seen, i): Paper => ({
      name: faceName(seen.row),
      ...(seen.row.mirror && { also: faceName({ ...seen.row, row: seen.row.mirror }) }),
      kind: 'face',
      goes,
      fullSize: () => [full.face!()[i]!],
      pages: none,
    })),
    {
      name: 'cards',
      kind: 'cards',
      goes: goesOnRequest,
      fullSize: () => cardSheets(plan),
      pages: () => cardTables(plan),
    },
    { name: 'router', kind: 'router', goes, pages: () => [setUpTable(plan)] },
    // A guide for every chamber is a hundred sheets: for those who rout that way.
    {
      name: 'guides',
      kind: 'guides',
      goes: sharesGuides(plan) ? goes : goesOnRequest,
      fullSize: full.guides,
      pages: () => [guideSettings(plan), ...(sharesGuides(plan) ? [guideCurve(plan)] : [])],
    },
    {
      name: 'walls',
      kind: 'walls',
      goes: goesToLookAt,
      pages: () => [...rows.map((each) => wallChart(plan, each)), ...wallMap(plan)].map(figure),
    },
    { name: 'sections', kind: 'sections', goes: goesToLookAt, pages: () => sectionSheets(plan).map(figure) },
    { name: 'weights', kind: 'weights', goes: goesToLookAt, pages: () => weightPages(plan, options.weights) },
    { name: 'cutting', kind: 'cutting', goes, pages: () => cutPages(plan, cuttingOnce(plan), options.page) },
    { name: 'fences', kind: 'fences', goes: goesOnRequest, pages: () => cutTables(plan, cuttingOnce(plan)) },
    { name: 'labels', kind: 'labels', goes, pages: () => [labels(plan, options.labelStock, options.labelCode)] },
    { name: 'tracking', kind: 'tracking', goes, pages: () => [trackingList(plan, options.done)] },
    { name: 'blocks', kind: 'blocks', goes, fullSize: full.blocks, pages: none },
    { name: 'gluing', kind: 'gluing', goes, pages: () => gluingPages(plan, cuttingOnce(plan)) },
    { name: 'closing', kind: 'closing', goes, pages: () => [closingPage(plan)] },
    { name: 'finish', kind: 'finish', goes, pages: () => finishPages(plan) },
    { name: 'cloth', kind: 'cloth', goes: goesOnRequest, fullSize: () => clothSheets(plan), pages: none },
    { name: 'fin', kind: 'fin', goes, fullSize: full.fin, pages: () => finPages(plan) },
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
    'dots-full': later(() => sheetJoints(plan).map((at) => dotsSheet(plan, at))),
    profiles: later(() => profileSheets(plan)),
    templates: later(() => templateSheets(plan)),
    pole: later(() => [storyPole(plan)]),
    face: later(() => faceViews(plan).map((seen) => faceSheet(seen.plan, seen.row))),
    guides: later(() => guideSheets(plan)),
    blocks: later(() => blockSheets(plan)),
    fin: later(() => finSheets(plan)),
  };
});

/** Some of a job's papers as pages, in the set's order. */
export function paperSet(
  plan: Plan,
  options: PaperOptions,
  papers: readonly Paper[],
  wholeSet: SortedPapers = choosePapers(papersOf(plan, options)),
): PaperSet {
  return {
    mark: { job: plan.job.name, revision: options.revision ?? revisionOf(plan) },
    pages: pagesOf(papers, wholeSet, plan),
  };
}

/**
 * The pages of papers, each saying what it is for; full-size sheets of one kind as one document, in the place of the
 * first of them.
 */
function pagesOf(papers: readonly Paper[], wholeSet: SortedPapers, plan: Plan): DocumentPage[] {
  return papers.flatMap(({ kind, fullSize, pages }, i): DocumentPage[] => {
    const isFirst = papers.findIndex((other) => other.kind === kind) === i;
    const drawings =
      fullSize && isFirst ? papers.flatMap((other) => (other.kind === kind ? other.fullSize!() : [])) : [];
    const title = drawings.length === 1 ? drawings[0]!.title : kindName(kind);
    const sheets: DocumentPage[] = drawings.length > 0 ? [{ kind: 'tiled', title, drawings }] : [];
    return [...sheets, ...pages(wholeSet)].map((page) => ({ ...page, of: kind, use: useOf(kind, page.kind, plan) }));
  });
}

/** What is cut or marked from at true size of some papers, for SVG and DXF. */
export const drawingsOf = (papers: readonly Paper[]): readonly Drawing[] =>
  papers.flatMap(({ fullSize }) => fullSize?.() ?? []);

/**
 * What every page carries where no revision was given: the stamp of all that the full-size sheets show, those that are
 * made on request among them; guides only where they are shared, templates where stock is listed.
 */
export function revisionOf(plan: Plan): string {
  const { guides, templates, ...others } = fullSizeOf(plan);
  const drawn = [
    ...Object.values(others),
    ...(sharesGuides(plan) ? [guides!] : []),
    ...(plan.stock ? [templates!] : []),
  ];
  return stampOf(drawn.flatMap((drawings) => drawings()));
}

function coverOf(plan: Plan, wholeSet: SortedPapers, options: PaperOptions): DocumentPage {
  const stamp = revisionOf(plan);
  const sheets = (kind: PaperKind, of: Plan) => fullSizeOf(of)[kind]?.() ?? [];
  const kindsOf = (papers: readonly Paper[]) => [...new Set(papers.map(({ kind }) => kind))];
  const [asked, shown] = [kindsOf(wholeSet.toPrint), kindsOf(wholeSet.toLookAt)];
  const [read, printed] = [asked.filter(isRead), asked.filter((kind) => !isRead(kind))];
  const others = kindsOf(wholeSet.leftOut).filter((kind) => !asked.includes(kind) && !shown.includes(kind));
  return cover(plan, usesOnCover(plan, { printed, read, shown, others }, options.revision ?? stamp, stamp, sheets));
}

function bookOf(plan: Plan, wholeSet: SortedPapers, { phase, progress }: PaperOptions): readonly DocumentPage[] {
  const isAmong = (papers: readonly Paper[], wanted: string) => papers.some(({ kind }) => kind === wanted);
  const called = (kind: PaperKind) => {
    const where = (['toPrint', 'toLookAt', 'leftOut'] as const).find((part) => isAmong(wholeSet[part], kind));
    return where && { name: kindName(kind), where };
  };
  return bookPages(plan, called, progress, phase);
}

function hasCloth({ job: { glass = USUAL_GLASS } }: Plan): boolean {
  return glass.deck.length + glass.bottom.length > 0;
}

const sharesGuides = ({ routing }: Plan): boolean => routing.guides.length > 0;

function figure(drawing: Drawing): FigurePage {
  // The notes stand under the figure; the title block need not repeat them.
  return { kind: 'figure', title: drawing.title, drawing: { ...drawing, notes: [] }, notes: drawing.notes };
}
