import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { MOST_FROM_ONE } from '../../../src/serve/localServer.js';
import { stageOf } from '../../../src/shop/log/state.js';
import { shopFrom, type ToldShop } from '../../../src/shop/report/wholeShop.js';
import { box, event, NOON, rescueBlocks, step } from '../rescueBoard.js';
import { databaseOf, opened } from '../store/scratch.js';
import { ask, pageHeaders, SHARED_AT, started, type Answered } from './local.js';

const json = <T>({ text }: Answered) => JSON.parse(text) as T;

/** Reads a stream of server-sent events until a text has come. */
async function heard(
  port: number,
  token: string,
  after: number,
  until: RegExp,
  meanwhile: () => Promise<unknown>,
): Promise<string> {
  const stop = new AbortController();
  const response = await fetch(`http://127.0.0.1:${port}/api/changes?after=${after}`, {
    headers: { Authorization: `Bearer ${token}` },
    signal: stop.signal,
  });
  expect(response.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
  const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
  await meanwhile();
  let text = '';
  while (!until.test(text)) text += (await reader.read()).value ?? '';
  stop.abort();
  return text;
}

describe('the tracker’s server', async () => {
  const { server, store, token, folder } = await started();
  const { port } = server;
  const good = pageHeaders(port, token);
  const post = (path: string, body: unknown) =>
    ask(port, { path, method: 'POST', headers: good, body: JSON.stringify(body) });
  const whole = async () => shopFrom(json<ToldShop>(await ask(port, { path: '/api/shop', headers: good })));

  it('tells the whole shop: job, blocks, where each stands', async () => {
    const told = await whole();
    expect(told).toMatchObject({
      job: 'Rescue board 12',
      units: 'mm',
      plan: 1,
      role: 'owner',
      shared: false,
      refits: new Map(),
    });
    expect(told.blocks).toEqual(rescueBlocks());
  });

  it('takes a delivery, once, and says what became of each event', async () => {
    const events = [
      event({ seq: 1, what: step('R2-07', 'cut') }),
      { nonsense: true },
      event({ seq: 2, what: step('R2-08', 'cut') }),
    ];
    const first = json<{ outcomes: unknown[] }>(await post('/api/events', { sentAt: NOON, events }));
    expect(first.outcomes).toEqual([
      { client: 'phone-one', seq: 1, became: 'stored' },
      { client: 'phone-one', seq: 2, became: 'stored' },
      { index: 1, became: 'refused', why: expect.stringContaining('client') },
    ]);
    const again = json<{ outcomes: { became: string }[] }>(
      await post('/api/events', { sentAt: NOON, events: events.slice(0, 1) }),
    );
    expect(again.outcomes.map(({ became }) => became)).toEqual(['again']);
    expect(await store.eventsAfter(0)).toHaveLength(2);
    expect(stageOf((await whole()).state.blocks.get('R2-07'))).toBe('cut');
  });

  it.each([
    ['an unknown step', { what: { kind: 'step', block: 'R2-07', step: 'painted', done: true } }],
    ['a block number with a slash', { what: step('../R2', 'cut') }],
    ['a block the plan never had', { what: step('R9-99', 'cut') }],
    ['a block that is called __proto__', { what: step('__proto__', 'cut') }],
    ['a block that is called constructor', { what: step('constructor', 'cut') }],
    ['the clock of a batch that is called __proto__', { what: { kind: 'timer', batch: '__proto__', minutes: 20 } }],
    ['a time before all clocks', { at: -9e15 }],
    ['a time no calendar has', { at: 8.7e15 }],
    ['a note that is empty', { what: { kind: 'note', block: 'R2-07', text: '' } }],
    ['a note with control characters', { what: { kind: 'note', block: 'R2-07', text: 'a\u001b[2J' } }],
    ['a note of 2001 letters', { what: { kind: 'note', block: 'R2-07', text: 'a'.repeat(2001) } }],
    ['a name of 61 letters', { who: 'a'.repeat(61) }],
    ['a number of 0', { seq: 0 }],
    ['half a number', { seq: 1.5 }],
    ['more than an event has', { extra: 1 }],
    ['a clock of two days', { what: { kind: 'timer', batch: 'R2', minutes: 2880 } }],
  ])('refuses %s and nothing beside it', async (_, wrong) => {
    const before = (await store.eventsAfter(0)).length;
    const events = [{ ...event({ seq: 900, what: step('R2-07', 'cut') }), ...wrong }];
    const { outcomes } = json<{ outcomes: { became: string }[] }>(await post('/api/events', { sentAt: NOON, events }));
    expect(outcomes.map(({ became }) => became)).toEqual(['refused']);
    expect(await store.eventsAfter(0)).toHaveLength(before);
  });

  it('refuses a delivery whose own clock makes no sense', async () => {
    const events = [event({ seq: 901, what: step('R2-07', 'cut') })];
    for (const sentAt of [-9e15, 9e15, 1.5]) expect((await post('/api/events', { sentAt, events })).status).toBe(400);
  });

  it('tells those who listen, what they missed first', async () => {
    const text = await heard(port, token, 1, /R2-10/, () =>
      post('/api/events', { sentAt: NOON, events: [event({ seq: 3, what: step('R2-10', 'cut') })] }),
    );
    expect([...text.matchAll(/^id: (\d+)$/gm)].map(([, id]) => id)).toEqual(['2', '3']);
    expect(text).toMatch(/^event: happened\ndata: \{.*"block":"R2-08".*\}$/m);
  });

  it('tells those who listen what another program recorded', async () => {
    const other = await opened(store.path);
    const text = await heard(
      port,
      token,
      store.state.last,
      /R1-19/,
      async () =>
        await other.append(
          [event({ client: 'command-1', seq: 1, via: 'command', what: step('R1-19', 'marked') })],
          NOON,
          NOON,
        ),
    );
    expect(text).toContain('"via":"command"');
    await other.close();
  });

  it('keeps photos that are photos', async () => {
    const png = Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
      'base64',
    );
    const { photo } = json<{ photo: string }>(await post('/api/photos', { base64: png.toString('base64') }));
    const back = await ask(port, { path: `/api/photos/${photo}`, headers: good });
    expect(back.headers['content-type']).toBe('image/png');
    expect((await post('/api/photos', { base64: Buffer.from('<svg onload="x"/>').toString('base64') })).status).toBe(
      400,
    );
    expect((await post('/api/photos', { base64: 'not base64!' })).status).toBe(400);
  });

  it('gives the list as CSV', async () => {
    const list = await ask(port, { path: '/api/list.csv', headers: good });
    expect(list.headers['content-type']).toBe('text/csv; charset=utf-8');
    expect(list.text.split('\r\n')).toHaveLength(107);
  });

  it('says in words that the disk is full, with 507, and takes the same delivery later', async () => {
    const pages = (databaseOf(store).pragma('page_count') as { page_count: number }[])[0]!.page_count;
    databaseOf(store).pragma(`max_page_count = ${pages}`);
    const events = Array.from({ length: 50 }, (_, i) =>
      event({ client: 'phone-full', seq: i + 1, what: { kind: 'note', block: 'R2-07', text: 'x'.repeat(1500) } }),
    );
    const full = await post('/api/events', { sentAt: NOON, events });
    expect(full.status).toBe(507);
    expect(json<{ error: string }>(full).error).toMatch(/The disk is full[\s\S]*Free some space/);
    databaseOf(store).pragma('max_page_count = 1000000');
    const { outcomes } = json<{ outcomes: { became: string }[] }>(await post('/api/events', { sentAt: NOON, events }));
    expect(new Set(outcomes.map(({ became }) => became))).toEqual(new Set(['stored']));
  });

  it('puts a changed plan in force and says what it does to the blocks in hand', async () => {
    const changed = [box('R2-07', 150, 90, 40), ...rescueBlocks().filter(({ id }) => id !== 'R2-07' && id !== 'R2-10')];
    const text = await heard(port, token, store.state.last, /event: reload/, async () =>
      server.replacePlan('Rescue board 12', changed, 'mm'),
    );
    expect(text).toContain('event: reload');
    const told = await whole();
    expect(told.plan).toBe(2);
    expect(Object.fromEntries(told.refits)).toMatchObject({
      'R2-10': { kind: 'unused' },
      'R2-07': { to: { length: 150, height: 90, thickness: 40 } },
    });
    expect(stageOf(told.state.blocks.get('R2-10'))).toBe('cut');
    const late = event({
      client: 'phone-late',
      seq: 1,
      what: { kind: 'note', block: 'R2-10', text: 'pressed before' },
    });
    const { outcomes } = json<{ outcomes: { became: string }[] }>(
      await post('/api/events', { sentAt: NOON, events: [late] }),
    );
    expect(outcomes[0]!.became, 'what waited on a phone about a block that has left the plan').toBe('stored');
  });

  it('remembers its port for the next time, and takes another where it is taken', async () => {
    const { store: other } = await started({ port }, join(folder, 'other.tracker.db'));
    expect(await other.setting('port')).toBeUndefined();
    expect(await store.setting('port')).toBe(String(port));
  });
});

