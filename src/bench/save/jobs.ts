import type { AnswersOf, JobOnDisk, JobList, PaperNames, PaperNews, Saved } from '../../open/api.js';

export type { JobOnDisk, JobList, PaperNews, Saved };

/** What went wrong at the server, in its words. */
export class Refused extends Error {}

/** The server the page came from, by the token in its address. */
export class Jobs {
  constructor(private readonly token: string) {}

  list(): Promise<JobList> {
    return this.ask('GET', '/api/bench');
  }

  read(name: string): Promise<JobOnDisk> {
    return this.ask('GET', `/api/bench/job?name=${encodeURIComponent(name)}`);
  }

  /** @param basedOn the state of the file that was changed; absent for a file that must not be there yet */
  save(name: string, text: string, basedOn: string | undefined): Promise<Saved> {
    return this.ask('PUT', '/api/bench/job', { name, text, ...(basedOn !== undefined && { basedOn }) });
  }

  /** Which papers a job has, what they take on such paper, its phases, and the sheets they can go on. */
  paperNames(name: string, text: string, paper: string, phase: string | undefined): Promise<PaperNames> {
    return this.ask('POST', '/api/bench/papers/names', { name, text, paper, ...(phase !== undefined && { phase }) });
  }

  /**
   * Makes papers and tells of each page. Ends with the file, or with what went wrong.
   *
   * @param stop ends it early
   */
  async papers(asked: PapersAsked, tell: (news: PaperNews) => void, stop: AbortSignal): Promise<void> {
    const response = await this.send('POST', '/api/bench/papers', asked, stop);
    if (!response.ok) throw new Refused(((await response.json()) as { error: string }).error);
    const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
    let waiting = '';
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      const events = (waiting + value).split('\n\n');
      waiting = events.pop()!;
      for (const event of events) {
        if (event.startsWith('data: ')) tell(JSON.parse(event.slice('data: '.length)) as PaperNews);
      }
    }
  }

  private async ask<T extends AnswersOf>(method: string, path: string, body?: unknown): Promise<T> {
    const response = await this.send(method, path, body);
    const answer = (await response.json()) as T & { error?: string };
    if (!response.ok && response.status !== 409)
      throw new Refused(answer.error ?? `The server answers ${response.status}.`);
    return answer;
  }

  private async send(method: string, path: string, body?: unknown, signal?: AbortSignal): Promise<Response> {
    try {
      return await fetch(path, {
        method,
        headers: {
          Authorization: `Bearer ${this.token}`,
          ...(body !== undefined && { 'Content-Type': 'application/json' }),
        },
        ...(body !== undefined && { body: JSON.stringify(body) }),
        ...(signal && { signal }),
      });
    } catch (error) {
      if (signal?.aborted) throw error;
      throw new Refused(
        'chamberwright does not answer. Start it again in the terminal; what is on this page stays here.',
      );
    }
  }
}

export interface PapersAsked {
  readonly name: string;
  readonly text: string;
  readonly paper: string;
  readonly phase?: string;
  readonly only?: readonly string[];
  readonly with?: readonly string[];
  readonly without?: readonly string[];
}

/** The token from the address, kept for this tab and taken out of the address, where others might read it. */
export function tokenFrom(location: Location, store: Storage): string {
  const [, given] = /[#&]token=([\w-]+)/.exec(location.hash) ?? [];
  if (given !== undefined) {
    store.setItem('bench token', given);
    history.replaceState(null, '', location.pathname + location.search);
  }
  return given ?? store.getItem('bench token') ?? '';
}
