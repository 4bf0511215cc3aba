import { config } from 'zod';
import { answerTo, countedFor, type Known, type Question } from './answer.js';

// The page's rules allow no code made from text, which zod would try first.
config({ jitless: true });

/** Times the first question is answered again in the pause after it: so often the browser must see the planner run before it has compiled it. */
const PRACTICE = 50;

/** The first picture is drawn meanwhile, ms. */
const PAUSE = 800;

/** Nothing is counted until nobody has asked for so long, ms. */
const QUIET = 600;

const known: Known = new Map();
let isFirst = true;
let count: ReturnType<typeof setTimeout> | undefined;

self.onmessage = ({ data }: MessageEvent<Question>) => {
  self.postMessage(answerTo(data, known));
  if (isFirst) setTimeout(() => practise(data, PRACTICE), PAUSE);
  isFirst = false;
  if (data.which === 'this') {
    clearTimeout(count);
    const plan = known.get('this')?.plan;
    count = plan && setTimeout(() => self.postMessage(countedFor(data.number, plan)), QUIET);
  }
};

/** One answer a turn, for nobody, so that a question never waits for more than one; the slider is quick from its first move. */
function practise(question: Question, times: number): void {
  if (times === 0) return;
  answerTo(question, new Map(known));
  setTimeout(() => practise(question, times - 1));
}
