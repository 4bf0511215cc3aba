import { describe, expect, test } from 'vitest';
import { baseOf } from '../../src/fin/base.js';
import { filletCloth, filletVolume } from '../../src/fin/fillet.js';
import { builtFin } from './fins.js';

const fillet = { radius: 12, of: 'rope', cloth: [200, 160], reach: 25 } as const;

describe('the base of a fin', () => {
  test('is covered by cloth that goes up the fin, around a quarter of a circle and out onto the board', () => {
    // Walked along in small straight steps: 25 up, the round of 12 mm, 25 out.
    let length = 50;
    for (let i = 0; i < 1000; i++) {
      const at = (n: number) => [12 * Math.cos((n * Math.PI) / 2000), 12 * Math.sin((n * Math.PI) / 2000)] as const;
      length += Math.hypot(at(i + 1)[0] - at(i)[0], at(i + 1)[1] - at(i)[1]);
    }
    expect(filletCloth(12, 25)).toBeCloseTo(length, 4);
  });

  test('has each strip reach beyond the one under it', () => {
    const { strips } = baseOf(builtFin({ base: 200 }, { fillet }), 1);
    expect(strips.map(({ cloth }) => cloth)).toEqual([200, 160]);
    expect(strips[1]!.width - strips[0]!.width).toBeCloseTo(20, 9);
    expect(strips[1]!.length - strips[0]!.length).toBeCloseTo(20, 9);
  });

  test('weighs its round and twice its strips with their resin', () => {
    const fin = builtFin({ base: 200 }, { fillet });
    const base = baseOf(fin, 0.8);
    const dry = base.strips.reduce((sum, { cloth, length, width }) => sum + (2 * cloth * length * width) / 1e9, 0);
    expect(base.weight).toBeCloseTo(base.round + 1.8 * dry, 9);
    expect(base.fibre + base.resin).toBeCloseTo(base.round + 0.8 * dry, 9);
    // 30 % of glass of 2.54 and 70 % of epoxy of 1.15 g/cm³ by volume: 1.567 g/cm³, by hand.
    expect(base.round / (filletVolume(fin) / 1e6)).toBeCloseTo(1.567, 9);
  });

  test('of thickened resin has no dry fibre', () => {
    const base = baseOf(builtFin({ base: 200 }, { fillet: { ...fillet, of: 'resin', cloth: [] } }), 1);
    expect(base).toMatchObject({ fibre: 0, strips: [] });
    expect(base.resin).toBeCloseTo(base.weight, 12);
  });
});
