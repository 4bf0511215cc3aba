import { isDeepStrictEqual } from 'node:util';
import { expect, test } from 'vitest';
import { withValue } from '../../../src/job/edit/value.js';
import { answerTo, type Known, type Question } from '../../../src/bench/plan/answer.js';
import { planOf } from '../../../src/plan.js';
import { resultOf } from '../../../src/view/result.js';
import { jobOf, sample } from '../read.js';
import { outlineInPlan } from '../../../src/view/outlineInPlan.js';

const NAME = 'mere-prone.yaml';
const webOf = (mm: string) => withValue(sample(NAME), ['chambers', 'web'], mm);

let number = 0;
const ask = (known: Known, which: Question['which'], text: string) =>
  answerTo({ number: ++number, which, written: { name: NAME, text, beside: {} } }, known);

test('what was planned ahead is the answer when it is asked, and what a planner makes that never looked ahead', () => {
  const known: Known = {};
  ask(known, 'this', webOf('25'));
  const ahead = ask(known, 'ahead', webOf('26'));
  const answer = ask(known, 'this', webOf('26'));
  expect(answer.shown!.result).toBe(ahead.shown!.result);
  expect(answer).toMatchObject({ number, which: 'this' });
  expect(answer.shown!.result).toEqual(resultOf(planOf(jobOf(webOf('26')))));
});

test('a wrong guess changes no figure', () => {
  const known: Known = {};
  ask(known, 'this', webOf('25'));
  ask(known, 'ahead', webOf('26'));
  const { shown } = ask(known, 'this', webOf('24'));
  expect(shown!.result).toEqual(resultOf(planOf(jobOf(webOf('24')))));
  // And is not kept for later.
  const later = ask(known, 'this', webOf('26'));
  expect(later.shown!.result).toEqual(resultOf(planOf(jobOf(webOf('26')))));
});

test('a guess that is no job is told as its mistake, once it is asked', () => {
  const known: Known = {};
  ask(known, 'this', webOf('25'));
  ask(known, 'ahead', webOf('no web'));
  const answer = ask(known, 'this', webOf('no web'));
  expect(answer.shown).toBeUndefined();
  expect(answer.findings.map(({ where }) => where.path)).toEqual(['chambers.web']);
  expect(ask(known, 'this', webOf('25')).shown!.result).toEqual(resultOf(planOf(jobOf(webOf('25')))));
});

test('the page always has the board of the answer, whatever was planned ahead', () => {
  const known: Known = {};
  const thicker = sample(NAME).replace('thick: 149', 'thick: 150');
  let board: unknown;
  const seen = (text: string) => {
    board = ask(known, 'this', text).shown!.board ?? board;
    const afresh = planOf(jobOf(text)).board;
    const { positions, triangles, patches } = afresh.mesh;
    const outline = outlineInPlan(afresh, { from: 0, to: afresh.length });
    // A hundred thousand numbers: node compares them at once.
    expect(isDeepStrictEqual(board, { mesh: { positions, triangles, patches }, outline })).toBe(true);
  };
  seen(sample(NAME));
  ask(known, 'ahead', thicker);
  seen(thicker);
  ask(known, 'ahead', sample(NAME));
  seen(withValue(thicker, ['chambers', 'web'], '30'));
  ask(known, 'practice', sample(NAME));
  seen(withValue(thicker, ['chambers', 'web'], '31'));
});
