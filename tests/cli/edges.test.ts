import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { beginStage } from '../../src/disk/stage.js';
import { called } from './called.js';
import { boardFolder } from './files.js';

const JOB = 'samples/mere-prone.yaml';

describe('what is no job is said at once, and makes nothing', () => {
  test.each(['plan', 'check', 'steer', 'mesh', 'papers', 'track', 'open'])(
    '%s does not wait for a pipe',
    async (command) => {
      const pipe = join(mkdtempSync(join(tmpdir(), 'cw-')), 'pipe.yaml');
      execFileSync('mkfifo', [pipe]);
      const { code, err } = await called([
        command,
        pipe,
        ...(['mesh', 'papers'].includes(command) ? ['-o', `${pipe}.stl`] : []),
      ]);
      expect(code).toBe(2);
      expect(err).toContain('this is a pipe or a device, not a file');
      expect(readdirSync(join(pipe, '..'))).toEqual(['pipe.yaml']);
    },
  );

  test('a table far too large is not read, and one that may not be read is not called missing', async () => {
    const { job, table } = boardFolder();
    truncateSync(table, 1_500_000_000);
    expect((await called(['plan', job])).err).toContain('cannot be read: 1.5 GB is too large, at most 4 MB are read');
    writeFileSync(table, '');
    if (process.getuid?.() === 0) return;
    chmodSync(table, 0);
    expect((await called(['plan', job])).err).toContain('cannot be read: it may not be read by you');
  });

  test.each(['constructor', '__proto__', 'toString'])('a table called %s is a file that is not there', async (name) => {
    const { job } = boardFolder();
    writeFileSync(job, readFileSync(job, 'utf8').replace('fell-short.csv', name));
    const { code, err } = await called(['plan', job]);
    expect(code).toBe(2);
    expect(err).toContain(`there is no file "${name}" beside the job`);
  });

  test('a mistyped job or block begins no folder and no tracker', async () => {
    const { folder, job } = boardFolder();
    const before = readdirSync(folder);
    expect((await called(['papers', `${job}x`, '-o', join(folder, 'out')])).code).toBe(2);
    expect((await called(['track', `${job}x`])).code).toBe(2);
    expect((await called(['track', job, 'L9-99', 'cut'])).code).toBe(2);
    expect((await called(['track', job, 'exprot', 'list.csv'])).code).toBe(2);
    expect(readdirSync(folder)).toEqual(before);
  });
});

describe('what was typed', () => {
  test.each([
    [['plna', JOB], 'plna: there is no such command → did you mean: chamberwright plan'],
    [['constructor'], 'constructor: there is no such command → one of new, plan, '],
    [[JOB], `${JOB}: there is no such command → did you mean: chamberwright plan ${JOB}`],
    [['plan', JOB, '--jsno'], '--jsno: there is no such option → did you mean --json?'],
    [['papers', JOB, '-o', 'x', '--papr', 'A4'], '--papr: there is no such option → did you mean --paper?'],
    [
      ['papers', JOB, '-o', 'x', '--date', '2026-02-31'],
      '--date: 2026-02-31 is no day of the calendar → like 2026-05-01',
    ],
    [
      ['papers', JOB, '-o', 'x', '--roll', '610 mm', '--paper', 'A4'],
      '--roll and --paper: these are two kinds of paper → name one of them',
    ],
    [['papers', JOB, '-o', 'x', '--csv', '|'], '--csv: there is no form | → ","'],
    [['mesh', JOB, '-o', 'board.yaml'], 'board.yaml: the name of this file ends in .stl or .ply or .obj → board.stl'],
  ])('%j is answered with what was meant', async (args, said) => {
    const { code, err } = await called(args);
    expect(code).toBe(2);
    expect(err).toContain(said);
    expect(existsSync('x')).toBe(false);
  });

  test('a margin that no paper has is told as a margin', async () => {
    const { code, err } = await called(['papers', JOB, '-o', 'x', '--margin', '55 mm']);
    expect(code).toBe(2);
    expect(err).toMatch(/margin/i);
    expect(err).not.toContain('folder');
  });

  test.each([[['plan', JOB, '--help']], [['plan', '--help']], [['help', 'plan']]])(
    '%j says how plan is called',
    async (args) => {
      expect(await called(args)).toMatchObject({ code: 0, out: expect.stringMatching(/^chamberwright plan JOB/) });
    },
  );
});

describe('what is made before it takes its place', () => {
  test('what a program left that was killed outright is cleared away by the next', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'cw-'));
    const gone = spawnSync(process.execPath, ['-e', '0']).pid;
    execFileSync('mkdir', [join(folder, `.chamberwright-${gone}.new`)]);
    const stage = await beginStage(folder);
    if ('busy' in stage) throw new Error('taken for busy');
    await stage.clear();
    expect(readdirSync(folder)).toEqual([]);
  });

  test('two at once do not write into one folder', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'cw-'));
    execFileSync('mkdir', [join(folder, `.chamberwright-${process.ppid}.new`)]);
    expect(await beginStage(folder)).toEqual({ busy: `.chamberwright-${process.ppid}.new` });
  });
});

test('a job named by a link is planned and tracked where it is', async () => {
  const { folder, job, tracker } = boardFolder();
  const link = join(mkdtempSync(join(tmpdir(), 'cw-')), 'link.yaml');
  symlinkSync(job, link);
  expect((await called(['check', link])).code).toBe(0);
  expect((await called(['track', link])).code).toBe(0);
  expect(existsSync(tracker)).toBe(true);
  expect(readdirSync(join(link, '..'))).toEqual(['link.yaml']);
  expect(readdirSync(folder)).toContain('fell-short.tracker.db');
});
