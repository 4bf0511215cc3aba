import reasons from '../../templates/notes.json' with { type: 'json' };
import { printDensity } from '../length/density.js';
import { sayFinding } from '../finding/say.js';
import type { Stage } from '../job/spec/stage.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import { printWeight } from '../length/weight.js';
import type { Plan } from '../plan.js';
import { shortCautions } from './cautions.js';
import type { TextBlock, TextPage } from './pages.js';
import { say, WORDS } from '../words/say.js';

/**
 * The first sheet: what board this is, what it is made of, what to print and how, cautions, and what was left solid;
 * `uses` says what each sheet is for.
 */
export function cover(plan: Plan, uses: readonly TextBlock[]): TextPage {
  const { cover: words } = WORDS;
  return {
    kind: 'text',
    title: say(words.title, { job: plan.job.name }),
    blocks: [
      ...doubtful(plan),
      { kind: 'pairs', pairs: boardPairs(plan) },
      { kind: 'heading', text: words.howHeading },
      { kind: 'list', numbered: true, items: words.how },
      shortCautions(),
      ...uses,
      { kind: 'heading', text: words.names.heading },
      { kind: 'pairs', pairs: words.names.pairs.map(([name, what]) => [name!, what!] as const) },
      { kind: 'heading', text: words.piecesHeading },
      { kind: 'pairs', pairs: plan.layup.pieces.map(({ id, members }) => [id, membersOf(members)] as const) },
      { kind: 'heading', text: words.materials },
      { kind: 'pairs', pairs: materialPairs(plan) },
      ...leftSolid(plan),
    ],
  };
}

function boardPairs(plan: Plan): (readonly [string, string])[] {
  const { board, job, layup, chambers, blocks, asked } = plan;
  const { units } = job;
  const { what, ...words } = WORDS.cover;
  const rows = new Set(chambers.map(({ row }) => row)).size;
  const volume = blocks.reduce((sum, block) => sum + block.volume, 0);
  const length = (mm: number) => printLength(mm, units);
  const needed = (mm: number) => printAs('needed', mm, units);
  return [
    [
      what.size,
      say(words.size, {
        length: printLength(board.length, units, 'feet'),
        width: length(board.width),
        thickness: length(board.thickness),
      }),
    ],
    [what.volume, say(words.volume, { litres: board.volume.toFixed(1) })],
    [
      what.pieces,
      say(words.pieces, {
        count: layup.pieces.length,
        pieces: layup.pieces.map(({ id }) => id).join(WORDS.joinWith),
      }),
    ],
    [what.rows, say(words.rows, { chambers: chambers.length, rows })],
    [what.blocks, say(words.blocks, { count: blocks.length, litres: volume.toFixed(1), fill: job.fill.name })],
    [
      what.walls,
      say(words.walls, { deck: needed(asked.deck), bottom: needed(asked.bottom), rail: needed(asked.rail) }),
    ],
    [what.cutter, length(job.chambers.cutterDiameter)],
    [what.weight, weightsInWords(plan)],
  ];
}

/** The likeliest weight at the stages that this tool is about; the weight report has the others, and the bands. */
function weightsInWords({ weights, job }: Plan): string {
  const at = (stage: Stage) => printWeight(weights.stages.find((each) => each.stage === stage)!.weight, job.units);
  return say(WORDS.cover.weight, { shaped: at('shaped'), chambered: at('chambered'), filled: at('filled') });
}

function membersOf(members: Plan['layup']['members']): string {
  return members
    .map(
      ({ id, kind, material, routing }) =>
        `${id} ${WORDS.kind[kind]} ${material.name}${routing === 'solid' ? ` (${WORDS.face.solid})` : ''}`,
    )
    .join(WORDS.joinWith);
}

function materialPairs({ layup, job }: Plan): (readonly [string, string])[] {
  const used = new Map([...layup.members.map(({ material }) => material), job.fill].map((m) => [m.name, m]));
  return [...used.values()].map(({ name, density, source }) => [
    name,
    say(WORDS.cover.material, { density: printDensity(density, job.units), source }),
  ]);
}

/** What looks like a slip, before anything else. */
function doubtful({ doubts }: Plan): TextBlock[] {
  if (doubts.length === 0) return [];
  return [
    { kind: 'heading', text: WORDS.cover.doubtsHeading },
    { kind: 'list', items: doubts.map(sayFinding) },
  ];
}

/** What was left solid, by reason: a builder must not wonder at the saw. */
function leftSolid({ notes }: Plan): TextBlock[] {
  const found = new Map<string, string[]>();
  for (const note of notes) {
    if (note.kind !== 'solid') continue;
    const why = say(reasons.why[note.why], { by: note.by.join(WORDS.joinWith) });
    found.set(why, [...(found.get(why) ?? []), note.where]);
  }
  if (found.size === 0) return [];
  return [
    { kind: 'heading', text: WORDS.cover.solidHeading },
    { kind: 'pairs', pairs: [...found].map(([why, where]) => [why, where.join(WORDS.joinWith)] as const) },
  ];
}
