import { expect, it } from 'vitest';
import { keysOfJob } from '../../src/job/whole/file.js';
import { saidAbout, textOf } from './readSample.js';

const starter = textOf('templates/starter.yaml');

it('every key that a job may have is in the starter, to be used or behind a #', () => {
  const words = new Set(starter.match(/[\p{L}]+/gu));
  expect(keysOfJob().all.filter((key) => !words.has(key))).toEqual([]);
});

it('every section that a job may have stands in the starter with a value', () => {
  expect(keysOfJob().top.filter((key) => !new RegExp(`^(# )?${key}:`, 'm').test(starter))).toEqual([]);
});

/** Sections that are a # away from being used: each to be read with all the others. */
const ASIDE = ['shaped', 'weighings', 'target', 'printer'];

it.each(ASIDE)('the section %s reads without a finding when its # are taken away', (section) => {
  const lines = starter.split('\n');
  const from = lines.indexOf(lines.find((line) => line.startsWith(`# ${section}:`))!);
  expect(from).toBeGreaterThan(0);
  const to = lines.findIndex((line, i) => i > from && !line.startsWith('#'));
  const used = lines.map((line, i) => (i >= from && (to < 0 || i < to) ? line.replace(/^# /, '') : line));
  expect(saidAbout(used.join('\n'))).toEqual([]);
});

it('the lines within sections that stand behind a # read without a finding when it is taken away', () => {
  const used = starter
    .replace('  # glued:\n  #   - ', '  glued:\n    - ')
    .replace('  # guides: {', '  guides: {')
    .replace('  # - {name: vent', '  - {name: vent')
    .replace('  # left:\n  #   - ', '  left:\n    - ')
    .replace('  #   - {strip: eps-22, joint: dotted}', '    - {strip: eps-22, joint: dotted}');
  expect(used.match(/^ {2}(glued|guides|left):/gm)).toHaveLength(3);
  expect(saidAbout(used)).toEqual([]);
});

it('the fin that is made reads without a finding too', () => {
  const used = starter.replace(/^ {2}# - name: made fin\n(?: {2}# {3}.*\n)+/m, (lines) =>
    lines.replace(/^ {2}# /gm, '  '),
  );
  expect(used).toContain('\n  - name: made fin\n    fromTail: 14 in\n');
  expect(saidAbout(used)).toEqual([]);
});

it('the board that differs from side to side reads without a finding too', () => {
  const used = starter.replace('  # left: {nose', '  left: {nose');
  expect(used).not.toBe(starter);
  expect(saidAbout(used)).toEqual([]);
});
