import { describe, expect, it } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { layupOf } from '../../src/layup/layupOf.js';
import { sawnStrips } from '../../src/stock/sawn.js';
import { sawnVolumes } from '../../src/stock/sawnVolumes.js';
import { kernel, solidOfMesh } from '../oracle/kernel.js';
import { sampleJob, SAMPLES } from '../samples.js';
import { largerBlank } from './blanks.js';

const KERF = 3;

describe('strips sawn from a moulded blank', () => {
  it.each(SAMPLES)(
    'of %s lie next to each other but for the kerf, and out in the glue-up where its joints are',
    (name) => {
      const { glueUp, board } = sampleJob(name);
      const layup = layupOf(glueUp, board.length);
      const strips = sawnStrips(layup, KERF);
      expect(strips.map(({ member }) => member.id)).toEqual(
        layup.members.filter(({ kind }) => kind === 'strip').map(({ id }) => id),
      );
      for (const x of [0, board.length / 3, board.length]) {
        strips.slice(1).forEach((strip, i) => {
          const from = strips[i]!.right!;
          const to = strip.left!;
          expect(to.at + to.slope * x - from.at - from.slope * x).toBeCloseTo(KERF, 9);
        });
        for (const { left, right, member, moved } of strips) {
          for (const [line, joint] of [
            [left, member.left],
            [right, member.right],
          ] as const) {
            if (line)
              expect(line.at + line.slope * x + moved.at + moved.slope * x).toBeCloseTo(
                joint!.at + joint!.slope * x,
                9,
              );
          }
        }
      }
    },
  );

  // Sum of the stringers and of the kerfs by hand: two stringers of 8 mm, one of 12 mm; between six strips five cuts.
  it('make a glued blank wider by the stringers and narrower by the kerfs', () => {
    const { glueUp, board } = sampleJob('mere-prone');
    const strips = sawnStrips(layupOf(glueUp, board.length), KERF);
    expect(strips).toHaveLength(6);
    expect(strips.at(-1)!.moved.at - strips[0]!.moved.at).toBeCloseTo(12 + 2 * 8 - 5 * KERF, 9);
  });

  // Reference: manifold-3d cuts the same blank by planes.
  it('hold with the kerfs what the blank holds (manifold-3d)', async () => {
    const { Manifold, ...rest } = await kernel();
    for (const name of SAMPLES) {
      const { glueUp, board } = sampleJob(name);
      const along = 21;
      const strips = sawnStrips(layupOf(glueUp, board.length), KERF);
      const blank = boardOf(largerBlank(board, { longer: 50, thicker: 20, wider: 6 }), [], 0.2);
      const whole = solidOfMesh({ Manifold, ...rest }, blank.mesh);
      const volumes = sawnVolumes(
        blank,
        strips,
        strips.map(() => along),
      );
      const volume = (from: (typeof strips)[number]['left'], to: typeof from) => {
        let part = whole;
        if (from) part = part.trimByPlane([-from.slope, 1, 0], from.at - from.slope * along);
        if (to) part = part.trimByPlane([to.slope, -1, 0], -(to.at - to.slope * along));
        return part.volume() / 1e6;
      };
      let sum = 0;
      strips.forEach(({ left, right }, i) => {
        const cut = volume(left, right);
        expect(Math.abs(volumes[i]!.amount - cut)).toBeLessThan(0.001 * cut);
        sum += volumes[i]!.amount;
        if (i > 0) sum += volume(strips[i - 1]!.right, left);
      });
      expect(Math.abs(sum - whole.volume() / 1e6)).toBeLessThan((0.001 * whole.volume()) / 1e6);
    }
  });
});
