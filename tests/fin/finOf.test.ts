import { describe, expect, test } from 'vitest';
import { fittedWeight, finsOf } from '../../src/fin/finOf.js';
import { finsInDoubt } from '../../src/fin/inDoubt.js';
import { halfThickness } from '../../src/fin/foil.js';
import { kernel } from '../oracle/kernel.js';
import { builtFin } from './fins.js';

const k = await kernel();
const only = (...args: Parameters<typeof builtFin>) => finsOf([builtFin(...args)], [], 'mm')[0]!;

describe('a fin that is built', () => {
  test('shows the lines of its layers where a plane parallel to its middle cuts the foil', () => {
    const { sections, layers } = only();
    for (const { length, thickness, lines } of sections) {
      const upper = Array.from({ length: 4001 }, (_, i): [number, number] => {
        const u = (i / 4000) ** 2;
        return [u * length, thickness * halfThickness(u)];
      });
      const foil = new k.CrossSection(
        [[...upper].reverse().concat(upper.slice(1).map(([x, y]) => [x, -y]))],
        'Positive',
      );
      for (const { under, ahead, behind } of lines) {
        const { to } = layers.find(({ name }) => name === under)!;
        // A thin slab over the line: from where the foil comes through it to where it leaves it.
        const { min, max } = foil.intersect(k.CrossSection.square([2000, 0.001]).translate([-1000, to])).bounds();
        expect(ahead).toBeCloseTo(min[0], 1);
        expect(behind).toBeCloseTo(max[0], 1);
      }
    }
    expect(sections[0]!.lines.map(({ under }) => under)).toEqual(['panel']);
  });

  test('lays up a panel larger than its blank, and weighs cloth and resin of all its layers', () => {
    const { panel, blank } = only();
    expect(panel!.length).toBeGreaterThan(blank.length);
    expect(panel!.width).toBeGreaterThan(blank.width);
    const area = (panel!.length * panel!.width) / 1e6;
    expect(panel!.clothWeight).toBeCloseTo((10 * 271.2 * area) / 1000, 9);
    // 40 % of glass of 2540 and 60 % of resin of 1150 kg/m³ by volume.
    expect(panel!.resin / panel!.clothWeight).toBeCloseTo((0.6 * 1150) / (0.4 * 2540), 9);
  });

  test('takes as many layers as the thickness of its panel asks', () => {
    const panel = { cloth: 271.2, thickness: 3, fibre: 0.4, fibreDensity: 2540, resinDensity: 1150 };
    const { panel: made } = only({}, { panel });
    expect(made!.layers).toBe(12);
    expect(made!.thickness).toBeGreaterThanOrEqual(3);
  });

  test('weighs twice as a pair, and is found where the middle of its area lies', () => {
    const pair = only({}, { stands: { side: 'both', away: 150, cant: 0, toe: 0 } });
    const one = only();
    expect(fittedWeight(pair).weight).toBeCloseTo(2 * fittedWeight(one).weight, 12);
    expect(fittedWeight(one).x).toBeCloseTo(3000 - 127 + one.centre.x, 9);
  });

  test('weighs more by a tab that stays, not by one that is cut off', () => {
    const kept = only({}, { tab: { depth: 30, isTemporary: false } });
    const cut = only({}, { tab: { depth: 30, isTemporary: true } });
    expect(cut.fitted).toBeCloseTo(only().fitted, 12);
    // A slab as long as the base and 20 mm thick: panel of 2.669 mm, and the rest of it wood, by hand.
    const panel = kept.layers[0]!.to * 2;
    const slab = (254 * 30 * (panel * 1706 + (20 - panel) * 448)) / 1e9;
    expect(kept.fitted - cut.fitted).toBeCloseTo(slab, 9);
  });
});

describe('what stands against building a fin', () => {
  const doubts = (...args: Parameters<typeof builtFin>) => {
    const fins = [builtFin(...args)];
    return finsInDoubt(fins, finsOf(fins, [], 'mm'), 'mm').map(({ where, what }) => [where.path, what]);
  };

  test('is a blank thinner than the taper sled is to leave it', () => {
    const found = doubts({ thickness: 22 }, { wood: [] });
    expect(found[0]).toEqual([
      'fins[0].build',
      'the blank of fin is glued up 2.6 mm thick, its base needs 23 mm off the taper sled',
    ]);
  });

  test('is that no keep-out holds its base', () => {
    expect(doubts().map(([, what]) => what)).toEqual([
      'no keep-out holds the base of fin: a chamber may lie right under it',
    ]);
  });

  test('is edges that meet below the tip: then nothing is built', () => {
    const build = { outline: { rake: 0, leading: [[200, 100]] as const, trailing: [[150, 100]] as const } };
    expect(finsOf([builtFin({}, build)], [], 'mm')).toEqual([]);
    expect(doubts({}, build)).toEqual([
      ['fins[0].build', 'the leading and the trailing edge of fin meet 100 mm over the base'],
    ]);
  });
});
