import {
  appendFileSync,
  cpSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  symlinkSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { boardFolder, IN_THE_WAY } from './files.js';
import { called } from './called.js';

/** Every command that writes a file: how it is called so that it writes to `file`, and what such a file is called. */
const WRITERS: readonly (readonly [string, string, (job: string, file: string) => string[]])[] = [
  ['mesh', 'board.stl', (job, file) => ['mesh', job, '-o', file]],
  ['track export', 'list.csv', (job, file) => ['track', job, 'export', file]],
  ['papers', 'papers.pdf', (job, file) => ['papers', job, '-o', join(file, '..'), '--only', 'check']],
];

/** Everything in a folder: names, kinds, bytes. Two that are the same say that nothing was touched. */
const all = (folder: string) =>
  Object.fromEntries(
    readdirSync(folder)
      .filter((name) => !name.includes('.tracker.db'))
      .map((name) => {
        const at = lstatSync(join(folder, name));
        return [name, at.isFile() ? readFileSync(join(folder, name)).toString('base64') : `${at.mode} ${at.ino}`];
      }),
  );

describe.each(WRITERS)('%s', (_, name, args) => {
  test.each(IN_THE_WAY)('never writes onto %s', async (_, make) => {
    const { folder, job } = boardFolder();
    const file = join(folder, name);
    make(file, job);
    const before = all(folder);
    const { code, err } = await called(args(job, file));
    expect(code).toBe(2);
    expect(err).toContain(`${file}: `);
    expect(err).toContain('Nothing was written.');
    expect(all(folder)).toEqual(before);
  });

  test('writes over what it wrote itself, but not once that was edited', async () => {
    const { folder, job } = boardFolder();
    const file = join(folder, name);
    expect((await called(args(job, file))).code).toBe(0);
    expect((await called(args(job, file))).code).toBe(0);
    appendFileSync(file, 'L1-01,x\n');
    const before = all(folder);
    const { code, err } = await called(args(job, file));
    expect(code).toBe(2);
    expect(err).toContain(`${file}: it was changed since chamberwright wrote it`);
    expect(all(folder)).toEqual(before);
  });

  test('knows its file again where its name has other capitals, as on a disk that does not mind them', async () => {
    // Stands in for such a disk: the same bytes under the other name.
    const { folder, job } = boardFolder();
    const file = join(folder, name);
    expect((await called(args(job, file))).code).toBe(0);
    renameSync(file, join(folder, name.toUpperCase()));
    cpSync(join(folder, name.toUpperCase()), file);
    expect((await called(args(job, file))).code).toBe(0);
  });

  test('leaves the other name of a file alone that is linked to one of ours', async () => {
    const { folder, job } = boardFolder();
    const file = join(folder, name);
    expect((await called(args(job, file))).code).toBe(0);
    const kept = join(folder, 'kept');
    linkSync(file, kept);
    const before = readFileSync(kept);
    writeFileSync(job, readFileSync(job, 'utf8').replace(/^job:.*/m, 'job: another name'));
    expect((await called(args(job, file))).code).toBe(0);
    expect(readFileSync(kept).equals(before)).toBe(true);
  });

  test('writes nothing where its list of what it wrote is damaged or a link', async () => {
    const { folder, job } = boardFolder();
    const list = join(folder, '.chamberwright.json');
    for (const make of [() => writeFileSync(list, '{'), () => symlinkSync(job, list)]) {
      make();
      const before = all(folder);
      const { code, err } = await called(args(job, join(folder, name)));
      expect(code).toBe(2);
      expect(err).toContain(list);
      expect(all(folder)).toEqual(before);
      unlinkSync(list);
    }
  });
});

describe('a job, its table and its tracker', () => {
  test.each(['mesh', 'export'])('are never written onto by %s, by whatever path', async (command) => {
    const { folder, job, table, tracker } = boardFolder();
    expect((await called(['track', job])).code).toBe(0);
    mkdirSync(join(folder, 'in'));
    const names = [job, table, tracker].flatMap((file) => [file, join(folder, 'in', '..', basename(file))]);
    for (const name of names) {
      const before = [readFileSync(job), readFileSync(table)];
      const args = command === 'mesh' ? ['mesh', job, '-o', name] : ['track', job, 'export', name];
      expect(await called(args), name).toMatchObject({ code: 2 });
      expect([readFileSync(job), readFileSync(table)]).toEqual(before);
      expect((await called(['track', job])).err).toBe('');
    }
  });

  test('are not written onto even where they lie under the name of one of the papers', async () => {
    const { folder, job, table } = boardFolder();
    renameSync(table, join(folder, 'blocks.csv'));
    writeFileSync(job, readFileSync(job, 'utf8').replace('fell-short.csv', 'blocks.csv'));
    const before = all(folder);
    const { code, err } = await called(['papers', job, '-o', folder]);
    expect(code).toBe(2);
    expect(err).toContain('this is blocks.csv itself, from which the plan is made');
    expect(all(folder)).toEqual(before);
  });
});

describe('papers of another board or an earlier plan', () => {
  test('do not stay among the new: ours are removed and named, edited ones are left and named, others are left alone', async () => {
    const { folder, job } = boardFolder();
    const out = join(folder, 'out');
    expect((await called(['papers', job, '-o', out])).code).toBe(0);
    const ofThis = readdirSync(out);
    expect((await called(['mesh', job, '-o', join(out, 'board.stl')])).code).toBe(0);
    writeFileSync(join(out, 'notes.txt'), 'mine');
    // A sheet that only this board has, and one that both have.
    const fresh = join(folder, 'fresh');
    expect((await called(['papers', 'samples/mere-prone.yaml', '-o', fresh])).code).toBe(0);
    const [own, both] = [false, true].map((also) =>
      ofThis.find((name) => name.endsWith('.svg') && readdirSync(fresh).includes(name) === also),
    ) as [string, string];
    appendFileSync(join(out, own), '<!-- mine -->');
    appendFileSync(join(out, both), '<!-- mine -->');

    const before = all(out);
    const refused = await called(['papers', 'samples/mere-prone.yaml', '-o', out]);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain(`${join(out, both)}: it was changed since chamberwright wrote it`);
    expect(all(out)).toEqual(before);

    unlinkSync(join(out, both));
    const { code, err, out: said } = await called(['papers', 'samples/mere-prone.yaml', '-o', out]);
    expect(code).toBe(0);
    expect(err).toContain(`Still there, of an earlier plan or edited since, do not work by them: ${join(out, own)}`);
    expect(said).toContain('Removed, since they are of an earlier plan: ');
    expect(readdirSync(out).sort()).toEqual([...readdirSync(fresh), own, 'board.stl', 'notes.txt'].sort());
  });

  test('are named, not removed, when only some papers are asked for', async () => {
    const { folder, job } = boardFolder();
    const out = join(folder, 'out');
    expect((await called(['papers', job, '-o', out])).code).toBe(0);
    const before = readdirSync(out);
    expect((await called(['papers', job, '-o', out, '--only', 'check'])).err).toBe('');
    writeFileSync(job, readFileSync(job, 'utf8').replace(/^job:.*/m, 'job: another name'));
    expect((await called(['papers', job, '-o', out, '--only', 'check'])).err).toMatch(
      /^Still there, of an earlier plan/,
    );
    expect(readdirSync(out)).toEqual(before);
  });

  test('a list that names files outside its folder moves nothing there', async () => {
    const { folder, job } = boardFolder();
    const out = join(folder, 'out');
    expect((await called(['papers', job, '-o', out, '--only', 'check'])).code).toBe(0);
    const list = join(out, '.chamberwright.json');
    writeFileSync(list, readFileSync(list, 'utf8').replace('"papers.pdf"', '"../fell-short.yaml"'));
    expect((await called(['papers', job, '-o', out])).code).toBe(2);
    expect(existsSync(job)).toBe(true);
  });
});
