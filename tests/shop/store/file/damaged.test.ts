import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fieldsOf } from '../../../../src/shop/store/eventRow.js';
import { openFile } from '../../../../src/shop/store/file/openFile.js';
import { PAGE } from '../../../../src/shop/store/file/pages.js';
import { sayInLines } from '../../../../src/finding/say.js';
import { sealOf } from '../../../../src/shop/store/file/seal.js';
import { STEPS } from '../../../../src/shop/log/step.js';
import { event, NOON, rescueBlocks, step } from '../../rescueBoard.js';
import { closedForGood, opened, scratchFolder } from '../scratch.js';

const folder = scratchFolder(true);
const TRIALS = 500;
const SEED = 20261126;

const blocks = rescueBlocks();
const path = join(folder, 'sound.tracker.db');
const written = new Map<string, string>();
const photo = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), Buffer.alloc(20_000, 7)]);

/** A tracker as it is after a few days: 600 entries, long notes, two plans, a photo, phones. */
async function begun(): Promise<void> {
  const store = await opened(path);
  await store.recordPlan('Rescue 12', blocks, NOON);
  await store.recordPlan('Rescue 12', blocks.slice(1), NOON);
  for (let from = 0; from < 600; from += 20) {
    const events = Array.from({ length: 20 }, (_, i) => {
      const seq = from + i + 1;
      const { id } = blocks[seq % blocks.length]!;
      const note = { kind: 'note', block: id, text: `Nr. ${seq}: täglich ☂ ${'x'.repeat((seq * 37) % 1500)}` } as const;
      return event({
        client: `phone-${'abc'[seq % 3]!}-one`,
        seq,
        what: seq % 10 === 0 ? note : step(id, STEPS[seq % 5]!),
      });
    });
    await store.append(events, NOON, NOON);
  }
  await store.addPhoto({ type: 'image/jpeg', bytes: photo }, NOON);
  await store.addSession('token', NOON);
  await store.setSetting('port', '4718');
  for (const one of await store.eventsAfter(0)) written.set(`${one.client} ${one.seq}`, JSON.stringify(fieldsOf(one)));
  await closedForGood(store);
}

await begun();
const sound = readFileSync(path);
const hasRecover = spawnSync('sqlite3', ['--version']).status === 0;

describe('a damaged tracker file', () => {
  it(`opens after each of ${TRIALS} damages, of one byte to whole pages, and shows no row that was not written`, async () => {
    const random = randomFrom(SEED);
    const counts = { whole: 0, saved: 0, lost: 0, fewerThanRecover: 0 };
    for (let trial = 0; trial < TRIALS; trial++) {
      const name = join(folder, `trial-${trial}.tracker.db`);
      const bytes = damaged(random);
      writeFileSync(name, bytes);
      const result = await openFile(name);
      if (!result.ok) throw new Error(`trial ${trial}: ${sayInLines(result.problem)}`);
      const { store } = result;
      const events = await store.eventsAfter(0);
      const odd = events.filter((one) => written.get(`${one.client} ${one.seq}`) !== JSON.stringify(fieldsOf(one)));
      expect(odd, `trial ${trial}: rows that nobody wrote`).toEqual([]);
      const asides = readdirSync(folder).filter((other) => other.startsWith(`trial-${trial}.tracker.db.damaged-`));
      if (asides.length > 0) {
        expect(readFileSync(join(folder, asides[0]!)).equals(bytes), 'the damaged file lies as it was found').toBe(
          true,
        );
        const missing = written.size - events.length;
        const said = result.notices.join('\n');
        expect(said).toContain(`${events.length} entries could be read`);
        if (missing > 0 && /Not to be read/.test(said)) counts.lost += missing;
        if (trial % 10 === 0 && hasRecover) {
          const theirs = savedByRecover(join(folder, asides[0]!));
          if (events.length < theirs) counts.fewerThanRecover++;
        }
        counts.saved++;
      } else {
        // Where nothing was noticed, nothing is missing.
        expect(events).toHaveLength(written.size);
        counts.whole++;
      }
      expect((await store.append([event({ seq: 9000, what: step('R2-07', 'cut') })], NOON, NOON)).ok).toBe(true);
      await store.close();
      for (const other of readdirSync(folder))
        if (other.startsWith(`trial-${trial}.`)) rmSync(join(folder, other), { force: true });
    }
    expect(counts.fewerThanRecover).toBe(0);
    expect(counts.saved, 'most damages are noticed, or this proves nothing').toBeGreaterThan(TRIALS / 2);
  }, 1_200_000);

  it('one byte inside a note: the note is lost and told, everything else is there', async () => {
    const name = join(folder, 'note.tracker.db');
    const bytes = Buffer.from(sound);
    const at = bytes.indexOf('Nr. 40: ');
    bytes[at + 2] = 0xff;
    writeFileSync(name, bytes);
    const result = await openFile(name);
    if (!result.ok) throw new Error(sayInLines(result.problem));
    expect(result.notices.join('\n')).toMatch(
      /was damaged\. It was put aside as .*; 599 entries could be read from it and taken over\. Not to be read any more: entry 40\./,
    );
    expect(await result.store.eventsAfter(0)).toHaveLength(599);
    expect(await result.store.plans()).toHaveLength(2);
    expect(await result.store.isSession('token', NOON)).toBe(true);
    expect(await result.store.setting('port')).toBe('4718');
    expect((await result.store.content()).photos[0]!.bytes.length).toBe(photo.length);
    await closedForGood(result.store);
  });

  it('one letter of a note changed into another: it is not shown as if somebody had written that', async () => {
    const name = join(folder, 'letter.tracker.db');
    const bytes = Buffer.from(sound);
    bytes.write('Mr. 40: ', bytes.indexOf('Nr. 40: '));
    writeFileSync(name, bytes);
    const store = await opened(name);
    expect((await store.eventsAfter(0)).some(({ seq }) => seq === 40)).toBe(false);
    await closedForGood(store);
  });

  it('a number of a lost entry is not given again', async () => {
    const name = join(folder, 'last.tracker.db');
    const bytes = Buffer.from(sound);
    bytes[bytes.indexOf('Nr. 600: ')] = 0xff;
    writeFileSync(name, bytes);
    const store = await opened(name);
    await store.append([event({ seq: 9000, what: step('R2-07', 'cut') })], NOON, NOON);
    expect((await store.eventsAfter(598)).map(({ number }) => number)).toEqual([599, 601]);
    await closedForGood(store);
  });
});

