import { NO_HINTS, type Hints } from './hints.js';

interface Made {
  readonly inputs: readonly unknown[];
  readonly is: unknown;
}

/** Plans that are looked back on beside the one that is made: a slider goes to and fro. */
const LOOKED_BACK = 2;

/**
 * What pure steps made for a plan, and for the few it was made over, each by the very inputs it was made of. Asked for
 * the same objects and numbers again, a step gives what it gave; what no plan of late has asked for is forgotten. It
 * changes nothing but the time it takes.
 */
export class Past {
  private readonly made = new Map<unknown, Made[]>();
  private readonly earlier: readonly ReadonlyMap<unknown, readonly Made[]>[];

  /** @param hints where the searches of the steps may begin; they bound a search, and are never its result */
  constructor(
    before?: Past,
    readonly hints: Hints = NO_HINTS,
  ) {
    this.earlier = before ? [before.made, ...before.earlier].slice(0, LOOKED_BACK) : [];
  }

  /** What a pure step makes of its inputs. */
  of<Inputs extends readonly unknown[], Result>(step: (...inputs: Inputs) => Result, ...inputs: Inputs): Result {
    return this.remembered(step, inputs, () => step(...inputs));
  }

  /** The same of a step that is given this past behind its inputs, for steps of its own. */
  within<Inputs extends readonly unknown[], Result>(
    step: (...inputs: [...Inputs, Past]) => Result,
    ...inputs: Inputs
  ): Result {
    return this.remembered(step, inputs, () => step(...inputs, this));
  }

  private remembered<Result>(step: unknown, inputs: readonly unknown[], make: () => Result): Result {
    const isOfThese = (made: Made) => inputs.every((input, i) => Object.is(input, made.inputs[i]));
    const own = this.made.get(step) ?? [];
    this.made.set(step, own);
    const known = own.find(isOfThese);
    if (known) return known.is as Result;
    let made: Made | undefined;
    for (const all of this.earlier) made ??= all.get(step)?.find(isOfThese);
    made ??= { inputs, is: make() };
    own.push(made);
    return made.is as Result;
  }
}
