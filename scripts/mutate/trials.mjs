// Asks tests, one file after the other, whether they see a fault; a run that does not end is ended.
import { fork } from 'node:child_process';
import { resolve } from 'node:path';
import { clearTimeout, setTimeout } from 'node:timers';

/** A fault may make a test so many times slower, and this much more, ms, before it is held to run for ever. */
const SLOWER = 5;
const PATIENCE = 15_000;

export function trials() {
  let host;
  const answer = (limit) =>
    new Promise((done) => {
      const end = (said) => {
        clearTimeout(late);
        host.removeAllListeners();
        done(said);
      };
      const late = setTimeout(() => end('runs for ever'), limit);
      host.once('message', end);
      host.once('exit', () => end('breaks off'));
    });
  const start = async () => {
    // In a group of its own: what runs for ever is ended with it.
    const stdio = ['ignore', 'ignore', 'ignore', 'ipc'];
    host = fork(new URL('host.mjs', import.meta.url), { stdio, detached: true });
    await answer(10 * PATIENCE);
  };
  const stop = () => {
    if (host) process.kill(-host.pid, 'SIGKILL');
    host = undefined;
  };
  return {
    /** Whether one file of tests fails, with a fault where one is given; what happened, and how long it took, ms. */
    async run(test, expected, fault) {
      if (!host) await start();
      host.send({ test: resolve(test), ...(fault && { ...fault, file: resolve(fault.file) }) });
      const said = await answer(SLOWER * expected + PATIENCE);
      if (said.wrong) throw new Error(said.wrong);
      if (typeof said !== 'string') return said;
      stop();
      if (said === 'breaks off') throw new Error(`the run of ${test} broke off`);
      return { failed: said, ms: Infinity };
    },
    stop,
  };
}
