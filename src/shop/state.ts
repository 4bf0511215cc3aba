import type { ShopEvent, StoredEvent } from './event.js';
import { STEPS, stepsBehind, type Step } from './step.js';

/** Where the whole shop stands: what the log of events comes to. */
export interface ShopState {
  /** By block number. Blocks nothing has happened to are absent. */
  readonly blocks: Readonly<Record<string, BlockState>>;
  /** By gluing batch. */
  readonly timers: Readonly<Record<string, GlueTimer>>;
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

export const NOTHING_YET: ShopState = { blocks: {}, timers: {}, recent: [], last: 0 };
export const UNTOUCHED: BlockState = { marks: {}, notes: [], photos: [] };

/** How many of the last events are kept at hand to be undone. */
const RECENT = 40;

/**
 * The state after more events, in the order of the log. Doing a step twice is one step. An undo takes back the marks its maker
 * could see (numbered up to `seen`) and its maker's own earlier ones, and no others: if somebody else did the step in the meantime,
 * it stays done (an observed-remove set: Shapiro, Preguiça, Baquero, Zawirski, "A comprehensive study of convergent and
 * commutative replicated data types", 2011, section 3.3.5).
 */
export function stateAfter(start: ShopState, events: Iterable<StoredEvent>): ShopState {
  const blocks: Record<string, BlockState> = { ...start.blocks };
  const timers: Record<string, GlueTimer> = { ...start.timers };
  let recent = [...start.recent];
  let last = start.last;
  for (const event of events) {
    const { what } = event;
    if (what.kind === 'timer') timers[what.batch] = { started: event.happened, minutes: what.minutes };
    else blocks[what.block] = blockAfter(blocks[what.block] ?? UNTOUCHED, event);
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

/** For each step, in order, whether it is behind a block: the ticks of the printed list. */
export function ticksOf(block: BlockState | undefined): readonly boolean[] {
  const behind = stepsBehind(stageOf(block));
  return STEPS.map((_, i) => i < behind);
}

function blockAfter(block: BlockState, event: StoredEvent): BlockState {
  const { what, who, happened } = event;
  switch (what.kind) {
    case 'step': {
      const marks = block.marks[what.step] ?? [];
      const after = what.done ? withMark(marks, event) : marks.filter((mark) => !takesBack(event, mark));
      return { ...block, marks: { ...block.marks, [what.step]: after } };
    }
    case 'note':
      return { ...block, notes: [...block.notes, { text: what.text, who, happened }] };
    case 'photo':
      return { ...block, photos: [...block.photos, { text: what.photo, who, happened }] };
    case 'trimmed':
      return { ...block, trimmedTo: event.plan };
    case 'timer':
      return block;
  }
}

function withMark(marks: readonly Mark[], event: StoredEvent): readonly Mark[] {
  const { client, seq, number, plan, who, happened } = event;
  return [...marks, { client, seq, number, plan, who, happened }];
}

function takesBack(undo: StoredEvent, mark: Mark): boolean {
  const seen = mark.number > 0 && mark.number <= undo.seen;
  return seen || (mark.client === undo.client && mark.seq < undo.seq);
}
