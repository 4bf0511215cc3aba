import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ShopEvent } from '../../../src/shop/log/event.js';
import { NOTHING_YET, stageOf, stateAfter, stateWithUnsent } from '../../../src/shop/log/state.js';
import { STEPS, ticksOf } from '../../../src/shop/log/step.js';
import { event, numbered, step } from '../rescueBoard.js';

const stage = (events: readonly ShopEvent[], block = 'R2-07') =>
  stageOf(stateAfter(NOTHING_YET, numbered(events)).blocks.get(block));

describe('where a block stands', () => {
  it('a block nobody has touched has no stage', () => expect(stage([])).toBeUndefined());

  it('the same step pressed on two phones is one step', () => {
    const twice = [
      event({ seq: 1, what: step('R2-07', 'cut') }),
      event({ client: 'phone-two', seq: 1, what: step('R2-07', 'cut') }),
    ];
    expect(stage(twice)).toBe('cut');
    expect(stage([...twice, event({ seq: 2, seen: 2, what: step('R2-07', 'cut', false) })])).toBeUndefined();
  });

  it('an undo leaves standing what its maker could not have seen', () => {
    const events = [
      event({ seq: 1, what: step('R2-07', 'cut') }),
      event({ client: 'phone-two', seq: 1, what: step('R2-07', 'cut') }),
      event({ seq: 2, seen: 1, what: step('R2-07', 'cut', false) }),
    ];
    expect(stage(events)).toBe('cut');
  });

  it('an undo takes back its maker’s own press that was never delivered before it', () => {
    const events = [
      event({ seq: 1, what: step('R2-07', 'cut') }),
      event({ seq: 2, what: step('R2-07', 'cut', false) }),
    ];
    expect(stage(events)).toBeUndefined();
    const shown = stateWithUnsent(NOTHING_YET, events.slice(0, 1));
    expect(stageOf(shown.blocks.get('R2-07'))).toBe('cut');
    expect(stageOf(stateWithUnsent(NOTHING_YET, events).blocks.get('R2-07'))).toBeUndefined();
  });

  it('a step undone falls back to the step before it', () => {
    const events = [
      event({ seq: 1, what: step('R2-07', 'marked') }),
      event({ seq: 2, what: step('R2-07', 'cut') }),
      event({ seq: 3, seen: 2, what: step('R2-07', 'cut', false) }),
    ];
    expect(stage(events)).toBe('marked');
  });

  it('a clock that is a day wrong changes nothing', () => {
    const wrong = [
      event({ seq: 1, at: 0, what: step('R2-07', 'sanded') }),
      event({ client: 'phone-two', seq: 1, at: 9e12, seen: 1, what: step('R2-07', 'sanded', false) }),
      event({ seq: 2, at: 1, seen: 2, what: step('R2-07', 'cut') }),
    ];
    expect(stage(wrong)).toBe('cut');
  });

  it('counted in one go or in any pieces, a log comes to the same state', () => {
    const logs = fc.array(
      fc.record({
        client: fc.constantFrom('phone-one', 'phone-two', 'phone-three'),
        block: fc.constantFrom('R1-01', 'R1-02'),
        name: fc.constantFrom(...STEPS),
        done: fc.boolean(),
        seen: fc.nat(30),
      }),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(logs, fc.array(fc.nat(30), { maxLength: 4 }), (presses, cuts) => {
        const log = numbered(
          presses.map(({ client, block, name, done, seen }, i) =>
            event({ client, seq: i + 1, seen, what: step(block, name, done) }),
          ),
        );
        let pieces = NOTHING_YET;
        let from = 0;
        for (const to of [...cuts.sort((a, b) => a - b), log.length]) {
          pieces = stateAfter(pieces, log.slice(from, to));
          from = Math.max(from, to);
        }
        expect(pieces).toEqual(stateAfter(NOTHING_YET, log));
      }),
      { seed: 20260314 },
    );
  });

  it('against the whole log: a step is done exactly while a press of it was not seen by any later undo', () => {
    const presses = fc.array(
      fc.record({ client: fc.constantFrom('a', 'b', 'c'), done: fc.boolean(), seen: fc.nat(20) }),
      { maxLength: 20 },
    );
    fc.assert(
      fc.property(presses, (list) => {
        const log = numbered(
          list.map(({ client, done, seen }, i) =>
            event({ client, seq: i + 1, seen: Math.min(seen, i), what: step('R1-01', 'cut', done) }),
          ),
        );
        const isDone = (one: ShopEvent) => one.what.kind === 'step' && one.what.done;
        const holds = log.some(
          (press, i) =>
            isDone(press) &&
            !log
              .slice(i + 1)
              .some((undo) => !isDone(undo) && (press.number <= undo.seen || press.client === undo.client)),
        );
        expect(stage(log, 'R1-01')).toBe(holds ? 'cut' : undefined);
      }),
      { seed: 20260315 },
    );
  });

  it('the printed list ticks every step up to the furthest one', () => {
    const state = stateAfter(NOTHING_YET, numbered([event({ seq: 1, what: step('R2-07', 'sanded') })]));
    expect(ticksOf(stageOf(state.blocks.get('R2-07')))).toEqual([true, true, true, false, false]);
    expect(ticksOf(undefined)).toEqual([false, false, false, false, false]);
  });

  it('notes and photos are kept in order, whatever becomes of the steps', () => {
    const events = [
      event({ seq: 1, who: 'Ada', what: { kind: 'note', block: 'R2-07', text: 'chipped corner' } }),
      event({ seq: 2, what: { kind: 'photo', block: 'R2-07', photo: 'f'.repeat(64) } }),
      event({ seq: 3, what: { kind: 'note', block: 'R2-07', text: 'filled' } }),
    ];
    const state = stateAfter(NOTHING_YET, numbered(events)).blocks.get('R2-07')!;
    expect(state.notes.map(({ text, who }) => [text, who])).toEqual([
      ['chipped corner', 'Ada'],
      ['filled', ''],
    ]);
    expect(state.photos).toHaveLength(1);
  });
});
