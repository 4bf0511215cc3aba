import { config } from 'zod';
import { planOf } from '../../plan.js';
import { answerTo, countedFor, type Known, type Question } from './answer.js';

// The page's rules allow no code made from text, which zod would try first.
config({ jitless: true });

/** Plans made in the pause after the first: so often the browser must see the planner run before it has compiled it. */
const PRACTICE = 20;
/** They differ a little in their web, mm, as when a slider is dragged. */
const STEP = 0.25;

/** The first picture is drawn meanwhile, ms. */
const PAUSE = 800;

/** Nothing is counted until nobody has asked for so long, ms. */
const QUIET = 600;

const known: Known = new Map();
let practised = 0;
let count: ReturnType<typeof setTimeout> | undefined;

self.onmessage = ({ data }: MessageEvent<Question>) => {
  self.postMessage(answerTo(data, known));
  if (practised === 0) setTimeout(practise, PAUSE);
  if (data.which === 'this') {
    clearTimeout(count);
    const plan = known.get('this');
    count = plan && setTimeout(() => self.postMessage(countedFor(data.number, plan)), QUIET);
  }
};

/** One plan a turn, so that a question never waits for more than one; the slider is quick from its first move. */
function practise(): void {
  const plan = known.get('this');
  if (!plan || practised++ === PRACTICE) return;
  setTimeout(() => {
    const { job } = plan;
    planOf({ ...job, chambers: { ...job.chambers, web: job.chambers.web + practised * STEP } }, plan);
    practise();
  });
}
