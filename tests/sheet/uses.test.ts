import { describe, expect, test } from 'vitest';
import uses from '../../templates/uses.json' with { type: 'json' };
import { planOf } from '../../src/plan.js';
import { labelStocks } from '../../src/print/paper/labelStock.js';
import type { TextPage } from '../../src/sheet/pages.js';
import { choosePapers } from '../../src/papers/choose.js';
import { papersOf, revisionOf } from '../../src/papers/papers.js';
import { planOfSample, SAMPLES } from './sample.js';
import { setOf } from '../papers/wholeSet.js';

const options = { labelStock: labelStocks[0]! };
const isSize = (size: keyof typeof uses.size) => (words: string | undefined) => words === uses.size[size];

describe.each(SAMPLES)('every page of %s', (name) => {
  const plan = planOfSample(name);
  const set = setOf(plan);

  test('says whether its size matters: what is printed at full size does, and nothing else but labels and the check', () => {
    for (const { kind, title, use } of set.pages) {
      const expected = kind === 'tiled' || kind === 'check' ? 'full' : kind === 'labels' ? 'stock' : 'any';
      expect(isSize(expected)(use?.size), title).toBe(true);
      expect(use!.when, title).toMatch(/^Valid: \w/);
    }
  });

  test('has its kind on the cover, with its size', () => {
    const { blocks } = set.pages[0] as TextPage;
    const pairs = blocks.flatMap((block) => (block.kind === 'pairs' ? block.pairs : []));
    for (const { kind } of choosePapers(papersOf(plan, options)).toPrint) {
      const { name: called, size } = uses.kinds[kind];
      expect(pairs.find(([first]) => first === called)?.[1], kind).toContain(uses.size[size as keyof typeof uses.size]);
    }
    expect(JSON.stringify(blocks)).not.toContain('any size. Everything');
  });
});

describe('a sheet printed before the board was measured', () => {
  const drawn = planOfSample('mere-prone');
  // A millimetre and a half less foam at the widest place than drawn.
  const { value } = { value: drawn.board.thickness - 1.5 };
  const measured = planOf({
    ...drawn.job,
    shaped: [{ kind: 'thickness', x: 1900, y: 0, value, off: 'bottom' }],
  });
  const coverOf = (plan: typeof drawn, revision?: string) =>
    JSON.stringify(setOf(plan, { only: ['cover'] }, revision ? { revision } : {}));

  test('carries another revision, and the cover names its kind void', () => {
    expect(revisionOf(measured)).not.toBe(revisionOf(drawn));
    expect(coverOf(drawn)).toContain(`"revision":"${revisionOf(drawn)}"`);
    expect(coverOf(drawn)).toContain('Nothing is measured after shaping yet');
    const cover = coverOf(measured);
    expect(cover).toContain(`"revision":"${revisionOf(measured)}"`);
    const [, kinds] = /without this revision, are void: ([^.]*)\./.exec(cover)!;
    for (const kind of ['face', 'blocks', 'router', 'labels'] as const)
      expect(kinds).toContain(uses.kinds[kind].name.toLowerCase());
    expect(kinds).not.toContain('pole');
    expect(cover).toMatch(/still hold: [^.]*story pole/);
  });

  test('says for what it is valid: to look at only before, for routing after', () => {
    const face = (plan: typeof drawn) => setOf(plan).pages.find(({ title }) => title === 'Face sheets');
    expect(face(drawn)!.use!.when).toContain('to look at only');
    expect(face(measured)!.use!.when).toContain('for routing');
  });

  test('keeps the revision that was given by hand, which says so', () => {
    const cover = coverOf(drawn, 'B');
    expect(cover).toContain('"revision":"B"');
    expect(cover).toContain(`given by hand`);
    expect(cover).toContain(`own stamp is ${revisionOf(drawn)}`);
  });
});
