import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Writable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import table from '../../templates/cautions.json' with { type: 'json' };
import { labelStockNamed } from '../../src/print/paper/labelStock.js';
import { sheetNamed } from '../../src/print/paper/paper.js';
import { writePdf } from '../../src/print/pdf.js';
import type { DocumentPage } from '../../src/sheet/pages.js';
import { AWKWARD, DATE, printed } from './printed.js';
import { openPdf, readPdf } from './readPdf.js';
import { stripDrawing } from './strip.js';

const has = (program: string): boolean => spawnSync(program, ['--version']).error === undefined;

const faces = [
  stripDrawing('face-R1', 3400, 110),
  stripDrawing('face-R2', 3400, 100),
  stripDrawing('face-R3', 3400, 90),
];

/** One of every kind. */
const everything: readonly DocumentPage[] = [
  { kind: 'check', title: 'Print check' },
  { kind: 'contents', title: 'Contents' },
  { kind: 'map', title: 'Page map' },
  {
    kind: 'text',
    title: 'Cautions',
    blocks: [
      { kind: 'title', text: AWKWARD },
      ...table.cautions.map(({ title, lines }) => ({ kind: 'caution' as const, title, lines })),
    ],
  },
  { kind: 'tiled', title: 'Face sheets', drawings: faces },
  { kind: 'figure', title: 'Face, small', drawing: faces[0]!, notes: ['From the joint.'] },
  {
    kind: 'table',
    title: 'Blocks',
    columns: [
      { title: 'Number', kind: 'text' },
      { title: 'Grams', kind: 'number', total: (sum) => `${String(sum)} g` },
      { title: 'Cut', kind: 'tick' },
    ],
    rows: Array.from({ length: 90 }, (_, i) => ({ kind: 'row', cells: [`R1-${String(i)}`, i, i === 0] })),
  },
  {
    kind: 'labels',
    title: 'Labels',
    stock: labelStockNamed('A4 3 x 8')!,
    labels: Array.from({ length: 30 }, (_, i) => ({
      number: `R1-${String(i)}`,
      lines: [AWKWARD],
      code: [
        [true, false],
        [false, true],
      ],
    })),
  },
];

