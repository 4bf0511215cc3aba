import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { planOf } from '../../src/plan.js';
import { laySet } from '../../src/print/lay.js';
import { exact } from '../../src/print/paper/printer.js';
import { sheetNamed } from '../../src/print/paper/paper.js';
import { labelStocks } from '../../src/print/paper/labelStock.js';
import { finishOf } from '../../src/finish/finishOf.js';
import { namesOfPhase } from '../../src/papers/ofPhase.js';
import { choosePapers } from '../../src/papers/choose.js';
import { papersOf } from '../../src/papers/papers.js';
import type { Cell, TextPage } from '../../src/sheet/pages.js';
import { readText } from '../job/readSample.js';
import { printed } from '../print/printed.js';
import { readPdf } from '../print/readPdf.js';
import { setOf } from './wholeSet.js';

const options = { labelStock: labelStocks[0]! };
const plan = planOf(readText(readFileSync('samples/beck-guard.yaml', 'utf8')).job!);
const papers = papersOf(plan, options);
const { wholeSet } = choosePapers(papers);
const book = papers.find(({ name }) => name === 'book')!.pages(wholeSet) as TextPage[];
const [overview, shopping, ...phases] = book as [TextPage, TextPage, ...TextPage[]];
const entriesOf = (page: TextPage) => page.blocks.flatMap((block) => (block.kind === 'pages' ? block.entries : []));

describe('the build book', () => {
  test('leads from its overview to the page of every phase', () => {
    expect(entriesOf(overview).map(({ document }) => document)).toEqual(phases.map(({ title }) => title));
    expect(phases.length).toBeGreaterThan(15);
  });

  test('leads from its phases to every paper of the board, on request or not', () => {
    const led = new Set(phases.flatMap(entriesOf).map(({ document }) => document));
    expect([...led].sort()).toEqual([...new Set<string>(papers.map(({ kind }) => kind))].sort());
  });

  test.each(['A4', 'Letter'])(
    'has overview and every phase on one page of %s, but two where stations are measured',
    (paper) => {
      for (const board of ['beck-guard', 'tarn-rescue', 'mere-prone', 'fell-short']) {
        const its = planOf(readText(readFileSync(`samples/${board}.yaml`, 'utf8')).job!);
        const set = setOf(its, { only: ['book'] });
        const { leaves } = laySet(set, { paper: sheetNamed(paper)!, date: new Date(0), printer: exact });
        const goOn = leaves.flatMap(({ bookmark }, i) => (bookmark === undefined ? [leaves[i - 1]!.bookmark] : []));
        expect(goOn, board).toEqual(['5 Shaping nearly to the finish']);
      }
    },
    120_000,
  );

  test('says where every phase stands', () => {
    const notes = entriesOf(overview).map(({ note }) => note);
    expect(notes[0]).toBe('you are here');
    expect(notes[1]).toBe('not ready: first 1');
    expect(notes.every((note) => note !== undefined)).toBe(true);
  });

  test('ticks what was ticked in the tracker', () => {
    const progress = {
      isTicked: (phase: string, line: string) => `${phase} ${line}` === 'mark prick',
      finished: new Set<string>(),
    };
    const pages = papersOf(plan, { ...options, progress })
      .find(({ name }) => name === 'book')!
      .pages(wholeSet) as TextPage[];
    const ticked = pages.flatMap(({ title, blocks }) =>
      blocks.flatMap((block) =>
        block.kind === 'table'
          ? block.rows.flatMap((row) => (row.kind === 'row' && row.cells[2] === true ? [[title, row.cells[1]]] : []))
          : [],
      ),
    );
    expect(ticked).toEqual([
      ['7 Marking the faces', 'Prick the corners of every chamber through, and write its number beside it.'],
    ]);
  });

  test('says cautions on every page of a phase', () => {
    for (const { title, blocks } of phases) {
      const [caution] = blocks.filter((block) => block.kind === 'caution');
      expect(caution?.kind === 'caution' && caution.lines.length, title).toBeGreaterThan(0);
    }
  });

  test('leads to the pages where papers really are', async () => {
    const set = setOf(plan, { only: ['book', 'pole', 'closing'] });
    const { bytes } = await printed(set.pages);
    const pages = (await readPdf(bytes)).map(({ texts }) => texts.map(({ text }) => text.trim()));
    const marking = pages.find((texts) => texts[0] === '7 Marking the faces')!;
    const told = marking[marking.indexOf('Story pole') + 1]!;
    const [first, last = first] = told.split('–').map(Number) as [number, number?];
    // Every page of the pole is within, and the one before is not.
    const isPole = (page: number) => pages[page - 1]!.some((text) => text.includes('Story pole'));
    const all = pages.map((_, i) => i + 1).filter((page) => isPole(page) && !/^\d+ /.test(pages[page - 1]![0]!));
    expect(all).toEqual(Array.from({ length: last! - first + 1 }, (_, i) => first + i));
    // What is not in this print is said to be missing.
    expect(marking[marking.indexOf('Face sheets') + 1]).toBe('not printed here');
  }, 60_000);
});

