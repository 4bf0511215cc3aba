import { describe, expect, test } from 'vitest';
import { planOf } from '../../src/plan.js';
import { bendingOf, rectangle } from '../../src/weigh/bending.js';
import { laminateOf, modulusOf } from '../../src/weigh/modulus.js';
import { underHeelOf } from '../../src/weigh/underHeel.js';
import { tarn } from './tarn.js';

const plan = planOf(tarn());
const found = underHeelOf(plan.layup, plan.chambers, plan.job);
const named = (id: string) => plan.chambers.find((chamber) => chamber.id === id)!;
const isAlone = ({ over }: (typeof found)[number]) => over.length === 1;

describe('the deck under the edge of a heel', () => {
  test('is told for every chamber, in their order, with the skin where it is thinnest', () => {
    expect(found.map(({ chamber }) => chamber)).toEqual(plan.chambers.map(({ id }) => id));
    for (const { chamber, over, at, skin } of found) {
      expect(over).toContain(chamber);
      const thinnest = over.map(named).reduce((a, b) => (b.wall.deck < a.wall.deck ? b : a));
      expect([skin, at]).toEqual([thinnest.wall.deck, thinnest.at.deck]);
    }
  });

  // Roark's Formulas, 7th ed., table 11.4, case 1b: y = α W b² / E t³, so α W b² / 12 (1 − ν²) D, with α from 0.1267
  // for a square to 0.1851 for a strip; D of glass on foam by Gere's transformed section, held in `bending.test.ts`.
  test('gives as a plate does that is held up along four edges', () => {
    const { glass, chambers } = plan.job;
    expect(chambers.deckSkin).toBeGreaterThan(0);
    const laminate = laminateOf(
      [...glass!.deck, glass!.hotCoatCloth].reduce((a, b) => a + b, 0),
      glass!.resin,
    );
    const foam = modulusOf(plan.layup.members.find(({ kind }) => kind === 'strip')!.material);
    for (const { skin, sides, empty } of found) {
      const top = rectangle(laminate.modulus, 1, skin, skin + laminate.thickness);
      const { stiffness } = bendingOf([rectangle(foam, 1, 0, skin), top]);
      const alpha = (empty * 12 * stiffness) / (100 * sides[1] ** 2);
      expect(sides[0]).toBeGreaterThanOrEqual(sides[1]);
      expect(alpha).toBeGreaterThan(0.1265);
      expect(alpha).toBeLessThan(0.1853);
    }
  });

  test('gives less over a block, and less than a plate without end on it would: W / 8 √(k D)', () => {
    const bed = modulusOf(plan.job.fill);
    const { glass } = plan.job;
    const laminate = laminateOf(
      [...glass!.deck, glass!.hotCoatCloth].reduce((a, b) => a + b, 0),
      glass!.resin,
    );
    const foam = modulusOf(plan.layup.members.find(({ kind }) => kind === 'strip')!.material);
    for (const { chamber, skin, empty, filled } of found.filter(isAlone)) {
      const { profile } = named(chamber);
      const high = Math.max(...profile.map(([, z]) => z)) - Math.min(...profile.map(([, z]) => z));
      const top = rectangle(laminate.modulus, 1, skin, skin + laminate.thickness);
      const stiffness = bendingOf([rectangle(foam, 1, 0, skin), top]).stiffness / (1 - 0.3 ** 2);
      expect(filled).toBeGreaterThan(0);
      expect(filled).toBeLessThan(empty);
      expect(filled).toBeLessThan(100 / (8 * Math.sqrt((bed / high) * stiffness)));
    }
  });

  test('is looked at over chambers together that open into each other across joints, as far as all lie there', () => {
    const together = found.filter((each) => !isAlone(each));
    expect(together.length).toBeGreaterThan(0);
    for (const { over, sides } of together) {
      const each = over.map(named);
      const wide = each.reduce((sum, { depth }) => sum + depth[1] - depth[0], 0);
      // The sample's faces are parallel to the centreline, so that s is x.
      const from = Math.max(...each.map(({ profile }) => Math.min(...profile.map(([s]) => s))));
      const to = Math.min(...each.map(({ profile }) => Math.max(...profile.map(([s]) => s))));
      expect([...sides].sort((a, b) => a - b)).toEqual(
        [wide, to - from].sort((a, b) => a - b).map((mm) => expect.closeTo(mm, 6)),
      );
      expect(new Set(each.map(({ row }) => plan.layup.rows.find(({ id }) => id === row)!.piece)).size).toBe(
        over.length,
      );
    }
  });

  test('gives more where the skin is thinner, and is the same left and right', () => {
    const thicker = planOf({
      ...plan.job,
      chambers: { ...plan.job.chambers, deckSkin: plan.job.chambers.deckSkin + 4 },
    });
    const worst = (of: typeof found) => Math.max(...of.map(({ empty }) => empty));
    expect(worst(underHeelOf(thicker.layup, thicker.chambers, thicker.job))).toBeLessThan(worst(found));
    // The row in the middle is routed from its right side, and where it is shallow it opens there alone.
    const beside = found.filter(({ over }) => !over.some((id) => id.startsWith('C')));
    const left = beside.filter(({ chamber }) => chamber.startsWith('L'));
    const pairs = left.flatMap((one) =>
      beside.filter((other) => other.chamber === one.chamber.replace('L', 'R')).map((other) => [one, other] as const),
    );
    expect(pairs.length).toBeGreaterThan(10);
    for (const [one, other] of pairs) expect(other.empty).toBeCloseTo(one.empty, 6);
  });
});
