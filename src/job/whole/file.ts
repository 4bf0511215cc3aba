import { z } from 'zod';
import type { Units } from '../../length/units.js';
import { blocksSchema } from '../parts/blocks.js';
import { boardSchema, type BoardFile } from '../parts/board.js';
import { chambersSchema } from '../parts/chambers.js';
import { dotsSchema } from '../parts/dots.js';
import { fillSchema } from '../parts/fill.js';
import { finsSchema } from '../parts/fins.js';
import { fittingsSchema } from '../parts/fittings.js';
import { glassSchema } from '../parts/glass.js';
import { glueUpSchema } from '../parts/glue-up.js';
import { keepOutsSchema } from '../parts/keep-outs.js';
import { materialsSchema } from '../parts/materials.js';
import { printerSchema } from '../parts/printer.js';
import { riderSchema } from '../parts/rider.js';
import { routedSchema } from '../parts/routed.js';
import { routingSchema } from '../parts/routing.js';
import { scanSchema, type ScanFile } from '../parts/scan.js';
import { shapedSchema, type ShapedFile } from '../parts/shaped.js';
import { stockSchema } from '../parts/stock.js';
import { targetSchema } from '../parts/target.js';
import { weighingsSchema } from '../parts/weighings.js';
import { keysWithin } from '../mistake/issues.js';
import { quantities, type Quantities } from '../quantities.js';
import { shortText } from '../text.js';

/** How the board is given, and what was measured after shaping: by numbers, or by a mesh. */
export interface Forms {
  readonly board: Form;
  readonly shaped: Form;
}
type Form = 'numbers' | 'mesh' | 'either';

/** How they are given in a file that was read as YAML or JSON. */
export function formsOf(value: unknown): Forms {
  const { board, shaped } = value as { board?: unknown; shaped?: unknown };
  const formOf = (part: unknown) => (typeof part === 'object' && part !== null && 'mesh' in part ? 'mesh' : 'numbers');
  return { board: formOf(board), shaped: formOf(shaped) };
}

const EITHER: Forms = { board: 'either', shaped: 'either' };

/**
 * A job as it is written down: one line a part, each part in its own file under `parts`. What is wrong with a part that
 * has two forms is told by the one that it is written in; both are in the schema for editors.
 */
export function jobFileSchema(q: Quantities, forms: Forms) {
  const board = {
    numbers: () => boardSchema(q),
    mesh: () => scanSchema(q),
    either: () =>
      z.union([boardSchema(q), scanSchema(q)]).meta({ description: 'the finished board, by numbers or as a mesh' }),
  };
  const shaped = {
    numbers: () => shapedSchema(q),
    mesh: () => scanSchema(q),
    either: () =>
      z
        .union([shapedSchema(q), scanSchema(q)])
        .meta({ description: 'what was measured after shaping, place by place, or the board scanned anew' }),
  };
  return z
    .strictObject({
      job: shortText('what the job is called; printed on every sheet'),
      units: z.enum(['mm', 'in']).meta({ description: 'what a bare number is in, and how papers print: mm or in' }),
      board: board[forms.board]() as z.ZodType<BoardFile | ScanFile>,
      glueUp: glueUpSchema(q),
      chambers: chambersSchema(q).optional(),
      keepOuts: keepOutsSchema(q).optional(),
      dots: dotsSchema(q).optional(),
      routing: routingSchema(q).optional(),
      shaped: (shaped[forms.shaped]() as z.ZodType<ShapedFile[] | ScanFile>).optional(),
      routed: routedSchema(),
      fill: fillSchema(q),
      blocks: blocksSchema(q).optional(),
      stock: stockSchema(q).optional(),
      materials: materialsSchema(q).optional(),
      glass: glassSchema(q).optional(),
      fins: finsSchema(q).optional(),
      fittings: fittingsSchema(q).optional(),
      weighings: weighingsSchema(q).optional(),
      printer: printerSchema(q).optional(),
      rider: riderSchema(q).optional(),
      target: targetSchema(q).optional(),
    })
    .meta({
      title: 'chamberwright job',
      description: 'a chambered board: its shape, its glue-up, and what is routed out of it',
    });
}

export type JobFile = z.infer<ReturnType<typeof jobFileSchema>>;

const schemas = new Map<string, ReturnType<typeof jobFileSchema>>();

/**
 * The schema of a file whose bare numbers are in `units`; made once, because a page reads a job at every key pressed.
 */
export function jobFileSchemaFor(units: Units, forms = EITHER): ReturnType<typeof jobFileSchema> {
  const key = `${units} ${forms.board} ${forms.shaped}`;
  const schema = schemas.get(key) ?? jobFileSchema(quantities(units), forms);
  schemas.set(key, schema);
  return schema;
}

const jsonSchemas = new Map<string, z.core.JSONSchema.BaseSchema>();

/**
 * The same as JSON Schema (draft 2020-12): what a builder may write, before it is read. For editors with both forms of
 * what has two.
 */
export function jobJsonSchema(forms = EITHER): z.core.JSONSchema.BaseSchema {
  const key = `${forms.board} ${forms.shaped}`;
  const schema =
    jsonSchemas.get(key) ?? z.toJSONSchema(jobFileSchemaFor('mm', forms), { io: 'input', target: 'draft-2020-12' });
  jsonSchemas.set(key, schema);
  return schema;
}

let known: { readonly top: readonly string[]; readonly all: readonly string[] } | undefined;

/** The names of all keys of a job: those at its left edge, and all. */
export function keysOfJob(): NonNullable<typeof known> {
  known ??= { top: Object.keys(jobJsonSchema().properties ?? {}), all: [...new Set(keysWithin(jobJsonSchema()))] };
  return known;
}