/** The file with damage somewhere: a byte, a few, a stretch, a page, several pages, its end. */
describe('a tracker file that was cut short', () => {
  // SQLite's own check passes over the end of a plan that runs over several pages; reading it is an error of the disk
  // (SQLITE_IOERR_SHORT_READ).
  it('is put aside and read as far as it goes, wherever it ends', async () => {
    const base = join(folder, 'short-base.tracker.db');
    const store = await opened(base);
    await store.recordPlan('Rescue 12', blocks, NOON);
    await store.append([event({ seq: 1, what: step('R2-07', 'cut') })], NOON, NOON);
    await closedForGood(store);
    const whole = readFileSync(base);
    for (let end = PAGE / 2; end < whole.length; end += PAGE) {
      const name = join(folder, `short-${end}.tracker.db`);
      writeFileSync(name, whole.subarray(0, end));
      const result = await openFile(name);
      if (!result.ok) throw new Error(`${end} of ${whole.length}: ${sayInLines(result.problem)}`);
      expect(result.notices.join(), String(end)).toContain('was damaged');
      await closedForGood(result.store);
    }
  });
});

function damaged(random: () => number): Buffer {
  const bytes = Buffer.from(sound);
  const upTo = (count: number) => Math.floor(random() * count);
  const spoil = (from: number, length: number, byte = () => upTo(256)) => {
    for (let i = from; i < Math.min(from + length, bytes.length); i++) bytes[i] = byte();
  };
  const pages = bytes.length / PAGE;
  const kind = upTo(8);
  if (kind === 0) spoil(upTo(bytes.length), 1, () => 0xff);
  else if (kind === 1) spoil(upTo(bytes.length), 1);
  else if (kind === 2) for (let i = 0; i < 8; i++) spoil(upTo(bytes.length), 1);
  else if (kind === 3) spoil(upTo(bytes.length), 1 + upTo(200));
  else if (kind === 4) spoil(upTo(pages) * PAGE, PAGE);
  else if (kind === 5) spoil(upTo(pages) * PAGE, PAGE, () => 0);
  else if (kind === 6) for (let i = 0; i < 4; i++) spoil(upTo(pages) * PAGE, PAGE);
  else return bytes.subarray(0, 1 + upTo(bytes.length - 1));
  return bytes;
}

/**
 * How many whole rows SQLite's own recovery finds in a file (sqlite.org/recovery.html): those whose check sum still
 * agrees.
 */
function savedByRecover(file: string): number {
  const copy = join(folder, 'recover.db');
  copyFileSync(file, copy);
  const sql = spawnSync('sqlite3', [copy, '.recover'], { maxBuffer: 1e9 }).stdout;
  const out = join(folder, 'recovered.db');
  rmSync(out, { force: true });
  spawnSync('sqlite3', [out], { input: sql, maxBuffer: 1e9 });
  const columns = 'number, hex(client), seq, seen, plan, at, hex(who), hex(via), hex(what), received, happened, seal';
  const rows = spawnSync('sqlite3', ['-json', out, `SELECT ${columns} FROM event`], {
    maxBuffer: 1e9,
  }).stdout.toString();
  const whole = (JSON.parse(rows || '[]') as Record<string, unknown>[]).filter((row) => {
    const fields = Object.entries(row).map(([name, value]) =>
      name.startsWith('hex') ? Buffer.from(String(value), 'hex').toString() : (value as number),
    );
    return sealOf(fields.slice(0, -1)) === fields.at(-1);
  });
  return whole.length;
}

/** A repeatable stream of numbers in 0..1, from a hash of the seed and a count. */
function randomFrom(seed: number): () => number {
  let count = 0;
  return () => createHash('sha256').update(`${seed} ${count++}`).digest().readUInt32BE(0) / 2 ** 32;
}