describe('the shopping list', () => {
  const rows = shopping.blocks.flatMap((block) =>
    block.kind === 'table' ? block.rows.flatMap((row) => (row.kind === 'row' ? [row.cells] : [])) : [],
  );
  const read = (cell: Cell | undefined) => (typeof cell === 'object' ? cell.text : String(cell));
  const line = (what: string) => rows.find(([first]) => read(first).startsWith(what))!.map(read);

  test('has blank and lumber at the prices of the job', () => {
    expect(line('moulded foam blank')[3]).toBe('210.00');
    // One plank of each; 1 x 10 of ten feet is 100 / 12 board feet, tallied as 8.33, at 9.50 each.
    expect(line('paulownia').slice(1, 4)).toEqual(['1 of 3100 mm', 'stringers', '38.00']);
    expect(line('western-red-cedar, 1x10')[3]).toBe('79.14');
    const said = shopping.blocks.flatMap((block) => (block.kind === 'paragraph' ? [block.text] : []));
    expect(said).toContain(`What has a price comes to ${(210 + 38 + 79.14).toFixed(2)}.`);
  });

  test('has cloth and resin as they are cut and mixed', () => {
    const { cloths, resin } = finishOf(plan);
    for (const { cloth, length } of cloths) {
      const [, amount] = line(`${cloth} g/m² cloth, 762 mm wide`);
      expect(parseFloat(amount!)).toBeGreaterThanOrEqual(length - 1e-6);
      expect(parseFloat(amount!)).toBeLessThan(length + 0.11);
    }
    expect(line('resin and hardener')[1]).toBe(`${resin.toFixed(2)} kg`);
  });

  test('has what the fin takes', () => {
    expect(line('280 g/m² cloth for the panel')[1]).toBe('10 of 285 mm × 255 mm');
    expect(line('western-red-cedar, 7.00 mm')[1]).toBe('2 of 255 mm × 225 mm');
  });
});

describe('the papers of one phase', () => {
  const of = (id: string) => namesOfPhase(plan, papers, id, '--phase');

  test('are its own, with its page of the book and what tells their scale, and none that is made on request', () => {
    expect(of('fin')).toEqual(['check', 'map', 'book', 'fin']);
    expect(of('routing')).not.toContain('cards');
    expect(of('seal')).toEqual(['book', 'finish']);
    expect(of('mark')).toEqual(
      ['check', 'map', 'book', 'pole', 'face-L2', 'face-L1', 'face-R1', 'face-R2'].filter((name) =>
        papers.some((paper) => paper.name === name),
      ),
    );
    const [page, ...others] = papersOf(plan, { ...options, phase: 'fin' })
      .find(({ name }) => name === 'book')!
      .pages(wholeSet);
    expect(page!.title).toBe('13 Making the fin');
    expect(others).toEqual([]);
  });

  test('of a phase that there is not are none: those that there are, are named', () => {
    const wrong = of('varnish');
    expect(wrong).toMatchObject({ where: '--phase', what: 'this board has no phase varnish' });
    expect((wrong as { remedy: string }).remedy).toContain('glue-up, shape');
  });
});

test('where several numbers are written down, each has a line of its own', () => {
  const cell = (what: string, page: TextPage) =>
    page.blocks
      .flatMap((block) => (block.kind === 'table' ? block.rows : []))
      .flatMap((each) => (each.kind === 'row' && each.cells[0] === what ? [String(each.cells[2])] : []))[0];
  const [bars] = phases.flatMap((page) => cell('The bars of the check sheet over their true length', page) ?? []);
  expect(bars!.split('\n').map((line) => line.trim())).toEqual(['across', 'along']);
});
