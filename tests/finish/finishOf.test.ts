import { describe, expect, test } from 'vitest';
import { girthAt, girthsOf } from '../../src/finish/cloth.js';
import { finishOf } from '../../src/finish/finishOf.js';
import { planOf } from '../../src/plan.js';
import { kernel, solidOfMesh } from '../oracle/kernel.js';
import { sampleJob, SAMPLES } from '../samples.js';

const k = await kernel();

/** How far it is around polygons, mm. */
const perimeterOf = (polygons: readonly (readonly (readonly [number, number])[])[]) =>
  polygons.reduce(
    (sum, polygon) =>
      sum +
      polygon.reduce((so, [ax, ay], i) => {
        const [bx, by] = polygon[(i + 1) % polygon.length]!;
        return so + Math.hypot(bx - ax, by - ay);
      }, 0),
    0,
  );

describe.each(SAMPLES)('the cloth of %s', (name) => {
  const plan = planOf(sampleJob(name));
  const { board, bare } = plan;
  const [deck, bottom] = (['deck', 'bottom'] as const).map((side) => girthsOf(board.grid, side)) as [G, G];
  type G = ReturnType<typeof girthsOf>;

  test('goes around the board as far as a slice of its solid in manifold-3d does', () => {
    const solid = solidOfMesh(k, board.mesh);
    for (const share of [0.2, 0.5, 0.7]) {
      const x = share * board.length;
      // Turned so that the board's length stands up; what is cut level then is its section.
      const section = solid.rotate([0, -90, 0]).slice(x);
      const around = perimeterOf(section.toPolygons());
      const [over, under] = [girthAt(deck, x), girthAt(bottom, x)];
      expect(over.left + over.right + under.left + under.right).toBeCloseTo(around, 0);
    }
  });

  // A swallow's notch leaves no centreline to slice along.
  test.runIf(board.grid.notchRow >= board.grid.rows)(
    'is as long as a slice of the solid along the centreline in manifold-3d says',
    () => {
      // A hair off the centreline, where no corner lies on the plane; x along, z across.
      const section = solidOfMesh(k, board.mesh).rotate([90, 0, 0]).slice(-0.01);
      const around = perimeterOf(section.toPolygons());
      const ends = [0, board.grid.rows - 1].reduce((sum, row) => {
        const z = (column: number) => board.grid.positions[3 * (row * 2 * board.grid.columns + column) + 2]!;
        return sum + z(board.grid.columns - 1) - z(0);
      }, 0);
      expect(deck.at(-1)!.along + bottom.at(-1)!.along).toBeCloseTo(around - ends, 0);
      const { sides } = finishOf(plan);
      const lap = plan.job.glass?.lap ?? 50;
      for (const { side, cut, outline } of sides) {
        const { along } = (side === 'deck' ? deck : bottom).at(-1)!;
        expect(cut.length).toBeCloseTo(along + 2 * lap, 6);
        expect(Math.max(...outline.map(({ left, right }) => left + right))).toBeLessThanOrEqual(cut.width + 1e-6);
        expect(outline.at(-1)!.x).toBe(board.length);
      }
    },
  );

  test('has laps as large as a strip along an outline that is offset by them, but for its corners', () => {
    const { sides } = finishOf(plan);
    const lap = plan.job.glass?.lap ?? 50;
    for (const { side, area } of sides) {
      const apex = (on: 0 | 1) =>
        Array.from({ length: board.grid.rows }, (_, row): [number, number] => {
          const at = 3 * ((row * 2 + on) * board.grid.columns + board.grid.apex);
          return [board.grid.positions[at]!, board.grid.positions[at + 1]!];
        });
      const outline = new k.CrossSection([[...apex(0), ...apex(1).reverse()]], 'Positive');
      const flat = outline.area() > 0 ? outline : new k.CrossSection([[...apex(1), ...apex(0).reverse()]], 'Positive');
      const strip = flat.area() - flat.offset(-lap, 'Round', 2, 256).area();
      // Inside a closed curve the strip is smaller by a circle of the lap; rocker makes the rail a little longer.
      const laps = (area - bare.skin[side].amount) * 1e6;
      expect(laps).toBeGreaterThan(strip * 0.97);
      expect(laps).toBeLessThan(strip * 1.03 + 2 * Math.PI * lap ** 2);
    }
  });
});

