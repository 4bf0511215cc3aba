import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderRoute } from '../../../src/serve/pageRoutes.js';
import { OWNER } from '../../../src/serve/route.js';
import { scratchFolder } from '../store/scratch.js';
import { ask, pageHeaders, SHARED_AT, started, type Asked } from './local.js';

const job = scratchFolder();
mkdirSync(join(job, 'page/sub'), { recursive: true });
writeFileSync(join(job, 'page/index.html'), '<!doctype html><title>page</title>');
writeFileSync(join(job, 'page/sub/index.html'), 'sub');
writeFileSync(join(job, 'page/.hidden.html'), 'hidden');
writeFileSync(join(job, 'page/tracker.db'), 'unknown kind');
writeFileSync(join(job, 'secret.html'), 'SECRET');
symlinkSync(join(job, 'secret.html'), join(job, 'page/link.html'));
symlinkSync(job, join(job, 'page/up'));
const { server, store, token, folder, failures } = await started({
  pageFolder: join(job, 'page'),
  share: SHARED_AT,
  routes: [folderRoute('/folder/', join(job, 'page'), OWNER)],
});
const { port } = server;
const good = pageHeaders(port, token);

const ROUTES: readonly Asked[] = [
  { path: '/api/shop' },
  { path: '/api/changes?after=0' },
  { path: `/api/photos/${'0'.repeat(64)}` },
  { path: '/api/list.csv' },
  { path: '/api/code' },
  { path: '/api/nothing' },
  { path: '/folder/index.html' },
  { path: '/api/events', method: 'POST', body: JSON.stringify({ sentAt: 1, events: [] }) },
  { path: '/api/photos', method: 'POST', body: JSON.stringify({ base64: '' }) },
  { path: '/api/events', method: 'PUT' },
  { path: '/api/shop', method: 'DELETE' },
];

/** The good headers but one. */
function without(name: string): Record<string, string> {
  return Object.fromEntries(Object.entries(good).filter(([header]) => header !== name));
}

/** Asks each of these and counts the answers by status. */
async function statuses(list: readonly Asked[]): Promise<Record<number, number>> {
  const counts: Record<number, number> = {};
  for (const asked of list) {
    const { status } = await ask(port, asked);
    counts[status] = (counts[status] ?? 0) + 1;
  }
  return counts;
}