describe('a tracker shared in the network', async () => {
  const shown: string[] = [];
  const { server, store, token, code } = await started({ share: SHARED_AT, codeChanged: (link) => shown.push(link) });
  const { port } = server;
  const tryCode = (typed: string, at = SHARED_AT) =>
    ask(port, {
      at,
      path: '/api/session',
      method: 'POST',
      headers: { Origin: `http://${at}:${port}`, 'Content-Type': 'application/json' },
      body: JSON.stringify({ code: typed }),
    });

  it('lets a phone in by the code, once, and shows another', async () => {
    const first = code();
    const answer = await tryCode(first);
    expect(answer.status).toBe(200);
    const { token: phone } = json<{ token: string }>(answer);
    const told = await ask(port, { at: SHARED_AT, path: '/api/shop', headers: pageHeaders(port, phone, SHARED_AT) });
    expect(json<ToldShop>(told)).toMatchObject({ role: 'phone', shared: true });
    expect((await tryCode(first)).status).toBe(403);
    expect(code()).not.toBe(first);
    expect(shown).toEqual([server.phoneLink()]);
  });

  it('shows the code to the owner alone, as a picture too', async () => {
    const { token: phone } = json<{ token: string }>(await tryCode(code()));
    expect(
      (await ask(port, { at: SHARED_AT, path: '/api/code', headers: pageHeaders(port, phone, SHARED_AT) })).status,
    ).toBe(403);
    const own = json<{ address: string; code: string; svg: string }>(
      await ask(port, { path: '/api/code', headers: pageHeaders(port, token) }),
    );
    expect(own).toMatchObject({ address: `http://${SHARED_AT}:${port}/shop/`, code: code() });
    expect(own.svg).toMatch(/^<svg /);
  });

  it('makes guessing wait', async () => {
    const answers = [];
    for (let i = 0; i < 8; i++) answers.push(await tryCode('00000-00000'));
    expect(answers.map(({ status }) => status)).toEqual([403, 403, 403, 403, 403, 429, 429, 429]);
    expect(Number(answers.at(-1)!.headers['retry-after'])).toBeGreaterThan(0);
    expect((await tryCode(code())).status).toBe(429);
  });

  it('forgets its phones when told to', async () => {
    vi.useFakeTimers({ now: Date.now() + 120_000, toFake: ['Date'] });
    const { token: phone } = json<{ token: string }>(await tryCode(code()));
    vi.useRealTimers();
    const asked = () => ask(port, { at: SHARED_AT, path: '/api/shop', headers: pageHeaders(port, phone, SHARED_AT) });
    expect((await asked()).status).toBe(200);
    // A page that listens is hung up on at once, and not only at its next question.
    const stream = await fetch(`http://${SHARED_AT}:${port}/api/changes?after=0`, {
      headers: { Authorization: `Bearer ${phone}` },
    });
    await store.forgetSessions();
    for await (const part of stream.body!) void part;
    expect((await asked()).status).toBe(401);
  });
});

