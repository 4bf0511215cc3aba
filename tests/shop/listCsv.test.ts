import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Happening } from '../../src/shop/event.js';
import { readList, writeList } from '../../src/shop/listCsv.js';
import { NOTHING_YET, stageOf, stateAfter } from '../../src/shop/state.js';
import { STEPS } from '../../src/shop/step.js';
import { box, event, NOON, numbered, rescueBlocks, step } from './rescueBoard.js';

const two = [box('R2-07', 180, 100.25), box('R2-08', 180, 98)];
const happened = (...what: readonly Happening[]) =>
  stateAfter(NOTHING_YET, numbered(what.map((one, i) => event({ seq: i + 1, at: NOON, what: one }))));
const HEADING = 'block,row,place,length_mm,height_mm,thickness_mm,marked,cut,sanded,dry-fitted,glued,notes';

describe('the tracking list as CSV', () => {
  it('has a line a block, CR LF between lines, and quotes what holds commas or quotes (RFC 4180, section 2)', () => {
    const state = happened(step('R2-07', 'cut'), { kind: 'note', block: 'R2-07', text: 'tight, see "corner"' });
    expect(writeList(two, state, 'mm')).toBe(
      [
        HEADING,
        'R2-07,R2,7,180,100.2,45,yes,2026-03-14T12:00:00.000Z,,,,"tight, see ""corner"""',
        'R2-08,R2,8,180,98,45,,,,,,',
        '',
      ].join('\r\n'),
    );
  });

  // OWASP, "CSV Injection": cells that begin with = + - @ tab or CR are taken for formulas by spreadsheets.
  it('keeps a note from being a formula, and reads it back as it was', () => {
    for (const text of ['=1+1', '+2', '-3 mm', '@SUM(A1)', "'=quoted", "'plain"]) {
      const list = writeList(two, happened({ kind: 'note', block: 'R2-07', text }), 'mm');
      expect(list).not.toContain(`,${text}\r\n`);
      const back = readList(list, two, NOTHING_YET);
      expect(back.ok && back.entries).toEqual([{ kind: 'note', block: 'R2-07', text }]);
    }
  });

  it('written and read back, brings an empty tracker to the same place', () => {
    const blocks = rescueBlocks();
    const work = fc.array(
      fc.oneof(
        fc.record({
          kind: fc.constant('step' as const),
          block: fc.constantFrom(...blocks.map(({ id }) => id)),
          step: fc.constantFrom(...STEPS),
          done: fc.constant(true),
        }),
        fc.record({
          kind: fc.constant('note' as const),
          block: fc.constantFrom('R1-01', 'L3-16'),
          text: fc
            .string({ minLength: 1, unit: 'grapheme-ascii' })
            .map((text) => text.trim())
            .filter((text) => text !== ''),
        }),
      ),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(work, (what) => {
        const state = happened(...what);
        const read = readList(writeList(blocks, state, 'mm'), blocks, NOTHING_YET);
        if (!read.ok) throw new Error(JSON.stringify(read.findings));
        const again = happened(...read.entries);
        for (const { id } of blocks) {
          expect(stageOf(again.blocks.get(id))).toBe(stageOf(state.blocks.get(id)));
          const notes = (of: typeof state) => [...new Set((of.blocks.get(id)?.notes ?? []).map(({ text }) => text))];
          expect(notes(again)).toEqual(notes(state));
        }
        expect(readList(writeList(blocks, state, 'mm'), blocks, state)).toEqual({
          ok: true,
          entries: [],
          differences: [],
        });
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  it('takes what a spreadsheet makes of it: semicolons, a byte order mark, dates of its own, an x', () => {
    const list =
      '\uFEFFBlock;Marked;Cut;Sanded;Dry-fitted;Glued\r\nR2-07;14.03.2026 13:00;x;;;\r\n;;;;;\r\nR2-08;;;;;\r\n';
    expect(readList(list, two, NOTHING_YET)).toEqual({
      ok: true,
      entries: [
        { kind: 'step', block: 'R2-07', step: 'marked', done: true },
        { kind: 'step', block: 'R2-07', step: 'cut', done: true },
      ],
      differences: [],
    });
  });

  it('never takes a step back: what is done here and open in the list stays done and is named', () => {
    const list = `${HEADING}\r\nR2-07,R2,7,180,100,45,x,,,,,\r\n`;
    expect(readList(list, two, happened(step('R2-07', 'cut')))).toEqual({
      ok: true,
      entries: [],
      differences: ['R2-07: cut here, open in the list. It stays cut.'],
    });
  });

  it('takes over nothing where a line is unclear, and says which', () => {
    const list = `${HEADING}\r\nR2-07,R2,7,180,100,45,x,maybe,,,,\r\nQ9-99,Q9,1,1,1,1,x,,,,,\r\nR2-07,R2,7,180,100,45,x,,,,,\r\n`;
    expect(readList(list, two, NOTHING_YET)).toEqual({
      ok: false,
      findings: [
        {
          line: 2,
          what: 'R2-07, cut: “maybe” is neither done nor open. Write x or a date for done, nothing for open.',
        },
        { line: 3, what: 'Block “Q9-99” is not in the plan. Block numbers look like R2-07.' },
        { line: 4, what: 'Block R2-07 stands in line 2 already. Keep one of the two.' },
      ],
    });
  });

  it('says which columns are missing', () => {
    expect(readList('block,cut\r\nR2-07,x\r\n', two, NOTHING_YET)).toMatchObject({
      ok: false,
      findings: [{ line: 1, what: expect.stringContaining('Missing: marked, sanded, dry-fitted, glued') }],
    });
    expect(readList('', two, NOTHING_YET).ok).toBe(false);
    expect(readList(`${HEADING}\r\n`, two, NOTHING_YET)).toEqual({
      ok: false,
      findings: [{ line: 0, what: 'The list has no lines.' }],
    });
  });
});