describe('sealing, lamination and hot coat', () => {
  const plan = planOf(sampleJob('mere-prone'));
  const glass = { deck: [200, 150], bottom: [200], lap: 40, resin: 0.9, sealer: 100, hotCoat: 200, hotCoatCloth: 80 };
  const laminating = { first: 'deck', clothWidth: 300, potLife: 20, minutesPerLayer: 25, loss: 0.2 } as const;
  const finish = finishOf({ ...plan, job: { ...plan.job, glass, laminating } });
  const { deck, bottom, apexLine } = plan.bare.skin;

  test('take the resin that areas, cloth and wet-out come to by hand, and what stays in the pot', () => {
    const area = deck.amount + bottom.amount;
    expect(finish.sealer.resin).toBeCloseTo(area * 0.1, 9);
    const side = deck.amount + apexLine.amount * 0.04;
    expect(finish.sides[0]!.resin).toBeCloseTo((side * 350 * 0.9) / 1000, 9);
    expect(finish.hotCoat.resin).toBeCloseTo(area * (0.2 + 0.08 * 0.9), 9);
    for (const { mix, resin, batches } of [finish.sealer, finish.hotCoat, ...finish.sides]) {
      expect(mix).toBeGreaterThan(1.2 * resin - 1e-9);
      expect(mix).toBeLessThan(1.2 * resin + 0.001 * batches);
    }
  });

  test('begin with the side that the job says, and mix a batch for every pot life of work', () => {
    expect(finish.sides.map(({ side, minutes, batches }) => [side, minutes, batches])).toEqual([
      ['deck', 50, 3],
      ['bottom', 25, 2],
    ]);
  });

  test('never mix more in one pot than 300 g, which heats itself (common practice, no source)', () => {
    const all = [finish.sealer, finish.hotCoat, ...finish.sides];
    for (const { mix, batches } of all) expect(mix / batches).toBeLessThanOrEqual(0.3 + 1e-9);
    const slow = finishOf({ ...plan, job: { ...plan.job, glass, laminating: { ...laminating, potLife: 240 } } });
    for (const { mix, batches } of slow.sides) expect(batches).toBe(Math.ceil(mix / 0.3));
  });

  test('weigh what the scale is foreseen to say more after each of them', () => {
    const { weights } = planOf({ ...plan.job, glass });
    const at = (stage: string) => weights.stages.find((each) => each.stage === stage)!.weight;
    const cloth = finish.sides.reduce((sum, { area, layers }) => sum + area * layers.reduce((a, b) => a + b, 0), 0);
    const resin = finish.sides.reduce((sum, side) => sum + side.resin, 0);
    expect(at('laminated') - at('sealed')).toBeCloseTo(cloth / 1000 + resin, 6);
    const coated = ((deck.amount + bottom.amount) * 80) / 1000 + finish.hotCoat.resin;
    expect(at('hot-coated') - at('laminated')).toBeCloseTo(coated, 6);
  });

  test('join widths of a narrow roll, and buy so much longer', () => {
    const [first] = finish.sides;
    // Widths of 300 mm that overlap by 25 mm cover 300 + 275 (n − 1).
    expect(300 + 275 * (first!.widths - 1)).toBeGreaterThanOrEqual(first!.cut.width);
    expect(300 + 275 * (first!.widths - 2)).toBeLessThan(first!.cut.width);
    const heavy = finish.cloths.find(({ cloth }) => cloth === 200)!;
    expect(heavy.length).toBeCloseTo(
      finish.sides.reduce((sum, { widths, cut }) => sum + widths * cut.length, 0),
      6,
    );
  });

  test('have a cloth in the hot coat where there is one, two pieces of it without laps', () => {
    const girths = (side: 'deck' | 'bottom') => girthsOf(plan.board.grid, side);
    // Widths of 300 mm that overlap by 25 mm: the fewest that cover the girth, by trying.
    const widths = (width: number) => [1, 2, 3, 4, 5, 6].find((n) => 300 + 275 * (n - 1) >= width)!;
    const length = (['deck', 'bottom'] as const).reduce((sum, side) => {
      const widest = Math.max(...girths(side).map(({ left, right }) => left + right));
      return sum + widths(widest) * girths(side).at(-1)!.along;
    }, 0);
    expect(finish.coatCloth).toBe(80);
    expect(finish.coatLength).toBeCloseTo(length, 6);
    expect(finish.cloths.find(({ cloth }) => cloth === 80)!.length).toBeCloseTo(length, 6);
    const plain = finishOf({ ...plan, job: { ...plan.job, glass: { ...glass, hotCoatCloth: 0 }, laminating } });
    expect(plain.coatCloth).toBeUndefined();
    expect(plain.cloths.map(({ cloth }) => cloth)).toEqual([200, 150]);
  });

  test('tell left from right on a board that differs', () => {
    const { board } = plan.job;
    const points = board.right.points.map(({ x, half }) => ({ x, half: 0.85 * half }));
    const askew = planOf({ ...plan.job, board: { ...board, left: { ...board.right, points } } });
    const x = 0.5 * askew.board.length;
    const { left, right } = girthAt(girthsOf(askew.board.grid, 'deck'), x);
    const section = solidOfMesh(k, askew.board.mesh).rotate([0, -90, 0]).slice(x);
    const { min, max } = section.bounds();
    // The left lies at y below 0 and is narrower; over the deck it is never shorter than it is wide.
    expect(-min[1]).toBeLessThan(max[1]);
    expect(left).toBeGreaterThan(-min[1]);
    expect(left).toBeLessThan(right);
    expect(right).toBeGreaterThan(max[1]);
  });

  test('need nothing where the job has no glass on a side', () => {
    const bare = finishOf({ ...plan, job: { ...plan.job, glass: { ...glass, deck: [] }, laminating } });
    expect(bare.sides.map(({ side }) => side)).toEqual(['bottom']);
  });
});
