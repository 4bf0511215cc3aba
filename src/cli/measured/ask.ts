import words from '../../../templates/measuring.json' with { type: 'json' };
import { parseLength, printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import type { NotTaken } from '../../measured/intoJob.js';
import type { Plan } from '../../plan.js';
import { say } from '../../words/say.js';
import type { Collected } from './collected.js';
import { askMore, questionsOf, stationQuestions, type Question } from './questions.js';

const A = words.ask;
/** Further from the drawing than this share of it is more likely a slip than a board. */
const FAR = 0.25;

/** A number without its unit; it goes into the job with the one that it was asked in. */
const BARE = /^[\d\s./½¼¾⅛⅜⅝⅞]+$/;

/** Where questions are asked, and what is wrong with an answer is said. */
export interface Asking {
  readonly ask: (question: string) => Promise<string | undefined>;
  readonly err: (line: string) => void;
}

/** How asking ended: with all that there is, or left for another time. */
export type Ended = 'done' | 'stopped';

/**
 * Asks for what was measured, at the stations and then wherever the builder names; each answer is kept before the next
 * is asked.
 *
 * @param keep keeps what there is so far; gives whether it could
 */
export async function askMeasures(
  plan: Plan,
  into: Collected,
  io: Asking,
  keep: () => Promise<boolean>,
): Promise<Ended> {
  if ((await askAll(stationQuestions(plan), plan, into, io, keep)) === 'stopped') return 'stopped';
  for (;;) {
    const typed = (await io.ask(askMore(plan)))?.trim();
    if (typed === undefined || typed === 'stop') return 'stopped';
    if (typed === '' || typed === 'done') return 'done';
    const questions = questionsOf(plan, typed);
    if ('remedy' in questions) {
      io.err(say(A.again, { ...questions }));
      continue;
    }
    if ((await askAll(questions, plan, into, io, keep)) === 'stopped') return 'stopped';
  }
}

async function askAll(
  questions: readonly Question[],
  plan: Plan,
  into: Collected,
  io: Asking,
  keep: () => Promise<boolean>,
): Promise<Ended> {
  let i = 0;
  let doubted: string | undefined;
  while (i < questions.length) {
    const question = questions[i]!;
    const now = into.now(question.measure(''));
    const typed = (await io.ask(question.prompt(now === undefined ? '' : say(A.now, { now }))))?.trim();
    if (typed === undefined || typed === 'stop') return 'stopped';
    if (typed === 'done') return typed;
    if (typed === 'back') {
      if (i === 0) io.err(`  ${A.first}`);
      i = Math.max(0, i - 1);
    } else if (typed === '') i++;
    else {
      const why = whyNot(question, typed, plan.job.units, into, doubted === typed);
      doubted = why?.isDoubt ? typed : undefined;
      if (why) io.err(say(A.again, { what: why.what, remedy: why.remedy }));
      else if (await keep()) i++;
      else return 'stopped';
    }
  }
  return 'done';
}

/**
 * Takes what was typed, or says what is wrong with it.
 *
 * @param isMeant whether it was typed twice: what hardly can be is taken then
 */
function whyNot(question: Question, typed: string, units: Units, into: Collected, isMeant: boolean): Wrong | undefined {
  const measure = question.measure(BARE.test(typed) ? `${typed} ${question.unit}` : typed);
  const tried = into.tried(measure);
  if ('remedy' in tried) return { ...tried, isDoubt: false };
  if (!isMeant) {
    const doubt = farOff(question, typed, units) ?? tried.doubts[0];
    if (doubt) return { what: doubt.what, remedy: say(words.twice, { remedy: doubt.remedy }), isDoubt: true };
  }
  into.take(measure, tried);
  return undefined;
}

interface Wrong extends NotTaken {
  readonly isDoubt: boolean;
}

function farOff({ meant }: Question, typed: string, units: Units): NotTaken | undefined {
  const read = parseLength(typed, units);
  if (meant === undefined || !read.ok || Math.abs(read.value - meant) <= FAR * meant) return undefined;
  const { what, remedy } = words.far;
  return { what: say(what, { value: printLength(read.value, units), meant: printLength(meant, units) }), remedy };
}
