import { mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { startBenchServer, type BenchServer } from '../../src/open/server.js';

let folder: string;
let server: BenchServer;
let token: string;

beforeAll(async () => {
  const root = await mkdtemp(join(tmpdir(), 'bench-'));
  folder = join(root, 'jobs');
  await mkdir(folder);
  await mkdir(join(root, 'page'));
  await writeFile(join(root, 'page', 'index.html'), '<p>page</p>');
  await writeFile(join(root, 'secret.yaml'), 'job: not yours\n');
  await symlink(join(root, 'secret.yaml'), join(folder, 'link.yaml'));
  server = await startBenchServer({
    job: join(folder, 'heron.yaml'),
    pageFolder: join(root, 'page'),
    port: 0,
    failed: (error) => {
      throw error;
    },
  });
  token = server.link.split('#token=')[1]!;
});
beforeEach(async () => {
  await writeFile(join(folder, 'heron.yaml'), 'job: Heron\n');
  await writeFile(join(folder, 'heron.csv'), 'station,y,z,edge\n');
});
afterAll(async () => {
  await server.close();
  await rm(join(folder, '..'), { recursive: true, force: true });
});

interface Told {
  readonly status: number;
  readonly body: Record<string, unknown>;
}

/** Asks the server as anything on this machine could: every header as given. */
function ask(method: string, path: string, body?: unknown, headers: Record<string, string> = {}): Promise<Told> {
  const own = `127.0.0.1:${server.port}`;
  return new Promise((resolve, reject) => {
    const asked = request(
      {
        host: '127.0.0.1',
        port: server.port,
        method,
        path,
        headers: {
          Host: own,
          Authorization: `Bearer ${token}`,
          ...(method === 'GET' ? {} : { Origin: `http://${own}`, 'Content-Type': 'application/json' }),
          ...headers,
        },
      },
      (response) => {
        let text = '';
        response.setEncoding('utf8').on('data', (part: string) => (text += part));
        response.on('end', () => {
          let told: Record<string, unknown> = {};
          try {
            told = JSON.parse(text) as typeof told;
          } catch {
            told = { text };
          }
          resolve({ status: response.statusCode!, body: told });
        });
      },
    );
    asked.on('error', reject);
    asked.end(typeof body === 'string' ? body : body === undefined ? undefined : JSON.stringify(body));
  });
}

const job = () => ask('GET', '/api/bench/job?name=heron.yaml');

describe('the opened folder', () => {
  test('lists its job files, and no link that leads out of it', async () => {
    expect((await ask('GET', '/api/bench')).body).toEqual({ opened: 'heron.yaml', jobs: ['heron.yaml'] });
  });

  test('gives a job with its version and the tables beside it', async () => {
    const { body } = await job();
    expect(body).toMatchObject({
      name: 'heron.yaml',
      text: 'job: Heron\n',
      beside: { 'heron.csv': 'station,y,z,edge\n' },
    });
    expect(body['version']).toMatch(/^[0-9a-f]{64}$/);
  });

  test.each([
    '../secret.yaml',
    '..%2fsecret.yaml',
    '%2e%2e%2fsecret.yaml',
    'link.yaml',
    '/etc/passwd',
    '.hidden.yaml',
    'heron.yaml%00.csv',
    'c:%5csecret.yaml',
    '',
  ])('is not left by the name "%s"', async (name) => {
    const { status, body } = await ask('GET', `/api/bench/job?name=${name}`);
    expect([400, 403, 404]).toContain(status);
    expect(JSON.stringify(body)).not.toContain('not yours');
    const put = await ask('PUT', '/api/bench/job', { name: decodeURIComponent(name), text: 'x' });
    expect([400, 409, 500]).toContain(put.status);
    expect(await readFile(join(folder, '..', 'secret.yaml'), 'utf8')).toBe('job: not yours\n');
  });
});

describe('a save', () => {
  test('writes the text as it is, and leaves no other file behind', async () => {
    const { version } = (await job()).body;
    const text = 'job: Heron # étude 3/4"\r\n';
    expect((await ask('PUT', '/api/bench/job', { name: 'heron.yaml', text, basedOn: version })).body).toMatchObject({
      saved: true,
    });
    expect(await readFile(join(folder, 'heron.yaml'), 'utf8')).toBe(text);
    expect((await readdir(folder)).sort()).toEqual(['heron.csv', 'heron.yaml', 'link.yaml']);
  });

  test('over a file that has changed meanwhile writes nothing and gives that file', async () => {
    const { version } = (await job()).body;
    await writeFile(join(folder, 'heron.yaml'), 'job: changed by hand\n');
    const { status, body } = await ask('PUT', '/api/bench/job', {
      name: 'heron.yaml',
      text: 'job: mine\n',
      basedOn: version,
    });
    expect(status).toBe(409);
    expect(body).toMatchObject({ saved: false, theirs: { text: 'job: changed by hand\n' } });
    expect(await readFile(join(folder, 'heron.yaml'), 'utf8')).toBe('job: changed by hand\n');
  });

  test('under a name that is taken writes nothing', async () => {
    expect((await ask('PUT', '/api/bench/job', { name: 'heron.yaml', text: 'x' })).status).toBe(409);
    expect(await readFile(join(folder, 'heron.yaml'), 'utf8')).toBe('job: Heron\n');
  });

  test('of more than a job can be is refused', async () => {
    const { status } = await ask('PUT', '/api/bench/job', { name: 'heron.yaml', text: 'x'.repeat(9_000_000) }).catch(
      () => ({ status: 413 }),
    );
    expect(status).toBe(413);
  });

  test('that is not JSON, or not a save, is refused', async () => {
    expect((await ask('PUT', '/api/bench/job', 'name=heron.yaml', { 'Content-Type': 'text/plain' })).status).toBe(415);
    expect((await ask('PUT', '/api/bench/job', { name: 'heron.yaml' })).status).toBe(400);
    expect((await ask('PUT', '/api/bench/job', '{')).status).toBe(400);
  });
});

describe('who asks', () => {
  test('by a name of another machine is refused (DNS rebinding)', async () => {
    for (const Host of ['evil.example', `evil.example:${server.port}`, '127.0.0.1', 'localhost:1']) {
      expect((await ask('GET', '/api/bench', undefined, { Host })).status).toBe(421);
    }
  });

  test('from a page of another origin is refused, the null origin too', async () => {
    const { version } = (await job()).body;
    for (const Origin of ['http://evil.example', 'null', `https://127.0.0.1:${server.port}`, 'http://127.0.0.1:1']) {
      const { status } = await ask(
        'PUT',
        '/api/bench/job',
        { name: 'heron.yaml', text: 'x', basedOn: version },
        { Origin },
      );
      expect(status).toBe(403);
    }
    expect(await readFile(join(folder, 'heron.yaml'), 'utf8')).toBe('job: Heron\n');
  });

  test('without the token learns nothing', async () => {
    for (const Authorization of ['', 'Bearer wrong', `Basic ${token}`]) {
      expect((await ask('GET', '/api/bench', undefined, { Authorization })).status).toBe(401);
      expect((await ask('POST', '/api/bench/papers', {}, { Authorization })).status).toBe(401);
    }
  });

  test('gets the page itself, and is led to it from the bare address', async () => {
    expect((await ask('GET', '/bench/')).body).toEqual({ text: '<p>page</p>' });
    expect((await ask('GET', '/')).status).toBe(302);
    expect((await ask('GET', '/bench/..%2fsecret.yaml')).status).toBe(404);
  });
});
