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
    if (!shown || this.bench.question !== this.question || this.done >= TIMES) return;
    const { key, ...ends } = SLIDERS[this.done % SLIDERS.length]!;
    const steps = Math.floor(this.done++ / SLIDERS.length) % STEPS;
    const { units, chambers } = shown.job;
    const written =
      'share' in ends
        ? `${Math.abs(Math.round(100 * chambers[key]) - steps)} %`
        : writtenLength(chambers[key] + steps * ruleStep(units), units, undefined);
    try {
      this.feed.ask('practice', { ...file, text: withValue(history.text, ['chambers', key], written) });
    } catch {
      // A job that nothing can be written into is not practised on; whoever tries to change it is told why.
    }
  }
}
