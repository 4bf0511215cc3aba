import type { Happening, StoredEvent } from '../../log/event.js';
import type { Pace } from '../../report/pace.js';
import { stateAfter, stateWithUnsent, type ShopState } from '../../log/state.js';
import type { Step } from '../../log/step.js';
import { shopFrom, type ToldShop, type WholeShop } from '../../report/wholeShop.js';
import type { Message } from './changeStream.js';
import { deliver } from './deliver.js';
import type { Memory, Refused, Unsent } from './memory.js';
import { call } from './serverCalls.js';
import { SharedStream } from './sharedStream.js';
import { isSecondTouch, type Tap } from './taps.js';

/** What the page shows at one moment. */
export interface Shown {
  readonly whole?: WholeShop;
  /** The server's state with what this phone has not delivered yet. */
  readonly state?: ShopState;
  readonly unsent: readonly Unsent[];
  readonly refused: readonly Refused[];
  readonly link: 'starting' | 'live' | 'lost' | 'shut-out';
  /** What stands in the way, in the server's or our own words. */
  readonly trouble?: string;
  readonly who: string;
  /** The steps pressed last on this phone, the newest last, to be undone one after the other. */
  readonly pressed: readonly Pressed[];
  readonly lasting: boolean;
}

export interface Pressed {
  readonly block: string;
  readonly step: Step;
}

const RETRY = 2000;
/** So many presses are held ready to be undone. */
const MOST_PRESSED = 20;

/** The tracker as one page has it: what the server says, what waits here, and what the builder does. */
export class ShopOnPage {
  private now: Shown;
  private readonly watchers = new Set<() => void>();
  private token: string | undefined;
  /** How far the server's clock is ahead of ours, ms. */
  private ahead = 0;
  private delivering: Promise<void> | undefined;
  private stream = new AbortController();
  private readonly changes = new SharedStream((message) => this.hear(message));
  private lastTap: Tap | undefined;

  constructor(private readonly memory: Memory) {
    this.now = { unsent: [], refused: [], link: 'starting', who: '', pressed: [], lasting: memory.lasting };
  }

  get shown(): Shown {
    return this.now;
  }

  get key(): string {
    return this.token ?? '';
  }

  /** The server's clock, ms. */
  clock(): number {
    return Date.now() + this.ahead;
  }

  watch(watcher: () => void): () => void {
    this.watchers.add(watcher);
    return () => this.watchers.delete(watcher);
  }

  /** Starts with the token the page was opened with, or the one it remembers. */
  async start(token: string | undefined): Promise<void> {
    if (token !== undefined) await this.memory.write('token', token);
    this.token = token ?? (await this.memory.read('token'));
    this.change({ who: (await this.memory.read('who')) ?? '' });
    await this.readQueue();
    addEventListener('online', () => void this.deliverAll());
    document.addEventListener('visibilitychange', () => {
      if (document.hidden) this.stream.abort();
    });
    setInterval(() => void this.deliverAll(), RETRY);
    void this.follow();
  }

  /** Tries the code that lets this phone in. */
  async letIn(code: string): Promise<string | undefined> {
    const tried = await call<{ token: string }>('/api/session', undefined, { code });
    if (tried.kind === 'silence') return 'The tracker does not answer. Is this phone in the shop’s network?';
    if (tried.kind === 'refusal') return tried.why;
    this.token = tried.value.token;
    await this.memory.write('token', this.token);
    this.change({ link: 'starting', trouble: undefined });
    this.stream.abort();
    return undefined;
  }

  /** Records a step that was touched; the second touch of a double one counts for nothing. */
  async press(block: string, step: Step, { timeStamp, clientX, clientY }: MouseEvent): Promise<void> {
    const tap = { block, at: timeStamp, x: clientX, y: clientY };
    const isSecond = isSecondTouch(tap, this.lastTap);
    this.lastTap = tap;
    if (isSecond) return;
    this.change({ pressed: [...this.now.pressed, { block, step }].slice(-MOST_PRESSED) });
    await this.record({ kind: 'step', block, step, done: true });
  }

  async undo(block: string, step: Step): Promise<void> {
    const pressed = this.now.pressed.filter((one) => one.block !== block || one.step !== step);
    this.change({ pressed });
    await this.record({ kind: 'step', block, step, done: false });
  }

  async record(what: Happening, photo?: Blob): Promise<void> {
    const { whole, who } = this.now;
    if (!whole) return;
    try {
      await this.memory.add(what, { seen: whole.state.last, plan: whole.plan, who }, photo);
    } catch {
      this.change({ trouble: 'The phone could not keep this. Is its storage full? Note it on the printed list.' });
      return;
    }
    await this.readQueue();
    void this.deliverNow();
  }

  async setWho(who: string): Promise<void> {
    this.change({ who });
    await this.memory.write('who', who);
  }

  dismissPressed(): void {
    this.change({ pressed: [] });
  }

  remembered(name: 'minutes'): Promise<string | undefined> {
    return this.memory.read(name);
  }

