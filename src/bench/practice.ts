import type { Job } from '../job/job.js';
import type { Bench } from './bench.js';
import { withValue } from './edit/value.js';
import { ruleStep, writtenLength } from './edit/written.js';
import { SLIDERS } from './fields/Slider.js';
import type { PlanFeed } from './plan/feed.js';

/** So many changes the browser must see before it has compiled what they take. */
const TIMES = 100;
/** The first picture is drawn and looked at meanwhile, ms. */
const PAUSE = 300;
/** Sizes of the changes, steps of the rule. */
const STEPS = 3;

/**
 * Goes through changes for nobody, from the job's text to the picture, so that a slider is quick from its first move. Nothing of it is
 * shown: what is drawn is the plan that is there already. Ends when somebody makes a change.
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
      const text = this.done++ === TIMES ? history.text : this.changed(history.text, shown.job);
      this.feed.ask('practice', { ...file, text });
    } catch {
      // A job that nothing can be written into is not practised on; whoever tries to change it is told why.
    }
  }

  /** The job's text with one of its numbers a little larger, another one each time. */
  private changed(text: string, { units, chambers }: Job): string {
    const { key, ...ends } = SLIDERS[this.done % SLIDERS.length]!;
    const steps = Math.floor(this.done / SLIDERS.length) % STEPS;
    const written =
      'share' in ends
        ? `${Math.abs(Math.round(100 * chambers[key]) - steps)} %`
        : writtenLength(chambers[key] + steps * ruleStep(units), units, undefined);
    return withValue(text, ['chambers', key], written);
  }
}
