import { describe, expect, test } from 'vitest';
import type { PathShape } from '../../../src/sheet/drawing.js';
import { planOf } from '../../../src/plan.js';
import { clothSheets } from '../../../src/sheet/finish/clothSheets.js';
import { finishOnce } from '../../../src/sheet/finish/finishOnce.js';
import { kernel } from '../../oracle/kernel.js';
import { sampleJob, SAMPLES } from '../../samples.js';

const k = await kernel();

describe.each(SAMPLES)('the cloth sheets of %s', (name) => {
  const plan = planOf(sampleJob(name));
  const sheets = clothSheets(plan);
  const { sides } = finishOnce(plan);
  const lap = plan.job.glass?.lap ?? 50;
  const cutOn = (id: string) =>
    sheets.find((sheet) => sheet.id === id)!.shapes.filter((shape): shape is PathShape => shape.kind === 'path');

  test('there is a half for each side that is laminated, or both halves', () => {
    expect(sheets.length).toBeGreaterThanOrEqual(sides.length);
    for (const { side } of sides)
      expect(sheets.filter(({ id }) => id.startsWith(`cloth-${side}`)).length % 3).not.toBe(0);
  });

  // manifold-3d's offset with round corners (Clipper2) shares no code with it.
  test('are what an offset of the flat side by the laps is, to a thousandth of its area and 1 mm at its ends', () => {
    for (const { side, girths } of sides) {
      const id = sheets.some((sheet) => sheet.id === `cloth-${side}`) ? `cloth-${side}` : `cloth-${side}-right`;
      const cut = cutOn(id).find(({ layer }) => layer === 'cut')!;
      const half = girths.map(({ along, right }): [number, number] => [along, right]);
      const whole = new k.CrossSection(
        [[...half, ...half.map(([x, y]): [number, number] => [x, -y]).reverse()]],
        'EvenOdd',
      );
      const offset = whole.offset(lap, 'Round', 2, 512);
      const ours = new k.CrossSection([cut.vertices.map(({ x, y }): [number, number] => [x, y])], 'EvenOdd');
      expect((2 * ours.area()) / offset.area()).toBeCloseTo(1, 3);
      const [theirs, mine] = [offset.bounds(), ours.bounds()];
      for (const end of ['min', 'max'] as const) expect(Math.abs(theirs[end][0] - mine[end][0])).toBeLessThan(1);
      expect(Math.abs(theirs.max[1] - mine.max[1])).toBeLessThan(1);
    }
  });

  test('say of each station what the table says, and show the widest line of the rail a lap inside', () => {
    for (const { side, outline, girths } of sides) {
      for (const { along, right, left } of outline) {
        const on = (to: 'left' | 'right') => sides.find((each) => each.side === side)!.cutOut[to](along);
        expect([left, right]).toEqual([on('left'), on('right')]);
      }
      const widest = Math.max(...girths.map(({ right }) => right));
      expect(Math.max(...outline.map(({ right }) => right))).toBeLessThanOrEqual(widest + lap + 1e-6);
    }
  });
});
