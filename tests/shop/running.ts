import { spawn, type ChildProcess } from 'node:child_process';
import { createInterface } from 'node:readline';
import type { ShopEvent } from '../../src/shop/log/event.js';
import { built } from './built.js';

/** A tracker that runs as a program of its own. */
export interface Running {
  readonly process: ChildProcess;
  readonly port: number;
  readonly token: string;
  readonly ownerLink: string;
  readonly phoneLink?: string;
  readonly stop: (signal?: NodeJS.Signals) => Promise<void>;
}

/** Starts the tracker of the rescue board over this file. */
export async function running(tracker: string, share = '', port = ''): Promise<Running> {
  const { pageFolder, program } = await built();
  const child = spawn(process.execPath, [program('serveBoard'), tracker, pageFolder, share, port], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const line = await Promise.race([
    new Promise<string>((resolve) => createInterface(child.stdout!).once('line', resolve)),
    ended.then(() => Promise.reject(new Error('the tracker did not start'))),
  ]);
  const told = JSON.parse(line) as { port: number; ownerLink: string; phoneLink?: string };
  return {
    ...told,
    process: child,
    token: told.ownerLink.split('#token=')[1]!,
    stop: async (signal = 'SIGTERM') => {
      child.kill(signal);
      await ended;
    },
  };
}

/** Delivers events as a page would. */
export async function send(
  { port, token }: Pick<Running, 'port' | 'token'>,
  events: readonly ShopEvent[],
  sentAt = Date.now(),
): Promise<{ status: number; outcomes: { seq: number; became: string }[] }> {
  const response = await fetch(`http://127.0.0.1:${port}/api/events`, {
    method: 'POST',
    headers: {
      Authorization: `Bearer ${token}`,
      'Content-Type': 'application/json',
      Origin: `http://127.0.0.1:${port}`,
    },
    body: JSON.stringify({ sentAt, events }),
  });
  const { outcomes } = (await response.json()) as { outcomes: { seq: number; became: string }[] };
  return { status: response.status, outcomes };
}
