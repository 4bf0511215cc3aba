import type { JobFinding } from '../../job/finding.js';
import type { Units } from '../../length/units.js';
import { documentOf } from '../../job/edit/document.js';
import { begun, changed, redone, settled, undone, type History } from '../edit/history.js';
import type { Patch } from '../../board/mesh.js';
import type { Counted, Shown, JobText } from '../plan/answer.js';
import type { Arrived } from '../plan/feed.js';
import { afterPicture, followedPicture } from '../plan/pace.js';
import type { JobOnDisk } from '../../open/api.js';

/** A stretch along the board that the pictures show, mm. */
export interface VisibleRange {
  readonly from: number;
  readonly to: number;
}

export interface Other {
  readonly file: JobOnDisk;
  readonly findings: readonly JobFinding[];
  readonly shown?: Shown;
}

/** Everything the page shows. Replaced as a whole, never changed in place. */
export interface BenchState {
  readonly file: JobOnDisk;
  readonly history: History;
  /** The text as it was last read from or written to the disk. */
  readonly saved: string;
  readonly findings: readonly JobFinding[];
  /** The last plan that could be made, and whether it is the one of the present text. */
  readonly shown?: Shown;
  readonly isCurrent: boolean;
  readonly units: Units;
  readonly wall: Patch;
  readonly row?: string;
  readonly chamber?: string;
  /** Where along the board the cross-section is taken, mm from the nose. */
  readonly x: number;
  readonly visible?: VisibleRange;
  readonly other?: Other;
  /** The job as somebody else saved it meanwhile. */
  readonly conflict?: JobOnDisk;
  /** What was counted of the present text. */
  readonly counted?: Counted;
  /** How many pages the papers came to when they were last made, and from which text. */
  readonly papers?: { readonly pages: number; readonly sheet: string; readonly text: string };
  /** What has just happened, for the line at the top and for screen readers. */
  readonly said: string;
}

/** Where a bench asks for plans. */
export interface AsksForPlans {
  ask(which: 'this' | 'other', written: JobText): number;
  ahead(written: JobText): void;
}

/**
 * A change is drawn together with its plan, unless that takes longer, ms: what is drawn meanwhile takes the processor
 * from the planner.
 */
export const PATIENCE = 50;

/** The state of the page and everything that can be done to it. */
export class Bench {
  private state: BenchState;
  private readonly listeners = new Set<() => void>();
  private asked = 0;
  /** The change that will probably follow the last one. */
  private follower: ((text: string) => string) | undefined;
  /** Draws a change whose plan is late. */
  private late: ReturnType<typeof setTimeout> | undefined;

  constructor(
    file: JobOnDisk,
    private readonly feed: AsksForPlans,
  ) {
    this.state = {
      file,
      history: begun(file.text),
      saved: file.text,
      findings: [],
      isCurrent: false,
      units: 'mm',
      wall: 'rail',
      x: 0,
      said: '',
    };
    this.plan();
  }

  get now(): BenchState {
    return this.state;
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Puts something else on show. */
  show(part: Partial<BenchState>): void {
    this.state = { ...this.state, ...part };
    clearTimeout(this.late);
    this.late = undefined;
    for (const listener of this.listeners) listener();
  }

  /**
   * Changes the job's text.
   *
   * @param gesture the drag or field it comes from: until it ends, its changes are one step to take back
   * @param next the change that will probably follow
   */
  change(edit: (text: string) => string, gesture?: string, next?: (text: string) => string): void {
    const { history } = this.state;
    let text: string;
    try {
      text = edit(history.text);
    } catch (error) {
      this.show({ said: `That cannot be written into the job: ${(error as Error).message}.` });
      return;
    }
    if (text === history.text) return;
    this.replan(changed(history, text, gesture));
    this.follower = next;
    // What the fields will show is read while the planner works.
    documentOf(text);
    this.late ??= setTimeout(() => this.show({}), PATIENCE);
  }

  /** Ends a drag or leaves a field. */
  settle(): void {
    this.show({ history: settled(this.state.history) });
  }

  undo(): void {
    if (this.state.history.past.length === 0) return;
    this.replan(undone(this.state.history), 'Taken back.');
    this.show({});
  }

  redo(): void {
    if (this.state.history.future.length === 0) return;
    this.replan(redone(this.state.history), 'Done again.');
    this.show({});
  }

  /** Puts another job, or another state of this one, on the bench. What was there can be taken back. */
  open(file: JobOnDisk, keepHistory: boolean): void {
    const history = keepHistory ? changed(this.state.history, file.text) : begun(file.text);
    this.state = { ...this.state, file, saved: file.text, conflict: undefined };
    if (!keepHistory) {
      this.state = { ...this.state, shown: undefined, row: undefined, chamber: undefined, visible: undefined };
    }
    this.replan(history, `${file.name} is on the bench.`);
    this.show({});
  }

  /** Lays a second job beside the first, or takes it away. */
  compare(file: JobOnDisk | undefined): void {
    this.show({ other: file && { file, findings: [] } });
    if (file) this.feed.ask('other', file);
  }

  /** Takes an answer from the worker. */
  arrived({ which, number, findings, shown }: Arrived): void {
    if (which === 'other') {
      const { other } = this.state;
      if (other) this.show({ other: { ...other, findings, ...(shown && { shown }) } });
      return;
    }
    const isCurrent = number === this.asked;
    if (!shown) {
      if (isCurrent) this.show({ findings, isCurrent: false });
      return;
    }
    const first = this.state.shown === undefined;
    const chamber = shown.result.chambers.find(({ id }) => id === this.state.chamber);
    const row = shown.result.rows.find(({ id }) => id === this.state.row) ?? usualRow(shown);
    this.show({
      chamber: chamber?.id,
      row: row?.id,
      shown,
      findings,
      isCurrent,
      x: first ? shown.result.board.length / 2 : Math.min(this.state.x, shown.result.board.length),
      ...(first && { units: shown.job.units }),
    });
    followedPicture(number);
    const { follower } = this;
    if (isCurrent && follower) afterPicture(() => this.lookAhead(follower));
  }

  /** Draws what is shown again: for nobody's eyes, since it looks the same. */
  redraw(): void {
    const { shown } = this.state;
    if (shown) this.show({ shown: { ...shown } });
  }

  /** Takes what was counted in a pause; what has been overtaken is let go. */
  counted(counted: Counted): void {
    if (counted.counted === this.asked) this.show({ counted });
  }

  /** The text's own number: the question to which the picture on the bench must be the answer. */
  get question(): number {
    return this.asked;
  }

  private replan(history: History, said = ''): void {
    this.state = { ...this.state, history, isCurrent: false, counted: undefined, said };
    this.plan();
  }

  /** Has the change planned that will probably follow, if it is still the one that will. */
  private lookAhead(follower: (text: string) => string): void {
    const { text } = this.state.history;
    const further = follower === this.follower ? follower(text) : text;
    if (further !== text) this.feed.ahead(this.written(further));
  }

  private plan(): void {
    this.follower = undefined;
    this.asked = this.feed.ask('this', this.written(this.state.history.text));
  }

  private written(text: string): JobText {
    const { name, beside } = this.state.file;
    return { name, text, beside };
  }
}

/** The row shown first: the innermost one on the right. */
function usualRow({ result }: Shown) {
  return result.rows.find(({ side }) => side === 'R') ?? result.rows[0];
}