describe('an address that holds many connections open', async () => {
  const { server } = await started({ share: SHARED_AT });
  it('is hung up on beyond thirty, and the builder’s own page is still served', async () => {
    let hungUp = 0;
    const sockets = Array.from({ length: MOST_FROM_ONE + 20 }, () =>
      connect(server.port, SHARED_AT)
        .on('close', () => hungUp++)
        .on('error', () => undefined),
    );
    await vi.waitFor(() => expect(hungUp).toBe(20), { timeout: 30_000 });
    expect((await ask(server.port, { path: '/api/shop' })).status).toBe(401);
    for (const socket of sockets) socket.destroy();
  });
});

describe('a tracker that is not shared', async () => {
  const { server, token } = await started();
  it('listens to this machine alone and lets nobody in by any code', async () => {
    await expect(ask(server.port, { at: SHARED_AT, path: '/shop/' })).rejects.toThrow('ECONNREFUSED');
    const tried = await ask(server.port, {
      path: '/api/session',
      method: 'POST',
      headers: { Origin: `http://127.0.0.1:${server.port}`, 'Content-Type': 'application/json' },
      body: '{"code":"00000-00000"}',
    });
    expect(tried.status).toBe(403);
    expect((await ask(server.port, { path: '/api/code', headers: pageHeaders(server.port, token) })).status).toBe(409);
    expect(server.phoneLink()).toBeUndefined();
  });
});
