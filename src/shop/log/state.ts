import type { ShopEvent, StoredEvent } from './event.js';
import { STEPS, type Step } from './step.js';

/** Where the whole shop stands: what the log of events comes to. */
export interface ShopState {
  /** By block number. Blocks nothing has happened to are absent. */
  readonly blocks: ReadonlyMap<string, BlockState>;
  /** By gluing batch. */
  readonly timers: ReadonlyMap<string, GlueTimer>;
  /** The last events, newest last. */
  readonly recent: readonly StoredEvent[];
  /** Number of the last event counted in. */
  readonly last: number;
}

export interface BlockState {
  /** For each step the marks that hold. A step is done while at least one holds. */
  readonly marks: Readonly<Partial<Record<Step, readonly Mark[]>>>;
  readonly notes: readonly Remark[];
  readonly photos: readonly Remark[];
  /** Number of the plan the block was last trimmed to. */
  readonly trimmedTo?: number;
}

/** That a step was done, by whom and when. */
export interface Mark {
  readonly client: string;
  readonly seq: number;
  /** Number in the log; 0 while it waits to be delivered. */
  readonly number: number;
  readonly plan: number;
  readonly who: string;
  readonly happened: number;
}

/** A note's text or a photo's name. */
export interface Remark {
  readonly text: string;
  readonly who: string;
  readonly happened: number;
}

export interface GlueTimer {
  readonly started: number;
  readonly minutes: number;
}

export const NOTHING_YET: ShopState = { blocks: new Map(), timers: new Map(), recent: [], last: 0 };
export const UNTOUCHED: BlockState = { marks: {}, notes: [], photos: [] };

/** How many of the last events are kept at hand to be undone. */
const RECENT = 40;

/**
 * The state after more events, in the order of the log. Doing a step twice is one step. An undo takes back the marks
 * its maker could see (numbered up to `seen`) and its maker's own earlier ones, and no others: if somebody else did the
 * step in the meantime, it stays done (an observed-remove set: Shapiro, Preguiça, Baquero, Zawirski, "A comprehensive
 * study of convergent and commutative replicated data types", 2011, section 3.3.5).
 */
export function stateAfter(start: ShopState, events: Iterable<StoredEvent>): ShopState {
  const blocks = new Map(start.blocks);
  const drafts = new Map<string, Draft>();
  const timers = new Map(start.timers);
  let recent = [...start.recent];
  let last = start.last;
  for (const event of events) {
    const { what } = event;
    if (what.kind === 'timer') timers.set(what.batch, { started: event.happened, minutes: what.minutes });
    else {
      let draft = drafts.get(what.block);
      if (!draft) {
        draft = draftOf(blocks.get(what.block) ?? UNTOUCHED);
        drafts.set(what.block, draft);
        blocks.set(what.block, draft);
      }
      happenTo(draft, event);
    }
    recent.push(event);
    if (recent.length > 4 * RECENT) recent = recent.slice(-RECENT);
    last = Math.max(last, event.number);
  }
  return { blocks, timers, recent: recent.slice(-RECENT), last };
}

/** The state as a device shows it that has events of its own not yet delivered. */
export function stateWithUnsent(state: ShopState, unsent: readonly ShopEvent[]): ShopState {
  return stateAfter(
    state,
    unsent.map((event) => ({ ...event, number: 0, received: event.at, happened: event.at })),
  );
}

/** How far a block has come: the furthest step that is done. The steps before it are taken as done with it. */
export function stageOf(block: BlockState | undefined): Step | undefined {
  return STEPS.findLast((step) => (block?.marks[step]?.length ?? 0) > 0);
}

/**
 * A block's state while a log is being counted in: a copy nobody else holds yet, so that it may be added to in place.
 */
interface Draft {
  readonly marks: Partial<Record<Step, Mark[]>>;
  readonly notes: Remark[];
  readonly photos: Remark[];
  trimmedTo?: number;
}

function draftOf({ marks, notes, photos, ...rest }: BlockState): Draft {
  const copies = Object.fromEntries(Object.entries(marks).map(([step, its]) => [step, [...its]]));
  return { marks: copies, notes: [...notes], photos: [...photos], ...rest };
}

function happenTo(draft: Draft, event: StoredEvent): void {
  const { what, client, seq, number, plan, who, happened } = event;
  switch (what.kind) {
    case 'step': {
      const marks = draft.marks[what.step] ?? [];
      if (what.done) marks.push({ client, seq, number, plan, who, happened });
      draft.marks[what.step] = what.done ? marks : marks.filter((mark) => !takesBack(event, mark));
      return;
    }
    case 'note':
      draft.notes.push({ text: what.text, who, happened });
      return;
    case 'photo':
      draft.photos.push({ text: what.photo, who, happened });
      return;
    case 'trimmed':
      draft.trimmedTo = plan;
      return;
    case 'timer':
      return;
  }
}

function takesBack(undo: StoredEvent, mark: Mark): boolean {
  const seen = mark.number > 0 && mark.number <= undo.seen;
  return seen || (mark.client === undo.client && mark.seq < undo.seq);
}
