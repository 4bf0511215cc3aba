import { config } from 'zod';
import { answerTo, countedFor, type Known, type Question } from './answer.js';

// The page's rules allow no code made from text, which zod would try first.
config({ jitless: true });

/** Nothing is counted until nobody has asked for so long, ms. */
const QUIET = 600;

const known: Known = {};
let count: ReturnType<typeof setTimeout> | undefined;

self.onmessage = ({ data }: MessageEvent<Question>) => {
  const answer = answerTo(data, known);
  if (data.which === 'ahead') return;
  self.postMessage(answer);
  if (data.which === 'this') {
    clearTimeout(count);
    const plan = known.onPage?.plan;
    count = plan && setTimeout(() => self.postMessage(countedFor(data.number, plan)), QUIET);
  }
};
