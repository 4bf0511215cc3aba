import type { ShopEvent } from './event.js';
import { eventSchema } from './eventSchema.js';
import { batchOf, type TrackedBlock } from './trackedBlock.js';

/**
 * What the plans recorded so far have: a phone may still hold something about a block that the plan of today has no
 * more.
 */
export interface KnownPlaces {
  readonly blocks: ReadonlySet<string>;
  readonly batches: ReadonlySet<string>;
}

/** An event that was not let in; it will not be, however often it is sent. */
export interface Refused {
  /** Its place in the delivery. */
  readonly index: number;
  readonly became: 'refused';
  readonly why: string;
}

/** The blocks and batches of some plans. */
export function placesOf(plans: readonly { readonly blocks: readonly TrackedBlock[] }[]): KnownPlaces {
  const blocks = plans.flatMap((plan) => plan.blocks);
  return { blocks: new Set(blocks.map(({ id }) => id)), batches: new Set(blocks.map(batchOf)) };
}

/**
 * Lets in what has the shape of an event and speaks of a block or batch that there is. One bad event holds up no
 * others.
 */
export function admitted(
  events: readonly unknown[],
  { blocks, batches }: KnownPlaces,
): { readonly good: readonly ShopEvent[]; readonly refused: readonly Refused[] } {
  const good: ShopEvent[] = [];
  const refused: Refused[] = [];
  for (const [index, event] of events.entries()) {
    const refuse = (why: string) => refused.push({ index, became: 'refused', why });
    const read = eventSchema.safeParse(event);
    if (!read.success) {
      refuse(read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`).join('; '));
      continue;
    }
    const { what } = read.data;
    if (what.kind === 'timer' && !batches.has(what.batch)) refuse(`There is no batch ${what.batch} in the plan.`);
    else if (what.kind !== 'timer' && !blocks.has(what.block)) refuse(`There is no block ${what.block} in the plan.`);
    else good.push(read.data);
  }
  return { good, refused };
}
