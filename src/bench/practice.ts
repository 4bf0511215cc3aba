import type { Job } from '../job/job.js';
import type { Bench } from './state/bench.js';
import { withValue } from '../job/edit/value.js';
import { ruleStep } from '../job/edit/written.js';
import { SLIDERS, writtenBy } from './fields/Slider.js';
import type { PlanFeed } from './plan/feed.js';

/** So many changes the browser must see before it has compiled what they take. */
const TIMES = 100;
/** The first picture is drawn and looked at meanwhile, ms. */
const PAUSE = 300;
/** Sizes of the changes, steps of the rule or hundredths. */
const STEPS = 3;

/**
 * Goes through changes for nobody, from the job's text to the picture, so that a slider is quick from its first move.
 * Nothing of it is shown: what is drawn is the plan that is there already. Ends when somebody makes a change.
 */
export class Practice {
  private done = 0;
  /** The question on the bench when it began. */
  private question = -1;

  constructor(
    private readonly bench: Bench,
    private readonly feed: PlanFeed,
  ) {}

  /** Begins some time after the first picture. */
  begin(): void {
    const stop = this.bench.subscribe(() => {
      if (!this.bench.now.shown) return;
      stop();
      this.question = this.bench.question;
      setTimeout(() => this.next(), PAUSE);
    });
  }

  /** Takes the answer to a change that nobody has made. */
  arrived(): void {
    this.next();
    this.bench.redraw();
  }

  private next(): void {
    const { file, history, shown } = this.bench.now;
    if (!shown || this.bench.question !== this.question || this.done > TIMES) return;
    try {
      // The last one is the job as it stands: from there the first change is the smallest.
      const turn = this.done++;
      const text = turn === TIMES ? history.text : withAnotherNumber(history.text, shown.job, turn);
      this.feed.ask('practice', { ...file, text });
    } catch {
      // A job that nothing can be written into is not practised on; whoever tries to change it is told why.
    }
  }
}

/** The job's text with one of its numbers a little different, another one each turn. */
function withAnotherNumber(text: string, { units, chambers }: Job, turn: number): string {
  const slider = SLIDERS[turn % SLIDERS.length]!;
  const steps = Math.floor(turn / SLIDERS.length) % STEPS;
  const now = chambers[slider.key];
  const other = 'share' in slider ? Math.abs(now - steps / 100) : now + steps * ruleStep(units);
  return withValue(text, ['chambers', slider.key], writtenBy(slider, other, units));
}
