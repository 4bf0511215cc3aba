import words from '../../../templates/closing.json' with { type: 'json' };
import { closingOf } from '../../book/closing.js';
import { printLength } from '../../length/length.js';
import { printWeight } from '../../length/weight.js';
import type { Plan } from '../../plan.js';
import { say, WORDS } from '../../words/say.js';
import { cautionsOf } from '../cautions.js';
import type { Cell, TextBlock, TextPage } from '../pages.js';
import { columnsOf, row } from '../table.js';

/** How the pieces are glued into one board again: order, glue and clamps, dry run, checks, before the glue sets. */
export function closingPage(plan: Plan): TextPage {
  const { units, blocks } = plan.job;
  const { goes, checks } = closingOf(plan);
  const { columns, checkColumns } = words;
  const length = (mm: number): Cell => ({ value: mm, text: printLength(mm, units) });
  const list = (items: readonly string[]): TextBlock => ({ kind: 'list', items, numbered: true });
  const isAlike = checks.every(({ left, right }) => Math.abs(left - right) < 0.5);
  return {
    kind: 'text',
    title: words.title,
    blocks: [
      { kind: 'heading', text: words.orderHeading },
      { kind: 'paragraph', text: words.order },
      {
        kind: 'table',
        columns: columnsOf(
          [columns.go, 'number'],
          [columns.joints, 'text'],
          [columns.pieces, 'text'],
          [columns.glue, 'number'],
          [columns.clamps, 'number'],
          [columns.done, 'tick'],
        ),
        rows: goes.map(({ joints, pieces, glue, clamps }, i) =>
          row(
            i + 1,
            joints.join(WORDS.joinWith),
            pieces.join(WORDS.joinWith),
            { value: glue, text: printWeight(glue / 1000, units) },
            clamps.length,
            false,
          ),
        ),
      },
      ...goes.map(({ clamps }, i) => ({
        kind: 'paragraph' as const,
        text: say(words.places, { go: i + 1, places: clamps.map((x) => printLength(x, units)).join(WORDS.joinWith) }),
      })),
      { kind: 'paragraph', text: words.clamps },
      { kind: 'heading', text: words.dryHeading },
      list(words.dry),
      { kind: 'heading', text: words.checksHeading },
      { kind: 'paragraph', text: words.checksNote },
      {
        kind: 'table',
        columns: columnsOf(
          [checkColumns.x, 'number'],
          [checkColumns.width, 'number'],
          [checkColumns.found, 'text'],
          ...(isAlike
            ? [[checkColumns.half, 'number'] as const]
            : ([
                [checkColumns.left, 'number'],
                [checkColumns.right, 'number'],
              ] as const)),
          [checkColumns.bottom, 'number'],
          [checkColumns.found, 'text'],
        ),
        rows: checks.map(({ x, width, left, right, bottom }) =>
          row(
            length(x),
            length(width),
            BLANK,
            ...(isAlike ? [length(right)] : [length(left), length(right)]),
            length(bottom),
            BLANK,
          ),
        ),
      },
      { kind: 'heading', text: words.wetHeading },
      list(words.wet.map((each) => say(each, { open: blocks.glue.openTime }))),
      cautionsOf(['isocyanate', 'lifting']),
    ],
  };
}

/** Keeps room for what is written by hand. */
const BLANK = '\u00a0'.repeat(10);
