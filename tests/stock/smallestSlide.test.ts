import { describe, expect, it } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { layupOf } from '../../src/layup/layupOf.js';
import { fittingOf } from '../../src/stock/fit.js';
import { lyingIn, NOT_SLID } from '../../src/stock/slid.js';
import { sawnStrips } from '../../src/stock/sawn.js';
import { sampleJob } from '../samples.js';
import { largerBlank } from './blanks.js';

const STEP = 0.1;

describe('the smallest slide that cures a short strip', () => {
  // Brute force: the strip is laid too low, too high or askew by a known amount; what is found cures it, and no slide
  // on a grid is smaller by more than the steps of the rule and still cures it.
  it.each([
    [0, 4, 0],
    [0, -5, 0],
    [30, 2, 10],
    [-20, -3, 16],
  ])('brings back one that lies %i mm along, %i mm up, nose %i mm up of where it is best', (along, up, noseUp) => {
    const { board: spec, glueUp } = sampleJob('mere-prone');
    const board = boardOf(spec);
    const layup = layupOf(glueUp, board.length);
    const strips = sawnStrips(layup, 3);
    const blank = boardOf(largerBlank(spec, { longer: 60, thicker: 12, wider: 8 }), [], 0.2);
    const fitting = fittingOf(board, layup, blank, strips, 0, [1]);
    const strip = strips.findIndex(({ member }) => member.id === 'MR1');
    const points = Uint32Array.from(fitting.skin.side.keys()).filter((i) => fitting.skin.strip[i] === strip);
    const best = fitting.best(points);
    const leastOf = ({ over }: { readonly over: Float64Array }) => Math.min(...Array.from(points, (i) => over[i]!));
    const asked = leastOf(best) - 1;
    const { placement } = best;
    const others = { along: placement.along + along, up: placement.up + up, noseUp: placement.noseUp + noseUp };
    /** Slid so far toward the tail, raised so far at the nose tip and at the tail. */
    const lies = ([back, nose, tail]: readonly number[]) =>
      leastOf(
        fitting.measured(lyingIn(others, { along: back!, up: tail!, noseUp: nose! - tail! }, board.length), points),
      );
    const size = (by: readonly number[]) => Math.abs(by[0]!) + (Math.abs(by[1]!) + Math.abs(by[2]!)) / 2;
    expect(lies([0, 0, 0])).toBeLessThan(asked);
    const { slid, least } = fittingOf(board, layup, blank, strips, asked, [1]).slide(points, others, NOT_SLID, STEP)!;
    const found = [slid.along, slid.up + slid.noseUp, slid.up];
    // The board lies too high or low in the strip: the strip is moved the same way to bring it back.
    expect(Math.sign(slid.up + slid.noseUp / 2)).toBe(Math.sign(up));
    expect(lies(found)).toBeCloseTo(least, 9);
    expect(least).toBeGreaterThanOrEqual(asked - 0.001);
    for (const each of found) expect(Math.abs(each / STEP - Math.round(each / STEP))).toBeLessThan(1e-6);
    const slack = 3 * STEP;
    for (let i = -2; i <= 2; i++) {
      for (let j = -2; j <= 2; j++) {
        for (let k = -2; k <= 2; k++) {
          const tried = [found[0]! * (i / 2), found[1]! * (j / 2) + k, found[2]! * (k / 2)];
          if (size(tried) < size(found) - slack) expect(lies(tried), String(tried)).toBeLessThan(asked);
        }
      }
    }
  });

  it('is none where no slide brings so much', () => {
    const { board: spec, glueUp } = sampleJob('mere-prone');
    const board = boardOf(spec);
    const layup = layupOf(glueUp, board.length);
    const blank = boardOf(largerBlank(spec, { longer: 60, thicker: 4, wider: 8 }), [], 0.2);
    const fitting = fittingOf(board, layup, blank, sawnStrips(layup, 3), 5, [1]);
    const points = Uint32Array.from(fitting.skin.side.keys());
    expect(fitting.slide(points, fitting.best(points).placement, NOT_SLID, STEP)).toBeUndefined();
  });
});
