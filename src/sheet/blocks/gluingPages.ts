import words from '../../../templates/cutting.json' with { type: 'json' };
import type { Cutting } from '../../block/cut/cutting.js';
import { glueFinding } from '../../block/glue/glueFinding.js';
import { sayFinding } from '../../finding/say.js';
import { printLength } from '../../length/length.js';
import type { Plan } from '../../plan.js';
import type { DocumentPage } from '../pages.js';
import { say } from '../../words/say.js';

/** The blocks in the batches they are glued in, with glue, clamps and the cautions. */
export function gluingPages(plan: Plan, { glue: { batches, glue, clamps, faults } }: Cutting): DocumentPage[] {
  const { units } = plan.job;
  const { openTime, minutesPerBlock, spread } = plan.job.blocks.glue;
  const { title, intro, how, tableTitle, notes, columns } = words.gluing;
  const values = {
    batches: batches.length,
    minutes: minutesPerBlock,
    open: openTime,
    glue: Math.ceil(glue),
    spread: Math.round(spread),
    clamps,
  };
  return [
    {
      kind: 'text',
      title,
      blocks: [
        { kind: 'title', text: title },
        ...(faults.length > 0
          ? [{ kind: 'list' as const, items: faults.map((fault) => sayFinding(glueFinding(fault))) }]
          : [{ kind: 'paragraph' as const, text: say(intro, values) }]),
        { kind: 'list', items: how, numbered: true },
        { kind: 'caution', ...words.cautions.glue },
      ],
    },
    {
      kind: 'table',
      title: tableTitle,
      notes,
      columns: [
        { title: columns.batch, kind: 'number' },
        { title: columns.blocks, kind: 'text' },
        { title: columns.minutes, kind: 'number', total: (sum) => sum.toFixed(0) },
        { title: columns.glue, kind: 'number', total: (sum) => sum.toFixed(0) },
        { title: columns.clamps, kind: 'text' },
        { title: columns.done, kind: 'tick' },
      ],
      rows: batches.map((batch) => ({
        kind: 'row',
        cells: [
          batch.number,
          batch.blocks.join(', '),
          { value: batch.minutes, text: String(Number(batch.minutes.toFixed(1))) },
          { value: batch.glue, text: batch.glue.toFixed(0) },
          batch.clamps.map((mm) => printLength(mm, units)).join(', '),
          false,
        ],
      })),
    },
  ];
}
