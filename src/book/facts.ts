import { finishOf, type Coat } from '../finish/finishOf.js';
import { sayBatches } from '../finish/sayBatches.js';
import type { Stage } from '../job/spec/stage.js';
import { USUAL_GLASS } from '../job/usual-glass.js';
import { printArealWeight } from '../length/areal.js';
import { printFine } from '../length/fine.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import { printWeight } from '../length/weight.js';
import type { Plan } from '../plan.js';
import { glueBackGlue, glueUpGlue, jointGlue } from '../view/jointGlue.js';
import { WORDS } from '../words/say.js';
import { closingOf } from './closing.js';

/** What the steps of a phase say of this board, by the names that they have for it. */
export type Facts = Readonly<Record<string, string | number>>;
/** What there is of a board, by the names that phases and steps ask for. */
export type There = Readonly<Record<string, boolean>>;

/** What is found by a search and therefore given: sheets of foam, batches of blocks. */
export interface Found {
  readonly sheets?: string;
  readonly batches: number;
  readonly clamps: number;
  /** g. */
  readonly blockGlue: number;
}

/** What a plan has, so that phases and steps that are about something else are left out. */
export function thereOf({ job, layup, chambers, blocks, fins, routing, stock }: Plan): There {
  const { glass = USUAL_GLASS } = job;
  const has = (of: readonly unknown[] | undefined) => (of?.length ?? 0) > 0;
  const plainFins = (job.fins ?? []).filter(({ build }) => !build);
  const dotted = layup.joints.some(({ kind }) => kind === 'dotted');
  return {
    dotted,
    bonded: layup.joints.some(({ kind }) => kind === 'bonded'),
    wood: layup.members.some(({ kind }) => kind === 'stringer'),
    chambers: has(chambers),
    blocks: has(blocks),
    sheets: has(blocks) && has(job.blocks.stock),
    guides: has(routing.guides),
    stock: stock !== undefined,
    blankStock: stock?.blank !== undefined,
    billets: stock?.billets !== undefined,
    anyFoamStock: stock?.blank !== undefined || stock?.billets !== undefined,
    lumber: stock?.lumber !== undefined,
    fin: has(fins),
    panel: fins.some(({ panel }) => panel !== undefined),
    plainFins: has(plainFins),
    fittings: has(job.fittings),
    toFit: has(job.fins) || has(job.fittings),
    sealer: glass.sealer > 0,
    cloth: has(glass.deck) || has(glass.bottom),
    secondCloth: has(glass.deck) && has(glass.bottom),
    hotCoat: glass.hotCoat > 0,
    coatCloth: glass.hotCoatCloth > 0,
  };
}

/** The numbers of this board. */
export function factsOf(plan: Plan, found: Found): Facts {
  const { board, job, layup, chambers, blocks, fins, asked, weights } = plan;
  const { units, glass = USUAL_GLASS } = job;
  const length = (mm: number) => printLength(mm, units);
  const needed = (mm: number) => printAs('needed', mm, units);
  const weight = (kg: number) => printWeight(kg, units);
  const list = (items: readonly string[]) => items.join(WORDS.joinWith);
  const joints = (kind: 'bonded' | 'dotted') =>
    list(layup.joints.filter((joint) => joint.kind === kind).map(({ id }) => id));
  const names = (kind: 'strip' | 'stringer') =>
    list(layup.members.filter((member) => member.kind === kind).map(({ id }) => id));
  const rows = [...new Set(chambers.map(({ row }) => row))];
  const finish = finishOf(plan);
  const [first, second] = finish.sides;
  const layers = (side = first) => list((side?.layers ?? []).map((cloth) => printArealWeight(cloth, units)));
  const batches = (of: Coat | undefined) => (of ? sayBatches(of, units) : '');
  const at = (stage: Stage) => {
    const { weight: kg, low, high } = weights.stages.find((each) => each.stage === stage)!;
    return `${weight(kg)} (${weight(low)} – ${weight(high)})`;
  };
  return {
    length: printLength(board.length, units, 'feet'),
    width: length(board.width),
    thickness: length(board.thickness),
    strips: layup.members.filter(({ kind }) => kind === 'strip').length,
    stringers: layup.members.filter(({ kind }) => kind === 'stringer').length,
    stripNames: names('strip'),
    stringerNames: names('stringer'),
    bonded: joints('bonded'),
    dotted: joints('dotted'),
    bondedGlue: weight(jointGlue(plan, 'bonded', glueUpGlue) / 1000),
    dottedGlue: weight(jointGlue(plan, 'dotted', glueBackGlue) / 1000),
    dots: plan.glue.dots.length,
    goes: closingOf(plan).goes.length,
    pieces: list(layup.pieces.map(({ id }) => id)),
    rows: rows.length,
    rowNames: list(rows),
    chambers: chambers.length,
    cutter: length(job.chambers.cutterDiameter),
    pass: printAs('depth', job.routing.passDepth, units),
    deckWall: needed(asked.deck),
    bottomWall: needed(asked.bottom),
    railWall: needed(asked.rail),
    routedWeight: weight(weights.routed),
    fill: job.fill.name,
    blocks: blocks.length,
    fillLitres: blocks.reduce((sum, { volume }) => sum + volume, 0).toFixed(1),
    ...(found.sheets !== undefined && { sheets: found.sheets }),
    batches: found.batches,
    clamps: found.clamps,
    blockGlue: weight(found.blockGlue / 1000),
    sealMix: weight(finish.sealer.mix),
    sealBatches: batches(finish.sealer),
    laminateMix: weight(finish.sides.reduce((sum, { mix }) => sum + mix, 0)),
    firstSide: first?.side ?? '',
    firstLayers: layers(first),
    firstBatches: batches(first),
    secondSide: second?.side ?? '',
    secondLayers: layers(second),
    secondBatches: batches(second),
    coatMix: weight(finish.hotCoat.mix),
    coatBatches: batches(finish.hotCoat),
    coatCloth: printArealWeight(glass.hotCoatCloth, units),
    coatLength: needed(finish.coatLength),
    finNames: list(fins.map(({ spec }) => spec.name)),
    panelThick: list(fins.flatMap(({ panel }) => (panel ? [printFine(panel.thickness, units)] : []))),
    finBlankThick: list(fins.map(({ blank }) => printFine(blank.thickness, units))),
    finWeight: list(fins.map((fin) => weight(fin.weight))),
    finPlaces: list(
      fins.flatMap(({ spec, standing }) =>
        standing.map(({ front, back }) => `${spec.name} ${length(front[0])} – ${length(back[0])}`),
      ),
    ),
    toFit: list([...(job.fins ?? []), ...(job.fittings ?? [])].map(({ name }) => name)),
    blankWeight: at('blank'),
    shapedWeight: at('shaped'),
    chamberedWeight: at('chambered'),
    filledWeight: at('filled'),
    sealedWeight: at('sealed'),
    laminatedWeight: at('laminated'),
    hotCoatedWeight: at('hot-coated'),
    fittedWeight: at('fitted'),
    finishedWeight: at('finished'),
  };
}
