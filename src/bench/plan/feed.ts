import type { Answer, Counted, Question, Shown, JobText } from './answer.js';

/** The part of a worker that the feed uses. */
export interface Worked {
  postMessage(question: Question): void;
  onmessage: ((event: MessageEvent<Answer | Counted>) => void) | null;
  onerror?: ((event: ErrorEvent) => void) | null;
}

export type Arrived = Pick<Answer, 'which' | 'findings' | 'number' | 'took'> & { readonly shown?: Shown };

/** A plan that takes less is made ahead, ms. */
const QUICK = 40;

/**
 * Asks the worker for plans, one at a time. Of what is asked while it works only the latest is kept for each job: what
 * has been overtaken is never computed.
 */
export class PlanFeed {
  private number = 0;
  private working = false;
  /** How long the last plan took, ms. */
  private took = Infinity;
  private readonly waiting = new Map<Question['which'], Question>();
  private readonly boards = new Map<Question['which'], Shown['board']>();

  constructor(
    private readonly worker: Worked,
    private readonly arrived: (answer: Arrived) => void,
    private readonly failed: (why: string) => void = () => undefined,
    counted: (count: Counted) => void = () => undefined,
  ) {
    worker.onmessage = ({ data }) => ('counted' in data ? counted(data) : this.take(data));
    worker.onerror = ({ message }) => {
      this.working = false;
      this.failed(message);
      this.next();
    };
  }

  /** Asks for the plan of a text; gives the question's number, by which its answer is known. */
  ask(which: Question['which'], written: JobText): number {
    const number = ++this.number;
    this.waiting.set(which, { number, which, written });
    this.next();
    return number;
  }

  /**
   * Has the plan made that will probably be asked for next, while nothing else is to be done. A question that comes
   * meanwhile waits for it, so only a planner that is quick is sent ahead.
   */
  ahead(written: JobText): void {
    if (!this.working && this.took < QUICK) this.worker.postMessage({ number: 0, which: 'ahead', written });
  }

  private next(): void {
    if (this.working) return;
    const question = this.waiting.get('this') ?? this.waiting.get('other') ?? this.waiting.get('practice');
    if (!question) return;
    this.waiting.delete(question.which);
    this.working = true;
    this.worker.postMessage(question);
  }

  private take({ shown, ...answer }: Answer): void {
    this.working = false;
    this.took = answer.took;
    // The worker goes on with the next while this one is drawn.
    this.next();
    const board = shown?.board ?? this.boards.get(answer.which);
    if (shown?.board) this.boards.set(answer.which, shown.board);
    this.arrived(shown && board ? { ...answer, shown: { ...shown, board } } : answer);
  }
}
