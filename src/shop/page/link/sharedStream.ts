import { listen, type Message } from './changeStream.js';

const NAME = 'chamberwright-changes';

/**
 * One stream of changes for all pages of this browser: browsers keep only six connections to a server open at once, and
 * a seventh page would wait for ever. The page that holds the lock listens to the server and passes on what it hears
 * (W3C Web Locks; BroadcastChannel, WHATWG HTML, section
 * 9.5); when it is closed, hidden or loses its connection, another takes over. Where there are no locks (plain HTTP
 * from another machine) each page that is in view listens for itself.
 */
export class SharedStream {
  private readonly channel = canShare() ? new BroadcastChannel(NAME) : undefined;
  private leads = false;

  /** @param heard called for each message, and with none whenever a connection begins */
  constructor(private readonly heard: (message: Message | undefined) => void) {
    this.channel?.addEventListener('message', ({ data }: MessageEvent<Message | null>) => {
      // Who listens to the server itself is not told by the page before it, whose last word may come late, how it is.
      if (!this.leads) heard(data ?? undefined);
    });
  }

  /** Listens, or waits while another page does, until the connection is lost or `stop` says so. @returns as `listen` */
  async listen(path: string, token: string, stop: AbortSignal): Promise<number> {
    const { channel } = this;
    if (!channel) return listen(path, token, this.heard, stop);
    const lead = async () => {
      const hear = (message: Message | undefined) => {
        channel.postMessage(message ?? null);
        this.heard(message);
      };
      this.leads = true;
      const status = await listen(path, token, hear, stop).finally(() => (this.leads = false));
      channel.postMessage({ name: 'lost', data: status } satisfies Message);
      return status;
    };
    // The server has just answered this page, so while it waits for the lock it counts as connected.
    this.heard(undefined);
    try {
      return await navigator.locks.request(NAME, { signal: stop }, lead);
    } catch {
      return 0;
    }
  }
}

function canShare(): boolean {
  return 'locks' in navigator && 'BroadcastChannel' in globalThis;
}
