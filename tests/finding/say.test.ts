import { expect, test } from 'vitest';
import { sayFinding, sayInLines, sayWarning } from '../../src/finding/say.js';

const ASKED = { what: '14 in is more than the 12 in there are', remedy: 'less than 12 in' };

test('a finding tells its place as far as it is known: file, line and column; line and key; a name', () => {
  const where = { file: 'tarn.yaml', line: 31, column: 5, path: 'chambers.web' };
  const said = `${ASKED.what} → ${ASKED.remedy}`;
  expect(sayFinding({ ...ASKED, where })).toBe(`tarn.yaml:31:5: chambers.web: ${said}`);
  expect(sayWarning({ ...ASKED, where })).toBe(`tarn.yaml:31:5: warning: chambers.web: ${said}`);
  expect(sayFinding({ ...ASKED, where: { file: 'tarn.csv', line: 4, path: '' } })).toBe(`tarn.csv:4: ${said}`);
  expect(sayFinding({ ...ASKED, where: { line: 23, path: 'board.outline[8][1]' } })).toBe(
    `line 23, board.outline[8][1]: ${said}`,
  );
  expect(sayFinding({ ...ASKED, where: { path: 'shaped[0].deck' } })).toBe(`shaped[0].deck: ${said}`);
  expect(sayFinding({ ...ASKED, where: '--margin' })).toBe(`--margin: ${said}`);
});

test('where whole sentences are said, each has a line: what, where, what to do', () => {
  const full = { where: '/board/a.tracker.db', what: 'The disk is full.', remedy: 'Free some space.' };
  expect(sayInLines(full)).toBe('The disk is full.\n  /board/a.tracker.db\n  Free some space.');
});
