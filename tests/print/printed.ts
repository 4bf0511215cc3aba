import { Writable } from 'node:stream';
import type { PrintOptions } from '../../src/print/lay.js';
import { writePdf, type Printed } from '../../src/print/pdf.js';
import { sheetNamed } from '../../src/print/paper/paper.js';
import type { DocumentPage, JobMark } from '../../src/sheet/pages.js';

/** A name that trips every writer that does not escape, and letters that a standard font garbles. */
export const AWKWARD = 'A & B <"c"> č ≥';

export const DATE = new Date('2026-05-04T00:00:00Z');

/** Prints pages into memory, on A4 unless told otherwise. */
export async function printed(
  pages: readonly DocumentPage[],
  options: Partial<PrintOptions> = {},
  mark: JobMark = { job: AWKWARD, revision: 'B', owner: 'Lake rescue boat club' },
): Promise<Printed & { readonly bytes: Buffer }> {
  const chunks: Buffer[] = [];
  const out = new Writable({
    write(chunk: Buffer, _encoding, done) {
      chunks.push(chunk);
      done();
    },
  });
  const result = await writePdf({ mark, pages }, out, { date: DATE, paper: sheetNamed('A4')!, ...options });
  return { ...result, bytes: Buffer.concat(chunks) };
}
