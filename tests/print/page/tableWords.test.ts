import { describe, expect, test } from 'vitest';
import { sheetNamed } from '../../../src/print/paper/paper.js';
import type { DocumentPage } from '../../../src/sheet/pages.js';
import { textOf } from '../../../src/print/page/cell.js';
import { planOfSample, SAMPLES } from '../../sheet/sample.js';
import { wholeSetOf } from '../../papers/wholeSet.js';
import { printed } from '../printed.js';
import { readPdf } from '../readPdf.js';

type Table = Extract<DocumentPage, { kind: 'table' }>;

/** Head and cells of a table, as they are meant to be read. */
const cellsOf = ({ columns, rows }: Table): string[] => [
  ...columns.map(({ title }) => title),
  ...rows.flatMap((row) => (row.kind === 'row' ? row.cells.map(textOf) : [row.text])),
];

/** A text with each measure as one word. */
const asJoined = (text: string): string =>
  text
    .trim()
    .replace(/(?<=\d) (?=\d+\/\d+)|(?<=\d) (?=(mm|in|ft|kg|lb)(?!\w))/g, '_')
    .replace(/\s+/g, ' ');

describe.each(SAMPLES.flatMap((name) => ['A4', 'Letter'].map((paper) => [name, paper] as const)))(
  'the tables of %s on %s',
  (name, paper) => {
    test('break no word, and no measure from its fraction or its unit', async () => {
      const set = wholeSetOf(planOfSample(name));
      for (const page of set.pages.filter(({ kind }) => kind === 'table') as Table[]) {
        const { bytes } = await printed(
          [{ ...page, columns: page.columns.map(({ title, kind }) => ({ title, kind })) }],
          { paper: sheetNamed(paper)! },
          set.mark,
        );
        // pdf.js gives what was written in one go as one. A stump stands in the table only with a letter or a figure
        // joined to it.
        const joined = cellsOf(page).map(asJoined);
        const others = [page.title, ...(page.notes ?? []), ...Object.values(page.use ?? {}), set.mark.job].map(
          asJoined,
        );
        const whole = ` ${[...joined, ...others].join(' ')} `;
        const lines = (await readPdf(bytes)).flatMap(({ texts }) => texts.map(({ text }) => asJoined(text)));
        const stumps = lines.filter(
          (line) =>
            /\w/.test(line) &&
            !whole.includes(` ${line} `) &&
            joined.some((cell) => cell.includes(line) && !cell.includes(`${line} `)),
        );
        expect({ table: page.title, stumps }).toEqual({ table: page.title, stumps: [] });
      }
    });
  },
);
