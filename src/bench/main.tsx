import { render } from 'preact';
import { App } from './App.js';
import { Bench } from './state/bench.js';
import './bench.css';
import { PlanFeed } from './plan/feed.js';
import { Practice } from './practice.js';
import { Jobs, tokenFrom } from './save/jobs.js';

const root = document.getElementById('bench')!;

start().catch((error: unknown) => {
  root.textContent = (error as Error).message;
  root.setAttribute('role', 'alert');
});

async function start(): Promise<void> {
  const worker = new Worker(new URL('./plan/worker.ts', import.meta.url), { type: 'module' });
  const jobs = new Jobs(tokenFrom(location, sessionStorage));
  const list = await jobs.list();
  const file = await jobs.read(list.opened);
  const feed = new PlanFeed(
    worker,
    (answer) => (answer.which === 'practice' ? practice.arrived() : bench.arrived(answer)),
    (why) =>
      bench.show({
        said: `The plan could not be made: ${why}. This is a fault in the program, not in your job; please keep the job file.`,
      }),
    (count) => bench.counted(count),
  );
  const bench = new Bench(file, feed);
  const practice = new Practice(bench, feed);
  root.textContent = '';
  practice.begin();
  render(<App bench={bench} jobs={jobs} list={list} />, root);
}
