import { PassThrough } from 'node:stream';
import { describe, expect, test } from 'vitest';
import { countFile } from '../../src/papers/count.js';
import { preparePapers, type Prepared } from '../../src/papers/prepare.js';
import { paperRunOf, type PaperChoices } from '../../src/papers/run.js';
import type { FileBook } from '../../src/print/page/leaf.js';
import { writePdf } from '../../src/print/pdf.js';
import { kindName, type PaperKind } from '../../src/sheet/uses.js';
import { openPdf } from '../print/readPdf.js';
import { planOfSample, SAMPLES } from '../sheet/sample.js';

function prepared(name: (typeof SAMPLES)[number], choices: PaperChoices): Prepared {
  const plan = planOfSample(name);
  const run = paperRunOf({ date: '2026-05-01', ...choices }, plan.job.units, (choice) => choice);
  if ('remedy' in run) throw new Error(run.what);
  const made = preparePapers(plan, run, (choice) => choice);
  if ('findings' in made) throw new Error(JSON.stringify(made.findings));
  return made;
}

async function written({ files, print }: Prepared) {
  const all = [];
  const beside: FileBook[] = [];
  for (const { name, set } of files) {
    const out = new PassThrough();
    const parts: Buffer[] = [];
    out.on('data', (part: Buffer) => parts.push(part));
    const { book } = await writePdf(set, out, { ...print, beside });
    beside.push({ name, book: book! });
    const pdf = await openPdf(new Uint8Array(Buffer.concat(parts)));
    const labels = (await pdf.getPageLabels())!;
    const sizes = await Promise.all(
      labels.map(async (_, i) => {
        const [, , width, height] = (await pdf.getPage(i + 1)).view;
        return [width!, height!] as const;
      }),
    );
    const first = await (await pdf.getPage(1)).getTextContent();
    const words = first.items.map((item) => ('str' in item ? item.str : ''));
    all.push({ name, labels, sizes, words });
  }
  return all;
}

const FULL_SIZE: readonly PaperKind[] = ['face', 'pole', 'blocks', 'dots-full'];

describe.each(SAMPLES)('the files of %s', (name) => {
  test('have as many pages as was said before any was drawn, of each kind', async () => {
    const made = prepared(name, { paper: 'A4', with: ['dots-full'], without: ['cutting', 'labels'] });
    const files = await written(made);
    expect(files.map((file) => file.name)).toEqual(['papers.pdf', 'book.pdf', 'look.pdf']);
    made.files.forEach((file, i) => {
      const counted = countFile(file, made.print);
      const { labels } = files[i]!;
      expect(counted.pages).toBe(labels.length);
      expect(counted.kinds.reduce((sum, { pages }) => sum + pages, 0)).toBe(labels.length);
      for (const { kind, pages, tape } of counted.kinds) {
        const own = labels.filter((label) => label.replace(/ · \d+$/, '') === kindName(kind));
        // Lists are called by their own titles; full-size sheets of several by their kind.
        if (FULL_SIZE.includes(kind)) expect([kind, own.length]).toEqual([kind, pages]);
        if (kind === 'face') expect(tape).toBeGreaterThan(pages * 50);
        if (kind === 'cover') expect(tape).toBe(0);
      }
    });
    const kinds = made.files.flatMap((file) => countFile(file, made.print).kinds.map(({ kind }) => kind));
    expect(kinds).not.toContain('cutting');
    expect(new Set(kinds).size).toBe(kinds.length);
  });

  test('keep what goes to a print shop on a roll apart, each page no longer than a PDF may be', async () => {
    const made = prepared(name, { roll: '610mm' });
    const [papers, shop, book, look] = await written(made);
    const names = [papers, shop, book, look].map((file) => file!.name);
    expect(names).toEqual(['papers.pdf', 'print-shop.pdf', 'book.pdf', 'look.pdf']);
    // A4 is 210 × 297 mm (ISO 216): 595.3 × 841.9 points.
    for (const size of [...papers!.sizes, ...look!.sizes])
      expect([...size].sort((a, b) => a - b).map((side) => Math.round(side * 10) / 10)).toEqual([595.3, 841.9]);
    for (const [width, height] of shop!.sizes) {
      expect(height).toBeCloseTo((610 / 25.4) * 72, 2);
      // ISO 32000-1, Annex C: 14,400 units.
      expect(width).toBeLessThanOrEqual(14_400);
    }
    expect(shop!.labels.join()).toContain('Face sheets');
    expect(papers!.labels.join()).not.toContain('Face sheets');
    expect(papers!.labels.join()).not.toContain('Page map');
  });
});

test('a phase in the book tells the pages that its papers have in the file they are printed from', async () => {
  const [papers, book] = await written(prepared('mere-prone', { paper: 'A4', phase: 'mark' }));
  expect([papers!.name, book!.name]).toEqual(['papers.pdf', 'book.pdf']);
  const isFace = papers!.labels.map((label) => label.startsWith('Face sheets'));
  const [from, to] = [isFace.indexOf(true) + 1, isFace.lastIndexOf(true) + 1];
  expect(to).toBeGreaterThan(from);
  expect(book!.words.join(' ')).toMatch(new RegExp(`Face sheets\\s+papers\\.pdf ${from}–${to}(?!\\d)`));
});

test('nothing is made where all papers are left out, and a name that there is not is told where it was said', () => {
  const plan = planOfSample('mere-prone');
  const run = (choices: PaperChoices) => {
    const understood = paperRunOf(choices, plan.job.units, (choice) => choice);
    if ('remedy' in understood) throw new Error(understood.what);
    return preparePapers(plan, understood, (choice) => `--${choice}`);
  };
  expect(run({ only: ['pole'], without: ['pole'] })).toMatchObject({ findings: [{ where: '--without' }] });
  expect(run({ without: ['poles'] })).toMatchObject({
    findings: [{ where: '--without', what: 'there are no papers poles' }],
  });
  expect(run({ with: ['dots-ful'] })).toMatchObject({ findings: [{ where: '--with' }] });
});
