import { inStrips } from './byStrips.js';
import type { Nest, NestProblem, StockSize } from './nest.js';
import { allWanted, areaOf } from './nest.js';
import { narrowed, widened, widthTaken } from './width.js';
import { improve, movedEither, shortfall, type Effort } from './search.js';

/**
 * All blanks on the sheets there are, or `undefined` where no such layout is found.
 *
 * The longest sheets are looked for from wide to narrow, each width a little below what the last layout needed, until
 * those there are hold it. No step of this way depends on where it is to end, so wider ones never need more.
 * @param problem - with a finite count of each size
 */
export function packed(problem: NestProblem, effort: Effort): Nest | undefined {
  const longest = problem.stock.reduce(
    (best, { length, count }, i) => (count > 0 && !(problem.stock[best]!.length >= length) ? i : best),
    problem.stock.findIndex(({ count }) => count > 0),
  );
  const { length, width: wide, count } = problem.stock[longest]!;
  const of = (width: number): NestProblem => ({
    ...problem,
    stock: problem.stock.map((size, i) => (i === longest ? { ...size, width } : size)),
  });
  const others = problem.stock.reduce(
    (sum, size, i) => (i === longest ? sum : sum + size.count * areaOfSheet(size)),
    0,
  );
  const least = Math.max(0, areaOf(problem) - others) / (length * count);
  let width = Math.max(TOP * least, narrowest(problem, length));
  let nest: Nest | undefined;
  for (;;) {
    const next: Nest = filled(of(width), nest && narrowed(nest, of(width)), effort);
    if (next.missing.length > 0) {
      if (nest || effort.rounds <= 0 || effort.stop()) return undefined;
      width *= TOP;
      continue;
    }
    nest = next;
    const needed = widthTaken(nest, longest);
    if (needed <= wide) return widened(nest, of(wide));
    width = needed - Math.max((needed - least) * STEP, SMALLEST_STEP);
  }
}

const areaOfSheet = ({ length, width }: StockSize): number => length * width;

/** How wide the first sheets are, in widths that would do without waste. */
const TOP = 1.5;
/** By how much of what is still wasted the width goes down at a time, and by how much at least, mm. */
const STEP = 0.1;
const SMALLEST_STEP = 0.01;
/** Layouts of strips that are made before one of them is bettered: for so many blanks in all, and at most so many. */
const FIRST_BLANKS = 400;
const MOST_FIRSTS = 4;

function filled(problem: NestProblem, from: Nest | undefined, effort: Effort): Nest {
  const score = shortfall(problem, 'all');
  const complete = (nest: Nest) => nest.missing.length === 0;
  let best = from;
  const firsts = Math.min(MOST_FIRSTS, Math.floor(FIRST_BLANKS / problem.wanted.length));
  for (let i = from ? 0 : -1; i < firsts && !(best && complete(best)) && !effort.stop(); i++) {
    const nest = inStrips(problem, effort.seed);
    if (!best || score(nest) < score(best)) best = nest;
  }
  best ??= { sheets: [], missing: allWanted(problem) };
  return complete(best) ? best : improve(best, problem, Infinity, score, complete, effort, movedEither);
}

/** The least width in which every blank lies somehow. */
function narrowest({ wanted }: NestProblem, length: number): number {
  const widths = wanted.map((blank) => {
    const ways = [[blank.length, blank.height], ...(blank.mayTurn ? [[blank.height, blank.length]] : [])];
    return Math.min(...ways.filter(([along]) => along! <= length).map(([, across]) => across!));
  });
  return Math.max(...widths.filter(Number.isFinite));
}