describe('the PDF', () => {
  it('is the same, byte for byte, for the same set and date, and another for another date', async () => {
    const [first, second, later] = [
      await printed(everything),
      await printed(everything),
      await printed(everything, { date: new Date('2026-05-05T00:00:00Z') }),
    ];
    expect(first.bytes.equals(second.bytes)).toBe(true);
    expect(first.bytes.equals(later.bytes)).toBe(false);
  });

  it('says of every page what is a heading, a table and a figure (tagged PDF, ISO 32000-1, 14.8, read by pdf.js and poppler)', async () => {
    const { bytes } = await printed(everything);
    const pdf = await openPdf(bytes);
    expect(await pdf.getMarkInfo()).toMatchObject({ Marked: true });
    const rolesOf = (node: { role?: string; alt?: string; children?: unknown[] }): string[] => [
      ...(node.role ? [node.role] : []),
      ...(node.children ?? []).flatMap((child) => rolesOf(child as { children?: unknown[] })),
    ];
    const pages: string[][] = [];
    for (let i = 1; i <= pdf.numPages; i++) pages.push(rolesOf((await (await pdf.getPage(i)).getStructTree()) ?? {}));
    for (const [i, roles] of pages.entries()) expect(roles.length, `page ${String(i + 1)}`).toBeGreaterThan(1);
    const table = pages.find((roles) => roles.includes('Table'))!;
    expect(table.slice(0, 8)).toEqual(['Root', 'Document', 'Sect', 'H1', 'Table', 'TR', 'TH', 'TH']);
    // Three cells a row, and the page's one total.
    expect(table.filter((role) => role === 'TD').length % 3).toBe(1);
    const kinds = new Set(pages.flat());
    for (const kind of ['H1', 'P', 'Note', 'Table', 'Figure']) expect(kinds).toContain(kind);
    const folder = mkdtempSync(join(tmpdir(), 'tagged-'));
    try {
      writeFileSync(join(folder, 'set.pdf'), bytes);
      const told = execFileSync('pdfinfo', ['-struct-text', join(folder, 'set.pdf')], { encoding: 'utf8' });
      expect(told).toMatch(/Sect[^]*H1[^]*"Print check"/);
      expect(told).toMatch(/Table[^]*TR[^]*TH[^]*"Number"[^]*TD[^]*"R1-0"/);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('tells the viewer not to scale (ISO 32000-1, table 150: PrintScaling None)', async () => {
    const { bytes } = await printed(everything);
    const pdf = await openPdf(bytes);
    expect(await pdf.getViewerPreferences()).toMatchObject({ PrintScaling: 'None', DisplayDocTitle: true });
    const { info } = (await pdf.getMetadata()) as unknown as { info: Record<string, unknown> };
    expect(info).toMatchObject({ Title: AWKWARD, CreationDate: 'D:20260504000000Z' });
    await pdf.loadingTask.destroy();
  });

  it('has a bookmark for every document, at the page where it begins, and the contents say the same', async () => {
    const { bytes } = await printed(everything);
    const pdf = await openPdf(bytes);
    const outline = await pdf.getOutline();
    expect(outline.map(({ title }) => title)).toEqual(everything.map(({ title }) => title));
    const pages = await Promise.all(
      outline.map(
        async ({ dest }) => 1 + (await pdf.getPageIndex((dest as unknown[])[0] as { num: number; gen: number })),
      ),
    );
    await pdf.loadingTask.destroy();
    const [contents] = await readPdf(bytes, [2]);
    outline.forEach(({ title }, i) => {
      const line = contents!.texts.find(({ text, y }) => text === title && y < 270)!;
      expect(contents!.texts.some(({ text, y }) => text === String(pages[i]) && Math.abs(y - line.y) < 0.1)).toBe(true);
    });
  });

  it('says job, revision, date, drawing and place on every full-size sheet, and any name as it is', async () => {
    const { bytes, tiled } = await printed([{ kind: 'tiled', title: 'Faces', drawings: [faces[0]!] }]);
    const pages = await readPdf(bytes);
    expect(pages).toHaveLength(tiled[0]!.sheets);
    const carried: number[] = [];
    let last = 0;
    pages.forEach(({ texts }, i) => {
      const words = texts.map(({ text }) => text).join('\n');
      for (const needed of [AWKWARD, '2026-05-04', faces[0]!.title, '100 %', '100 mm', '4 in']) {
        expect(words).toContain(needed);
      }
      expect(words).toContain(`sheet ${String(i + 1).padStart(2, '0')}/${String(pages.length)}`);
      const strips = /strips ([\d ]+)\/(\d+)/.exec(words)!;
      carried.push(...strips[1]!.split(' ').map(Number));
      last = Number(strips[2]);
      expect(words).toContain(`page ${String(i + 1)} of ${String(pages.length)}`);
    });
    // Each strip of the drawing on one page.
    expect(carried.sort((a, b) => a - b)).toEqual(Array.from({ length: last }, (_, i) => i + 1));
  });

  it('is called by its document and the number in it, page by page (ISO 32000-1, 12.4.2)', async () => {
    const pdf = await openPdf((await printed(everything)).bytes);
    const labels = (await pdf.getPageLabels())!;
    const { numPages } = pdf;
    await pdf.loadingTask.destroy();
    expect(labels).toHaveLength(numPages);
    expect(labels[0]).toBe('Print check');
    expect(labels).toContain('Face sheets · 3');
    expect(labels.filter((label) => label.startsWith('Blocks · ')).map((label) => label.slice(9))).toEqual(
      labels.filter((label) => label.startsWith('Blocks · ')).map((_, i) => String(i + 1)),
    );
    expect(new Set(labels).size).toBe(labels.length);
  });

  it('is not written with characters that its font lacks: they are named, with the words they stand in', async () => {
    const odd = await printed([
      { kind: 'text', title: 'Notes', blocks: [{ kind: 'paragraph', text: 'Bug 🏄 und 木' }] },
    ]);
    expect(odd.bytes.length).toBe(0);
    expect(odd.findings.map(({ where, what }) => [where, /"(.)"/u.exec(what)?.[1]])).toEqual([
      ['words', '🏄'],
      ['words', '木'],
    ]);
    const job = await printed(everything, {}, { job: 'Ελλάδα 🏄' });
    expect(job.findings.map(({ what }) => what).join()).toContain('as in "Ελλάδα 🏄"');
  });

  it('repeats a list header on each page and adds up pages and all', async () => {
    const { bytes } = await printed([everything[6]!]);
    const pages = await readPdf(bytes);
    expect(pages.length).toBeGreaterThan(2);
    let sum = 0;
    for (const { texts } of pages) {
      expect(texts.filter(({ text }) => text === 'Number')).toHaveLength(1);
      const total = texts.filter(({ text }) => / g$/.test(text)).sort((a, b) => b.y - a.y)[0]!;
      sum += Number.parseInt(total.text, 10);
    }
    // 0 + 1 + … + 89
    expect(sum).toBe(4005);
    expect(pages.at(-1)!.texts.some(({ text }) => text === '4005 g')).toBe(true);
    // Nothing is lost.
    const all = pages.flatMap(({ texts }) => texts.map(({ text }) => text));
    for (let i = 0; i < 90; i++) expect(all).toContain(`R1-${String(i)}`);
  });

  it('keeps every word and mark of lists, notes, labels and figures on the page', async () => {
    for (const page of await readPdf((await printed(everything.filter(({ kind }) => kind !== 'tiled'))).bytes)) {
      for (const { x, y } of [...page.texts, ...page.fills.flat()]) {
        expect(x).toBeGreaterThanOrEqual(-0.01);
        expect(y).toBeGreaterThanOrEqual(-0.01);
        expect(x).toBeLessThanOrEqual(page.width + 0.01);
        expect(y).toBeLessThanOrEqual(page.height + 0.01);
      }
    }
  });

  it.skipIf(!has('qpdf') || !has('pdfinfo'))('is valid for qpdf and poppler', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'papers-'));
    try {
      const file = join(folder, 'papers.pdf');
      const { bytes, pages } = await printed(everything);
      writeFileSync(file, bytes);
      expect(execFileSync('qpdf', ['--check', file], { encoding: 'utf8' })).toContain(
        'No syntax or stream encoding errors',
      );
      const info = execFileSync('pdfinfo', [file], { encoding: 'utf8' });
      expect(info).toContain(`Title:           ${AWKWARD}`);
      expect(info).toMatch(new RegExp(`Pages: +${String(pages)}\n`));
      const fonts = execFileSync('pdffonts', [file], { encoding: 'utf8' }).trim().split('\n').slice(2);
      for (const font of fonts) expect(font).toMatch(/DejaVuSans.* yes +yes +yes/);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('fails with the error of what it writes to', async () => {
    const full = new Writable({
      write: (_chunk, _encoding, done) => {
        done(new Error('no space left'));
      },
    });
    await expect(
      writePdf({ mark: { job: 'x' }, pages: everything }, full, { date: DATE, paper: sheetNamed('A4')! }),
    ).rejects.toThrow('no space left');
  });

  it('names what is wrong with margin, overlap and paper instead of printing', async () => {
    const wrong = await printed(everything, { settings: { margin: -1, overlap: 80 } });
    expect(wrong.findings.map(({ where }) => where)).toEqual(['margin', 'overlap']);
    const small = await printed(everything, { paper: { kind: 'roll', name: 'till roll', width: 80 } });
    expect(small.findings.map(({ where }) => where)).toEqual(['paper']);
    expect(small.bytes.length).toBe(0);
  });

  it('prints a thousand chambers in less than 400 MB', async () => {
    const many: DocumentPage[] = Array.from({ length: 120 }, (_, i) => ({
      kind: 'tiled',
      title: `Face ${String(i)}`,
      drawings: [stripDrawing(`face-R${String(i)}`, 3400, 110)],
    }));
    let most = 0;
    const before = process.memoryUsage().rss;
    const nowhere = new Writable({ write: (_chunk, _encoding, done) => void setImmediate(done) });
    const { pages } = await writePdf({ mark: { job: 'large' }, pages: many }, nowhere, {
      date: DATE,
      paper: sheetNamed('A4')!,
      onProgress: () => {
        most = Math.max(most, process.memoryUsage().rss);
      },
    });
    expect(pages).toBeGreaterThan(1000);
    expect((most - before) / 1e6).toBeLessThan(400);
  });
});
