import { expect, test } from 'vitest';
import { begun, changed, redone, settled, undone } from '../../../src/bench/edit/history.js';

test('a slider dragged is one step back, however often it moved', () => {
  const start = begun('a');
  const dragged = ['b', 'c', 'd'].reduce((history, text) => changed(history, text, 'web'), start);
  expect(dragged.text).toBe('d');
  expect(undone(dragged).text).toBe('a');
  expect(redone(undone(dragged)).text).toBe('d');
});

test('the same slider taken up again is a step of its own', () => {
  const first = settled(changed(begun('a'), 'b', 'web'));
  expect(undone(changed(first, 'c', 'web')).text).toBe('b');
});

test('a change after steps back lets go what lay ahead', () => {
  const back = undone(changed(changed(begun('a'), 'b'), 'c'));
  expect(changed(back, 'x').future).toEqual([]);
  expect(undone(changed(back, 'x')).text).toBe('b');
});

test('nothing lies before the beginning and nothing after the end', () => {
  expect(undone(begun('a')).text).toBe('a');
  expect(redone(begun('a')).text).toBe('a');
});

test('the oldest steps are let go after two hundred', () => {
  let history = begun('0');
  for (let i = 1; i <= 300; i++) history = changed(history, String(i));
  for (let i = 0; i < 500; i++) history = undone(history);
  expect(history.text).toBe('100');
});
