import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'yaml';
import { expect, it } from 'vitest';
import { jobJsonSchema } from '../../../src/job/whole/file.js';
import { textOf } from '../readSample.js';

const schema = JSON.parse(JSON.stringify(jobJsonSchema())) as Record<string, unknown>;

it('the schema that editors use is up to date; if not, run npm run schema', () => {
  expect(JSON.parse(textOf('templates/job.schema.json'))).toEqual(schema);
});

// An independent reader of JSON Schema (ajv) takes the samples, and refuses what ours refuses.
const valid = new Ajv2020({ allowUnionTypes: true }).compile(schema);

it.each(['samples/tarn-rescue.yaml', 'samples/mere-prone.yaml', 'samples/fell-short.yaml', 'templates/starter.yaml'])(
  '%s is right by it',
  (path) => {
    expect(valid(parse(textOf(path))) || valid.errors).toBe(true);
  },
);

it.each([
  ['an unknown key', 'web: 30', 'wbe: 30'],
  ['an unknown word', 'nose: pointed', 'nose: pointy'],
  ['a list for a length', 'web: 30', 'web: [30]'],
])('%s is wrong by it', (_, from, to) => {
  const mere = textOf('samples/mere-prone.yaml');
  expect(mere).toContain(from);
  expect(valid(parse(mere.replace(from, to)))).toBe(false);
});

it('every key is explained in it', () => {
  const unexplained: string[] = [];
  const look = (node: unknown, path: string): void => {
    if (typeof node !== 'object' || node === null) return;
    for (const [name, child] of Object.entries(node)) {
      if (name === 'properties') {
        for (const [key, value] of Object.entries(child as Record<string, { description?: string }>)) {
          if (!value.description) unexplained.push(`${path}.${key}`);
          look(value, `${path}.${key}`);
        }
      } else look(child, path);
    }
  };
  look(schema, '');
  expect(unexplained).toEqual([]);
});
