import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { parseLength } from '../../../src/length/length.js';
import { csvOf } from '../../../src/print/csv.js';
import { settled } from '../../../src/print/trace/settle.js';
import { cutPages, cutTables } from '../../../src/sheet/cutting/cutPages.js';
import { blockRows, cutRows } from '../../../src/sheet/cutting/cutRows.js';
import { cuttingOnce } from '../../../src/sheet/cutting/cuttingOnce.js';
import { gluingPages } from '../../../src/sheet/blocks/gluingPages.js';
import type { TablePage } from '../../../src/sheet/pages.js';
import { planOfSample } from '../sample.js';

describe.each(['tarn-rescue', 'mere-prone'] as const)('the cut sheets of %s', (name) => {
  const plan = planOfSample(name);
  const cutting = cuttingOnce(plan);
  const pages = cutPages(plan, cutting);

  test('show every part and every cut by its number, each on its sheet, or on one of its parts', () => {
    const figures = pages.flatMap((page) => (page.kind === 'figure' ? [page.drawing] : []));
    cutting.sheets!.sheets.forEach(({ number, blanks, cuts }) => {
      const whole = `cut-${number}`;
      const own = figures.filter(({ id }) => id === whole || id.startsWith(`${whole}-`));
      expect(own.length).not.toBe(2);
      const words = own.flatMap((figure) =>
        settled(figure).shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])),
      );
      const said = (name: string) => words.filter((word) => word === name).length;
      for (const { id } of blanks.flatMap(({ parts }) => parts)) expect([id, said(id) >= 1]).toEqual([id, true]);
      for (const cut of cuts) expect([cut.number, said(String(cut.number)) >= 1]).toEqual([cut.number, true]);
      if (own.length === 1) expect(words).toEqual([...new Set(words)]);
    });
  });

  test('list every cut once under the fence, but for those that have none', () => {
    const table = cutTables(plan, cutting).find(({ title }) => title === 'Fence settings') as TablePage;
    const listed = table.rows.flatMap((row) => (row.kind === 'row' ? String(row.cells[3]).split(', ') : []));
    const cuts = cutting.sheets!.sheets.flatMap(({ number, cuts: all }) =>
      all.flatMap((cut) => (cut.fence === undefined ? [] : [`${number}.${cut.number}`])),
    );
    expect(listed.sort()).toEqual(cuts.sort());
  });

  test('say of every block what comes off so that what is left is as thick as they say', () => {
    const { units } = plan.job;
    const mm = (words: string) => {
      const parsed = parseLength(words, units);
      return parsed.ok ? parsed.value : NaN;
    };
    const table = pages.flatMap((page) =>
      page.kind === 'table' && page.title === 'How each block is made' ? [page] : [],
    )[0]!;
    const [thick, how] = ['thick', 'made'].map((title) => table.columns.findIndex((column) => column.title === title));
    const told = table.rows.flatMap((row) => {
      if (row.kind !== 'row') return [];
      const [, layers = '1', sheet, planed, off] =
        /^(?:from|(\d+) layers of) (.+?), (?:planed by (.+)|(.+) (?:taken|sliced) off)$/.exec(
          String(row.cells[how!]),
        ) ?? [];
      return sheet === undefined
        ? []
        : [[row.cells[thick!], Number(layers) * mm(sheet) - mm((planed ?? off)!)] as const];
    });
    expect(told.length).toBeGreaterThan(10);
    for (const [cell, left] of told)
      expect(left).toBeCloseTo(mm(typeof cell === 'object' ? cell.text : String(cell)), 6);
  });

  test('and the gluing order carry their cautions', () => {
    expect(JSON.stringify(pages)).toMatch(/push sticks/);
    expect(JSON.stringify(gluingPages(plan, cutting))).toMatch(/isocyanate.*safety data sheet/s);
  });

  // RFC 4180: every line has the same number of fields; CRLF ends it. Read back by an independent reader.
  test.each([
    ['cuts', cutRows(plan, cutting)],
    ['blocks', blockRows(plan, cutting)],
  ])('open in a spreadsheet: %s', (_, rows) => {
    const csv = csvOf(rows);
    expect(csv.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const { data, errors } = Papa.parse<string[]>(csv, { skipEmptyLines: true });
    expect(errors).toEqual([]);
    expect(data).toHaveLength(rows.length);
    expect(new Set(data.map((cells) => cells.length))).toEqual(new Set([rows[0]!.length]));
    expect(rows.length).toBeGreaterThan(20);
  });
});

test('a job without sheets says so, and still says how large its blocks are', () => {
  const plan = planOfSample('fell-short');
  const pages = cutPages(plan, cuttingOnce(plan));
  expect(JSON.stringify(pages[0])).toMatch(/No sheets are listed in the job/);
  expect(pages.map(({ title }) => title)).toEqual(['Cutting the blocks', 'How each block is made']);
  expect(cutTables(plan, cuttingOnce(plan)).map(({ title }) => title)).toEqual(['Sizes of blocks']);
});