describe('who is refused', async () => {
  it('without a token, with a wrong, an empty or another scheme’s: every route, 401', async () => {
    const wrong = [
      undefined,
      'Bearer',
      'Bearer x',
      `Bearer ${token}x`,
      `Bearer ${'A'.repeat(43)}`,
      `Basic ${token}`,
      token,
      `bearer ${token}`,
    ];
    const list = ROUTES.flatMap((route) =>
      wrong.map((authorization) => {
        const others = without('Authorization');
        return {
          ...route,
          headers: authorization === undefined ? others : { ...others, Authorization: authorization },
        };
      }),
    );
    expect(list).toHaveLength(88);
    // Routes under /folder/ and all under /api/ are refused alike; nobody learns which of them there are.
    expect(await statuses(list)).toEqual({ 401: 88 });
  });

  it('the owner’s token over the network address is nobody’s', async () => {
    const { status } = await ask(port, {
      path: '/api/shop',
      at: SHARED_AT,
      headers: pageHeaders(port, token, SHARED_AT),
    });
    expect(status).toBe(401);
  });

  it('under another name: DNS rebinding, no port, another port, a prefix, a suffix', async () => {
    const hosts = [
      'lake.example',
      `lake.example:${port}`,
      '127.0.0.1',
      'localhost',
      `127.0.0.1:${port + 1}`,
      `127.0.0.1.lake.example:${port}`,
      `127.0.0.1:${port}.lake.example`,
      `localhost.:${port}`,
      `[::1]:${port}`,
      `0.0.0.0:${port}`,
      `x@127.0.0.1:${port}`,
    ];
    const list = [...ROUTES, { path: '/' }, { path: '/shop/' }].flatMap((route) =>
      hosts.map((host) => ({ ...route, headers: { ...good, Host: host } })),
    );
    expect(list).toHaveLength(143);
    expect(await statuses(list)).toEqual({ 421: 143 });
  });

  it('without a Host, or with two of them', async () => {
    const raw = (lines: readonly string[]) =>
      new Promise<string>((resolve, reject) => {
        const socket = connect(port, '127.0.0.1', () =>
          socket.write([...lines, 'Connection: close', '', ''].join('\r\n')),
        );
        let text = '';
        socket.on('data', (part) => (text += part));
        socket.on('end', () => resolve(text.split('\r\n')[0]!));
        socket.on('error', reject);
      });
    const bearer = `Authorization: Bearer ${token}`;
    expect(await raw(['GET /api/shop HTTP/1.1', bearer])).toMatch(/ 400 /);
    expect(await raw(['GET /api/shop HTTP/1.0', bearer])).toMatch(/ 421 /);
    expect(await raw(['GET /api/shop HTTP/1.1', `Host: 127.0.0.1:${port}`, 'Host: lake.example', bearer])).toMatch(
      / 4(00|21) /,
    );
    expect(await raw(['GET /api/shop HTTP/1.1', `Host: 127.0.0.1:${port}`, bearer])).toMatch(/ 200 /);
  });

  it('from another page: its origin, the null origin, another port, https, and writing with none', async () => {
    const origins = [
      'http://lake.example',
      'null',
      `http://127.0.0.1:${port + 1}`,
      `https://127.0.0.1:${port}`,
      'http://127.0.0.1',
      `http://localhost:${port}`,
      `http://127.0.0.1:${port}/`,
      `http://127.0.0.1:${port}.lake.example`,
    ];
    const list = ROUTES.flatMap((route) =>
      origins.map((origin) => ({ ...route, headers: { ...good, Origin: origin } })),
    );
    expect(list).toHaveLength(88);
    expect(await statuses(list)).toEqual({ 403: 88 });
    const silent = without('Origin');
    expect(
      await statuses(
        ROUTES.filter(({ method }) => method !== undefined).map((route) => ({ ...route, headers: silent })),
      ),
    ).toEqual({ 403: 4 });
  });

  it('what the browser itself says comes from another site or another page of this machine', async () => {
    const list = ROUTES.filter(({ path }) => path.startsWith('/api/')).flatMap((route) =>
      ['cross-site', 'same-site', 'none'].map((site) => ({ ...route, headers: { ...good, 'Sec-Fetch-Site': site } })),
    );
    expect(list).toHaveLength(30);
    expect(await statuses(list)).toEqual({ 403: 30 });
    const preflight = await ask(port, {
      method: 'OPTIONS',
      path: '/api/events',
      headers: { Origin: 'http://lake.example', 'Access-Control-Request-Method': 'POST' },
    });
    expect(preflight.status).toBe(403);
    expect(Object.keys(preflight.headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
  });
});

describe('what is refused', async () => {
  it('a body that is not JSON by name, or not JSON', async () => {
    const post = (type: string | undefined, body: string | Buffer): Asked => {
      const others = without('Content-Type');
      return {
        path: '/api/events',
        method: 'POST',
        body,
        headers: type === undefined ? others : { ...others, 'Content-Type': type },
      };
    };
    const delivery = JSON.stringify({ sentAt: 1, events: [] });
    const types = [
      undefined,
      'text/plain',
      'application/x-www-form-urlencoded',
      'multipart/form-data',
      'application/jsonp',
      'text/json',
      'text/plain; application/json',
    ];
    expect(await statuses(types.map((type) => post(type, delivery)))).toEqual({ 415: 7 });
    const broken = [
      '',
      '{',
      'null',
      '[]',
      '{"sentAt":1}',
      '{"sentAt":"1","events":[]}',
      '{"sentAt":1,"events":[],"more":1}',
      Buffer.from([0x22, 0xff, 0x22]),
    ];
    expect(await statuses(broken.map((body) => post('application/json', body)))).toEqual({ 400: 8 });
    expect(await statuses([post('application/json; charset=utf-8', delivery)])).toEqual({ 200: 1 });
  });

  it('bodies that are too long, whether they say so or not', async () => {
    const long = (path: string, bytes: number, more: Record<string, string> = {}) => ({
      path,
      method: 'POST',
      body: Buffer.alloc(bytes, 0x20),
      headers: { ...good, ...more },
    });
    const list = [
      long('/api/events', 1_000_001),
      long('/api/events', 3_000_000, { 'Transfer-Encoding': 'chunked' }),
      long('/api/photos', 8_000_001),
      long('/api/session', 1_001),
    ];
    expect(await statuses(list)).toEqual({ 413: 4 });
    const many = JSON.stringify({ sentAt: 1, events: Array.from({ length: 201 }, () => ({})) });
    expect(await statuses([{ path: '/api/events', method: 'POST', headers: good, body: many }])).toEqual({ 400: 1 });
  });

  it('every way out of the served folder, in any spelling', async () => {
    const ways = [
      '../secret.html',
      '..%2fsecret.html',
      '%2e%2e/secret.html',
      '%2e%2e%2fsecret.html',
      '.%2e/secret.html',
      'sub/../../secret.html',
      '..\\secret.html',
      '..%5csecret.html',
      '%252e%252e%252fsecret.html',
      '..%c0%afsecret.html',
      '..%00/secret.html',
      'index.html%00.png',
      '%',
      '%zz',
      '//etc/hostname',
      '/etc/hostname',
      'link.html',
      'up/secret.html',
      '.hidden.html',
      'tracker.db',
      'C:/secret.html',
      'nothing.html',
    ];
    const list = ways.flatMap((way) => [`/shop/${way}`, `/folder/${way}`]).map((path) => ({ path, headers: good }));
    expect(list).toHaveLength(44);
    for (const asked of list) expect((await ask(port, asked)).text, asked.path).not.toMatch(/SECRET|hidden/);
    expect(await statuses(list)).toEqual({ 404: 44 });
    const targets = ['http://lake.example/api/shop', '*', `//${'127.0.0.1'}/shop/`, '/shop', '/../shop/'];
    const answers = await Promise.all(
      targets.map((path) => ask(port, { path, headers: good }).then(({ status }) => status)),
    );
    expect(answers).toEqual([404, 404, 404, 302, 404]);
  });

  it('and after all this nothing was recorded, nothing broke, and the good are still served', async () => {
    expect(await store.eventsAfter(0)).toEqual([]);
    expect(failures).toEqual([]);
    const page = await ask(port, { path: '/shop/' });
    expect(page.text).toContain('<title>page</title>');
    expect(page.headers['content-security-policy']).toMatch(/default-src 'none'.*frame-ancestors 'none'/);
    expect(page.headers['x-content-type-options']).toBe('nosniff');
    expect((await ask(port, { path: '/shop/sub/' })).text).toBe('sub');
    expect((await ask(port, { path: '/folder/', headers: good })).status).toBe(200);
    expect((await ask(port, { path: '/api/shop', headers: good })).status).toBe(200);
    expect(
      (
        await ask(port, {
          path: '/api/shop',
          headers: { ...good, Host: `localhost:${port}`, Origin: `http://localhost:${port}` },
        })
      ).status,
    ).toBe(200);
    expect(folder).not.toBe(job);
  });
});