  remember(name: 'minutes', value: string): Promise<void> {
    return this.memory.write(name, value);
  }

  /** Keeps a connection up as long as the page is in view. */
  private async follow(): Promise<void> {
    for (;;) {
      await inView();
      this.stream = new AbortController();
      if (this.token === undefined) this.change({ link: 'shut-out' });
      else if (await this.readWhole()) {
        void this.deliverAll();
        const after = this.now.whole!.state.last;
        const status = await this.changes.listen(`/api/changes?after=${after}`, this.token, this.stream.signal);
        this.change({ link: status === 401 ? 'shut-out' : 'lost' });
      }
      await pause(RETRY / 2, this.stream.signal);
    }
  }

  private async readWhole(): Promise<boolean> {
    const before = this.now.whole?.state.last;
    const asked = await call<ToldShop>('/api/shop', this.token);
    if (asked.kind === 'answer') {
      this.ahead = asked.value.now - Date.now();
      const whole = shopFrom(asked.value);
      const heard = this.now.whole?.state;
      // What was heard while the answer was on its way is newer than the answer.
      const isOlder = heard !== undefined && heard.last !== before && whole.state.last < heard.last;
      this.change({ whole: isOlder ? { ...whole, state: heard } : whole, trouble: undefined });
      return true;
    }
    if (asked.kind === 'refusal' && asked.status === 401) this.change({ link: 'shut-out' });
    else this.change({ link: 'lost', trouble: asked.kind === 'refusal' ? asked.why : undefined });
    return false;
  }

  private hear(message: Message | undefined): void {
    const { whole } = this.now;
    if (!message) return this.change({ link: 'live' });
    if (message.name === 'lost') return this.change({ link: message.data === 401 ? 'shut-out' : 'lost' });
    if (message.name === 'reload') return void this.readWhole();
    if (!whole) return;
    if (message.name === 'beat') {
      const { now, pace } = message.data as { now: number; pace: Pace };
      this.ahead = now - Date.now();
      return this.change({ link: 'live', whole: { ...whole, pace } });
    }
    const event = message.data as StoredEvent;
    if (event.number <= whole.state.last) return;
    if (event.number > whole.state.last + 1) return void this.readWhole();
    this.change({ link: 'live', whole: { ...whole, state: stateAfter(whole.state, [event]) } });
    // Only the server holds the older plans that tell what has to be trimmed.
    const block = 'block' in event.what ? event.what.block : '';
    if (whole.refits.has(block) || event.plan !== whole.plan) void this.readWhole();
  }

  /** Delivers what waits in this browser, also what another page of it kept that was closed before it was sent. */
  private async deliverAll(): Promise<void> {
    await this.readQueue();
    await this.deliverNow();
  }

  private deliverNow(): Promise<void> {
    if (this.token === undefined || (this.now.unsent.length === 0 && !this.delivering)) return Promise.resolve();
    this.delivering ??= deliver(this.memory, this.token)
      .then(async ({ shutOut, trouble }) => {
        await this.readQueue();
        this.change({ trouble, ...(shutOut ? { link: 'shut-out' as const } : {}) });
      })
      .finally(() => (this.delivering = undefined));
    return this.delivering;
  }

  private async readQueue(): Promise<void> {
    const [unsent, refused] = [await this.memory.unsent(), await this.memory.refused()];
    const { now } = this;
    if (namesOf(unsent) !== namesOf(now.unsent) || namesOf(refused) !== namesOf(now.refused))
      this.change({ unsent, refused });
  }

  private change(part: { readonly [name in keyof Shown]?: Shown[name] | undefined }): void {
    const next = { ...this.now, ...part } as Shown;
    this.now = next.whole ? { ...next, state: this.withUnsent(next.whole.state, next.unsent) } : next;
    for (const watcher of this.watchers) watcher();
  }

  /** What waits here is shown as done, unless the server's word of it has come before its acknowledgement. */
  private withUnsent(state: ShopState, unsent: readonly Unsent[]): ShopState {
    const here = new Set(state.recent.map(({ client, seq }) => `${client} ${seq}`));
    const events = unsent.map(({ event }) => event).filter(({ client, seq }) => !here.has(`${client} ${seq}`));
    return stateWithUnsent(
      state,
      events.map((event) => ({ ...event, at: event.at + this.ahead })),
    );
  }
}

/** By what a list of events is told from another, without what is in them. */
function namesOf(list: readonly (Unsent | Refused)[]): string {
  return list.map((one) => `${one.event.client} ${one.event.seq} ${'photo' in one}`).join();
}

function inView(): Promise<void> {
  return new Promise((resolve) => {
    const look = () => {
      if (document.hidden) return;
      document.removeEventListener('visibilitychange', look);
      resolve();
    };
    document.addEventListener('visibilitychange', look);
    look();
  });
}

function pause(ms: number, cut: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(resolve, ms);
    cut.addEventListener('abort', () => {
      clearTimeout(timer);
      resolve();
    });
  });
}
