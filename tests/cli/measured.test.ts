import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { called } from './called.js';
import { boardFolder } from './files.js';

const STOP = 'stop';

function shop() {
  const { folder, job } = boardFolder();
  const list = join(folder, 'fell-short.measured.csv');
  const text = () => readFileSync(job, 'utf8');
  return { folder, job, list, text, drawn: text() };
}

test('what is answered goes into the job when the builder says yes, and nothing else changes', async () => {
  const { job, list, text, drawn } = shop();
  const said = await called(['measured', job], ['done', '600', '60.5', '', '', '505', '', 'perhaps', 'yes']);
  expect(text()).toBe(
    `${drawn.trimEnd()}\n\nshaped:\n  - {at: 600 mm, thickness: 60.5 mm}\n  - {at: 600 mm, width: 505 mm}\n`,
  );
  expect(said.out).toContain('  + shaped: {at: 600 mm, thickness: 60.5 mm}\n');
  expect(said.out).toContain('chambers as drawn');
  expect(said.err).toContain('yes or no');
  expect(existsSync(list)).toBe(false);
});

test('stopped half way, or at the end of all answers, nothing is lost, and the next time goes on from there', async () => {
  const { job, list, text, drawn } = shop();
  await called(['measured', job], ['28', STOP]);
  expect(text()).toBe(drawn);
  expect(readFileSync(list, 'utf8')).toContain('28 mm');
  // No answer any more, as at Ctrl+C.
  const again = await called(['measured', job], ['', '27']);
  expect(again.out).toContain('1 measure.');
  expect(again.out).toContain('Stopped');
  expect(text()).toBe(drawn);
  await called(['measured', job], ['done', '', 'yes']);
  expect(text()).toContain('  - {at: 100 mm, thickness: 28 mm}\n  - {at: 100 mm, side: ');
  expect(existsSync(list)).toBe(false);
});

test('a slip is asked again: another unit, a value that cannot be, a place off the board, a chamber that is not there', async () => {
  const { job, text, drawn } = shop();
  const answers = ['9 kg', '400', '28', STOP];
  const first = await called(['measured', job], answers);
  expect(first.err).toContain('"kg" is not a unit of a length');
  expect(first.err).toContain('400 mm cannot be');
  const second = await called(['measured', job], ['done', '3 m', 'R9-99', '600', '', '1.9', '56', STOP]);
  expect(second.err).toContain('there is no board to measure at 3000 mm');
  expect(second.err).toContain('R9-99 is no place, no chamber and no stage');
  // Inches typed into a job in millimetres.
  expect(second.err).toContain('1.9 mm is far from the drawing');
  expect(text()).toBe(drawn);
  const last = await called(['measured', job], ['done', '', 'no']);
  expect(last.out).not.toContain('thickness: 1.9');
  expect(last.out).toContain('thickness: 56 mm');
  expect(text()).toBe(drawn);
});

test('back goes to the answer before, and the later answer counts', async () => {
  const { job, text } = shop();
  await called(['measured', job], ['28', 'back', '27', 'done', '', 'yes']);
  expect(text()).toContain('  - {at: 100 mm, thickness: 27 mm}\n');
  expect(text()).not.toContain('28 mm');
});

test('a list goes in as a whole or not at all, and only when it is told to', async () => {
  const { folder, job, text, drawn } = shop();
  const list = join(folder, 'mine.csv');
  writeFileSync(list, 'at,thickness,chamber,deck\n600,60.5,,\n800,3,,\n,,R9-99,12\n');
  const wrong = await called(['measured', job, '--from', list, '--write']);
  expect(wrong.code).toBe(2);
  expect(wrong.err).toContain('mine.csv, line 3, {at: 800, thickness: 3}');
  expect(wrong.err).toContain('the plan has no chamber R9-99');
  expect(text()).toBe(drawn);
  writeFileSync(list, 'at,thickness\n600,60.5\n');
  expect((await called(['measured', job, '--from', list])).out).toContain('Nothing is written yet');
  expect(text()).toBe(drawn);
  await called(['measured', job, '--from', list, '--write']);
  expect(text()).toContain('shaped:\n  - {at: 600, thickness: 60.5}\n');
  const again = await called(['measured', job, '--from', list, '--write']);
  expect(again.out).toContain('Nothing was measured');
});

test('a job that somebody changed meanwhile is left as it is, and the answers are kept', async () => {
  const { job, list, text, drawn } = shop();
  const answers = ['28', 'done', ''];
  const said = await called(['measured', job], {
    shift() {
      const next = answers.shift();
      if (next !== undefined) return next;
      appendFileSync(job, '# mine\n');
      return 'yes';
    },
  });
  expect(said.code).toBe(2);
  expect(said.err).toContain('it was changed while this was asked');
  expect(text()).toBe(`${drawn}# mine\n`);
  expect(existsSync(list)).toBe(true);
});
