import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Happening } from '../../../src/shop/log/event.js';
import { readList, writeList, type ListOf } from '../../../src/shop/list/listCsv.js';
import { NOTHING_YET, stageOf, stateAfter } from '../../../src/shop/log/state.js';
import { STEPS } from '../../../src/shop/log/step.js';
import { box, event, NOON, numbered, rescueBlocks, step } from '../rescueBoard.js';

const two = [box('R2-07', 180, 100.25), box('R2-08', 180, 98)];
const happened = (...what: readonly Happening[]) =>
  stateAfter(NOTHING_YET, numbered(what.map((one, i) => event({ seq: i + 1, at: NOON, who: 'Ada', what: one }))));
const HEADING = 'block,row,place,length_mm,height_mm,thickness_mm,marked,cut,sanded,dry-fitted,glued,notes';
const WRITTEN = `${HEADING},marked_by,cut_by,sanded_by,dry-fitted_by,glued_by,shape,job,plan,date`;
const NOW = NOON + 3600_000;
const of = (blocks: ListOf['blocks'], state: ListOf['state'] = NOTHING_YET): ListOf => ({
  job: 'Lough launch 10-6',
  blocks,
  state,
  units: 'mm',
  plans: [{ number: 1, blocks }],
});

describe('the tracking list as CSV', () => {
  it('has a line a block, CR LF between lines, and quotes what holds commas or quotes (RFC 4180, section 2)', () => {
    const state = happened(step('R2-07', 'cut'), { kind: 'note', block: 'R2-07', text: 'tight, see "corner"' });
    expect(writeList(of(two, state), NOW).split('\r\n')).toEqual([
      WRITTEN,
      expect.stringMatching(
        /^R2-07,R2,7,180,100\.2,45,yes,2026-03-14T12:00:00\.000Z,,,,"tight, see ""corner""",,Ada,,,,[0-9a-f]{12},Lough launch 10-6,1,2026-03-14$/,
      ),
      expect.stringMatching(/^R2-08,R2,8,180,98,45,,,,,,,,,,,,[0-9a-f]{12},Lough launch 10-6,1,2026-03-14$/),
      '',
    ]);
  });

  it('says when it is another job’s, and takes over what it can', () => {
    const list = writeList({ ...of(two, happened(step('R2-07', 'marked'))), job: 'Pier relief 9-2' }, NOW);
    expect(readList(list, of(two), NOW)).toMatchObject({
      ok: true,
      entries: [{ what: { kind: 'step', block: 'R2-07', step: 'marked' } }],
      differences: ['The list is of another job: Pier relief 9-2. This tracker is of Lough launch 10-6.'],
    });
  });

  // OWASP, "CSV Injection": cells that begin with = + - @ tab or CR are taken for formulas by spreadsheets.
  it('keeps a note from being a formula, and reads it back as it was', () => {
    for (const text of ['=1+1', '+2', '-3 mm', '@SUM(A1)', "'=quoted", "'plain"]) {
      const list = writeList(of(two, happened({ kind: 'note', block: 'R2-07', text })), NOW);
      expect(list).not.toContain(`,${text}\r\n`);
      const back = readList(list, of(two), NOW);
      expect(back.ok && back.entries).toEqual([{ what: { kind: 'note', block: 'R2-07', text }, plan: 1 }]);
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
        const read = readList(writeList(of(blocks, state), NOW), of(blocks), NOW);
        if (!read.ok) throw new Error(JSON.stringify(read.findings));
        const again = happened(...read.entries.map(({ what: one }) => one));
        for (const { id } of blocks) {
          expect(stageOf(again.blocks.get(id))).toBe(stageOf(state.blocks.get(id)));
          const notes = (of: typeof state) => [...new Set((of.blocks.get(id)?.notes ?? []).map(({ text }) => text))];
          expect(notes(again)).toEqual(notes(state));
        }
        expect(readList(writeList(of(blocks, state), NOW), of(blocks, state), NOW)).toEqual({
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
    expect(readList(list, of(two), NOW)).toEqual({
      ok: true,
      entries: [
        { what: step('R2-07', 'marked'), at: new Date(2026, 2, 14, 13).getTime(), plan: 1 },
        { what: step('R2-07', 'cut'), plan: 1 },
      ],
      differences: ['The list has no sizes for 1 of its blocks; they are taken as made to the plan of today.'],
    });
  });

  it('never takes a step back: what is done here and open in the list stays done and is named', () => {
    const list = `${HEADING}\r\nR2-07,R2,7,180,100,45,x,,,,,\r\n`;
    expect(readList(list, of(two, happened(step('R2-07', 'cut'))), NOW)).toEqual({
      ok: true,
      entries: [],
      differences: ['R2-07: cut here, open in the list. It stays cut.'],
    });
  });

  it('takes over nothing where a line is unclear, and says which', () => {
    const list = `${HEADING}\r\nR2-07,R2,7,180,100.2,45,x,maybe,,,,\r\nQ9-99,Q9,1,1,1,1,x,,,,,\r\nR2-07,R2,7,180,100.2,45,x,,,,,\r\n`;
    expect(readList(list, of(two), NOW)).toEqual({
      ok: false,
      findings: [
        {
          where: { line: 2, path: 'R2-07, cut' },
          what: '“maybe” is neither done nor open',
          remedy: 'write x or a date for done, nothing for open',
        },
        {
          where: { line: 3, path: '' },
          what: 'block “Q9-99” is not in the plan',
          remedy: 'block numbers look like R2-07',
        },
        { where: { line: 4, path: 'R2-07' }, what: 'it stands in line 2 already', remedy: 'keep one of the two' },
      ],
    });
  });

  it('says which columns are missing', () => {
    expect(readList('block,cut\r\nR2-07,x\r\n', of(two), NOW)).toMatchObject({
      ok: false,
      findings: [{ where: { line: 1 }, what: expect.stringContaining('missing: marked, sanded, dry-fitted, glued') }],
    });
    expect(readList('', of(two), NOW).ok).toBe(false);
    expect(readList(`${HEADING}\r\n`, of(two), NOW)).toEqual({
      ok: false,
      findings: [{ where: { path: '' }, what: 'the list has no lines', remedy: 'export a list, and fill that in' }],
    });
  });

  it('keeps the list’s own dates and names, and dates what must have been done before', () => {
    const list = writeList(of(two, happened(step('R2-07', 'sanded'))), NOW);
    expect(readList(list, of(two), NOW)).toMatchObject({
      entries: [
        { what: step('R2-07', 'marked'), at: NOON, plan: 1 },
        { what: step('R2-07', 'cut'), at: NOON, plan: 1 },
        { what: step('R2-07', 'sanded'), at: NOON, who: 'Ada', plan: 1 },
      ],
      differences: [],
    });
    const named = `${HEADING}\r\nr2-07,R2,7,180,"100,2",45,2026-03-14 Ada,,,,,\r\n`;
    expect(readList(named, of(two), NOW)).toMatchObject({ entries: [{ who: 'Ada' }] });
    const ahead = `${HEADING}\r\nr2-07,R2,7,180,100.2,45,2027-03-14,,,,,\r\n`;
    expect(readList(ahead, of(two), NOW)).toMatchObject({
      findings: [{ where: { line: 2, path: 'R2-07, marked' }, what: '“2027-03-14” is in the future' }],
    });
  });

  it('takes blocks for made to the plan the list was written under, and refuses a plan that nobody knows', () => {
    const old = [box('R2-07', 180, 100), box('R2-08', 180, 98)];
    const now = [box('R2-07', 190, 100), box('R2-08', 180, 98)];
    const list = writeList(of(old, happened(step('R2-07', 'cut'), step('R2-08', 'cut'))), NOW);
    const plans = [
      { number: 4, blocks: old },
      { number: 5, blocks: now },
    ];
    const both = readList(list, { ...of(now), plans }, NOW);
    expect(both.ok && both.entries.map(({ what, plan }) => 'block' in what && `${what.block} ${plan}`)).toEqual([
      'R2-07 4',
      'R2-07 4',
      'R2-08 5',
      'R2-08 5',
    ]);
    const foreign = readList(list, { ...of(now), plans: plans.slice(1) }, NOW);
    expect(foreign).toMatchObject({ ok: false, findings: [{ where: { line: 2, path: 'R2-07' } }] });
    expect(!foreign.ok && foreign.findings[0]!.what).toBe(
      'it was made to a plan that this tracker does not know (180 × 100 × 45 mm)',
    );
  });

  it('names every column it does not read, and every line with too many', () => {
    const list = 'block,marked,cut,sanded,dry fitted,GLUED,colour\r\nR2-07,x,,,,,red\r\n';
    expect(readList(list, of(two), NOW)).toMatchObject({
      differences: ['Columns that were not read: colour.', expect.stringContaining('no sizes')],
    });
    expect(readList(list.replace('red', 'red,green'), of(two), NOW)).toMatchObject({
      findings: [{ where: { line: 2 } }],
    });
    expect(readList(`sep=|\r\n${list.replaceAll(',', '|')}`, of(two), NOW)).toMatchObject({ ok: true });
  });
});
