// How fast the tracker is: node scripts/bench-shop.mjs [SECONDS]   (after `npx tsc -p tsconfig.build.json`)
// 20 devices, 50 events/s together, every device listening; then the time to open a tracker of 100,000 events.
/* global fetch, AbortController, TextDecoderStream */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { startShopServer } from '../dist/src/shop/server/shopServer.js';
import { openFile } from '../dist/src/shop/store/file/openFile.js';

const SECONDS = Number(process.argv[2] ?? 60);
const DEVICES = 20;
const EVENTS_A_SECOND = 50;
const EVENTS = 100_000;
const STEPS = ['marked', 'cut', 'sanded', 'dry-fitted', 'glued'];
const folder = mkdtempSync(join(tmpdir(), 'chamberwright-bench-'));
const blocks = ['R1', 'R2', 'R3', 'L1', 'L2', 'L3'].flatMap((row) =>
  Array.from({ length: 18 }, (_, i) => ({
    id: `${row}-${String(i + 1).padStart(2, '0')}`,
    row,
    place: i + 1,
    side: row[0],
    sizes: { length: 180, height: 100, thickness: 45 },
    outline: [
      [0, 0],
      [180, 0],
      [180, 100],
      [0, 100],
    ],
  })),
);
const press = (client, seq) => ({
  client,
  seq,
  seen: 0,
  plan: 1,
  at: Date.now(),
  who: '',
  via: 'page',
  what: { kind: 'step', block: blocks[seq % blocks.length].id, step: STEPS[seq % 5], done: true },
});

try {
  await load();
  await open();
} finally {
  rmSync(folder, { recursive: true, force: true });
}

async function load() {
  const { store } = await openFile(join(folder, 'load.tracker.db'));
  const failed = (error) => console.error(error);
  const server = await startShopServer({
    store,
    job: 'bench',
    units: 'mm',
    blocks,
    pageFolder: folder,
    port: 0,
    failed,
  });
  const origin = `http://127.0.0.1:${server.port}`;
  const token = server.ownerLink.split('#token=')[1];
  const headers = { Authorization: `Bearer ${token}`, 'Content-Type': 'application/json', Origin: origin };
  const answered = [];
  const shown = [];
  const sentAt = new Map();
  const stop = new AbortController();
  for (let device = 0; device < DEVICES; device++)
    void listen(`${origin}/api/changes?after=0`, headers, stop.signal, sentAt, shown);
  const end = Date.now() + SECONDS * 1000;
  await Promise.all(
    Array.from({ length: DEVICES }, async (_, device) => {
      const client = `device-${String(device).padStart(2, '0')}`;
      const every = (1000 * DEVICES) / EVENTS_A_SECOND;
      await setTimeout((device * every) / DEVICES);
      for (let seq = 1, due = Date.now(); Date.now() < end; seq++, due += every) {
        await setTimeout(Math.max(0, due - Date.now()));
        const begun = performance.now();
        sentAt.set(`${client} ${seq}`, begun);
        const body = JSON.stringify({ sentAt: Date.now(), events: [press(client, seq)] });
        const response = await fetch(`${origin}/api/events`, { method: 'POST', headers, body });
        await response.json();
        if (response.status !== 200) throw new Error(`status ${response.status}`);
        answered.push(performance.now() - begun);
      }
    }),
  );
  await setTimeout(1000);
  stop.abort();
  console.log(`${answered.length} events in ${SECONDS} s from ${DEVICES} devices, ${store.state.last} in the file`);
  console.log(`acknowledged:         ${percentiles(answered)}`);
  console.log(`shown on each device: ${percentiles(shown)}`);
  await server.close();
  await store.close();
}

async function listen(url, headers, signal, sentAt, shown) {
  try {
    const response = await fetch(url, { headers: { Authorization: headers.Authorization }, signal });
    let text = '';
    for await (const part of response.body.pipeThrough(new TextDecoderStream())) {
      const messages = (text + part).split('\n\n');
      text = messages.pop();
      for (const message of messages) {
        const data = /^event: happened\ndata: (.*)$/m.exec(message)?.[1];
        if (data === undefined) continue;
        const { client, seq } = JSON.parse(data);
        shown.push(performance.now() - sentAt.get(`${client} ${seq}`));
      }
    }
  } catch (error) {
    if (!signal.aborted) throw error;
  }
}

async function open() {
  const path = join(folder, 'long.tracker.db');
  const { store } = await openFile(path);
  for (let from = 0; from < EVENTS; from += 1000) {
    await store.append(
      Array.from({ length: 1000 }, (_, i) => press(`device-${(from / 1000) % DEVICES}-long`, from + i + 1)),
      Date.now(),
      Date.now(),
    );
  }
  await store.close();
  const times = [];
  for (let i = 0; i < 5; i++) {
    const begun = performance.now();
    const { store: again } = await openFile(path);
    const took = performance.now() - begun;
    if (again.state.last !== EVENTS) throw new Error(`${again.state.last} events`);
    await again.close();
    times.push(took);
  }
  console.log(`a tracker of ${EVENTS} events opens in ${times.map((ms) => `${Math.round(ms)} ms`).join(', ')}`);
}

function percentiles(times) {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share) => `${sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))].toFixed(1)} ms`;
  return `median ${at(0.5)}, 95 % ${at(0.95)}, 99 % ${at(0.99)}, longest ${at(1)}`;
}
