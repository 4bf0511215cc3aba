import words from '../../../templates/measuring.json' with { type: 'json' };
import { meantAt, stationsOf, type StationMeant } from '../../book/stations.js';
import type { Finding } from '../../finding/finding.js';
import { writtenLength } from '../../job/edit/written.js';
import { STAGES, type Stage } from '../../job/spec/stage.js';
import { parseLength, printLength } from '../../length/length.js';
import { printWeight } from '../../length/weight.js';
import type { Measure } from '../../measured/measure.js';
import type { Plan } from '../../plan.js';
import { say } from '../../words/say.js';

/** One thing to be measured. */
export interface Question {
  /** What is asked; `now` is what the job says there so far. */
  readonly prompt: (now: string) => string;
  readonly measure: (typed: string) => Measure;
  /** What a bare number is in. */
  readonly unit: string;
  /** What it is meant to be, mm; absent where the job's own reader knows better. */
  readonly meant?: number;
}

const A = words.ask;

/** What is asked at the stations of a board, one after the other. A board that was scanned has none. */
export function stationQuestions(plan: Plan): Question[] {
  return plan.job.board.scan ? [] : stationsOf(plan).flatMap((meant) => atStation(plan, meant));
}

/** What is asked of a place, a chamber or a stage that was named; or why nothing can be. */
export function questionsOf(plan: Plan, typed: string): readonly Question[] | Omit<Finding, 'where'> {
  const { units, board } = plan.job;
  const stage = STAGES.find((name) => name === typed.toLowerCase());
  if (stage) return [weightQuestion(plan, stage)];
  const chambers = (plan.drawn ?? plan).chambers;
  const chamber = chambers.find(({ id }) => id.toLowerCase() === typed.toLowerCase());
  if (chamber) {
    const walls = (['deck', 'bottom', 'rail'] as const).filter((wall) => Number.isFinite(chamber.wall[wall]));
    return walls.map((wall): Question => ({
      unit: units,
      prompt: (now) => say(A.wall, { chamber: chamber.id, wall, meant: printLength(chamber.wall[wall], units), now }),
      measure: (written) => ({
        list: 'shaped',
        item: [
          ['chamber', chamber.id],
          [wall, written],
        ],
      }),
    }));
  }
  const along = parseLength(typed, units);
  if (!along.ok) {
    const { what, remedy } = A.unclear;
    const near = chambers.find(({ id }) => id.toLowerCase().startsWith(typed.toLowerCase())) ?? chambers[0];
    const like = { place: placeLike(plan), chamber: near?.id ?? '-', stages: STAGES.join(', ') };
    return { what: say(what, { typed }), remedy: say(remedy, like) };
  }
  const x = along.value;
  const meant = x > 0 && x < board.length ? meantAt(plan, x) : undefined;
  if (meant) return atStation(plan, meant);
  const { what, remedy } = A.off;
  return {
    what: say(what, { place: printLength(x, units) }),
    remedy: say(remedy, { length: printLength(board.length, units, 'feet') }),
  };
}

/** What may be named beside the stations. */
export function askMore(plan: Plan): string {
  const chamber = (plan.drawn ?? plan).chambers[0]?.id;
  const rest = { place: placeLike(plan), stages: STAGES.join(', ') };
  return chamber === undefined ? say(A.moreBare, rest) : say(A.more, { chamber, ...rest });
}

/** A place along the board by way of example. */
function placeLike({ job: { board, units } }: Plan): string {
  return units === 'mm' ? `${Math.round(board.length / 20) * 10} mm` : `${Math.round(board.length / 50.8)} in`;
}

function atStation({ job: { units } }: Plan, { x, thickness, side, right, left, width }: StationMeant): Question[] {
  const at = writtenLength(x, units, 'mm');
  const off = writtenLength(side, units, 'mm');
  const one = (prompt: string, meant: number, keys: Measure['item'], key: string): Question => ({
    unit: units,
    prompt: (now) => say(prompt, { at, side: off, meant: printLength(meant, units), now }),
    measure: (written) => ({ list: 'shaped', item: [['at', at], ...keys, [key, written]] }),
    meant,
  });
  return [
    one(A.middle, thickness, [], 'thickness'),
    one(A.right, right, [['side', off]], 'thickness'),
    one(A.left, left, [['side', `-${off}`]], 'thickness'),
    one(A.width, width, [], 'width'),
  ];
}

function weightQuestion({ weights, job: { units } }: Plan, stage: Stage): Question {
  const foreseen = weights.stages.find((each) => each.stage === stage)?.foreseen.weight;
  const meant = foreseen === undefined ? '-' : printWeight(foreseen, units);
  return {
    unit: units === 'mm' ? 'kg' : 'lb',
    prompt: (now) => say(A.weight, { stage, meant, now }),
    measure: (written) => ({
      list: 'weighings',
      item: [
        ['stage', stage],
        ['weight', written],
      ],
    }),
  };
}
