import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestFilling, type Met } from '../../src/chamber/filling.js';
import type { Room } from '../../src/chamber/room.js';
import type { Stretch } from '../../src/chamber/stretch.js';
import type { ChamberSpec } from '../../src/job/job.js';
import { specWith } from './box.js';

const SEED = 20261127;

/** A room as high as `high(depth)` and as low as `low(depth)` all along, in layers of 10 mm. */
function flatRoom(layers: number, high: (deep: number) => number, low: (deep: number) => number): Room {
  const count = 130;
  const of = (value: (deep: number) => number) =>
    Float64Array.from({ length: layers * count }, (_, i) => value(10 * Math.floor(i / count)));
  return { step: 8, count, layer: 10, layers, top: of(high), bottom: of(low) };
}
const met = (name: string, from: number, to: number, low = -Infinity, high = Infinity): Met => ({
  obstacle: { on: 'row', row: 'R1', name, why: 'keep-out', blocked: { from, to, low, high }, beyond: 0 },
  blocked: { from, to, low, high },
});
const spec = specWith({ web: 20, smallest: { length: 40, height: 15, depth: 15 } });
const place: Stretch = { from: 200, to: 400 };
const filled = (
  room: Room,
  obstacles: readonly Met[] = [],
  ends = { blind: Infinity } as { blind: number; through?: number },
  of: ChamberSpec = spec,
) =>
  bestFilling(
    () => place,
    ends,
    room,
    () => obstacles,
    of,
  );
/** From, to, low and high of each part. */
const boxes = (filling: ReturnType<typeof filled>) =>
  filling?.parts.map(({ top, bottom }) => [top[0]![0], top[1]![0], bottom[0]![1], top[0]![1]]);

describe('a place is filled', () => {
  const room = flatRoom(8, (deep) => 70 - deep / 2, () => 20); // prettier-ignore

  // By hand: 200 mm long, 50 − d/2 high, d deep is most at d = 50.
  test('to the depth that takes most out, and that need not be the deepest', () => {
    const filling = filled(room)!;
    expect([filling.depth, filling.through]).toEqual([50, false]);
    expect(boxes(filling)).toEqual([[200, 400, 20, 45]]);
    expect(filling.volume).toBeCloseTo(200 * 25 * 50, 6);
    expect(filling.stretches).toEqual([place]);
    expect(filling.letters).toEqual(['']);
    expect([filling.low, filling.high, filling.around, filling.past]).toEqual([-Infinity, Infinity, [], []]);
  });

  test('no deeper than what ends it, to the tenth of a millimetre', () => {
    const even = flatRoom(8, () => 70, () => 20); // prettier-ignore
    expect(filled(even, [], { blind: 33.3 })).toMatchObject({ depth: 33.3, through: false });
    // Its room is that of the next depth looked at: 39 · 30 is more than 30 · 35.
    const closing = { blind: 39 };
    expect(boxes(filled(room, [], closing))).toEqual([[200, 400, 20, 50]]);
    expect(filled(room, [], { blind: 33.3 })).toMatchObject({ depth: 30, through: false });
    expect(filled(room, [], { blind: 40 })).toMatchObject({ depth: 40 });
    expect(boxes(filled(room, [], { blind: 40 }))).toEqual([[200, 400, 20, 50]]);
    expect(filled(room, [], { blind: 14 })).toBeUndefined();
  });

  test('right through where that takes more than the deepest that leaves the floor', () => {
    const even = flatRoom(8, () => 70, () => 20); // prettier-ignore
    expect(filled(even, [], { blind: 56, through: 60 })).toMatchObject({ depth: 60, through: true });
    expect(filled(even, [], { blind: 56, through: 70 })).toMatchObject({ depth: 70, through: true });
    // There is no room as deep as that.
    expect(filled(even, [], { blind: 56, through: 75 })).toMatchObject({ depth: 56, through: false });
    expect(filled(room, [], { blind: 40, through: 70 })).toMatchObject({ depth: 40, through: false });
    // Nothing goes to a depth between.
    expect(filled(even, [], { blind: 20, through: 55 })).toMatchObject({ depth: 55, through: true });
  });

  test('not at all where there is no room, or none as high, as long or as deep as the smallest', () => {
    const high = (top: number, of: Partial<ChamberSpec> = {}, layers = 8) => {
      const open = flatRoom(layers, () => top, () => 20); // prettier-ignore
      return filled(open, [], { blind: Infinity }, specWith({ web: 20, ...of })) !== undefined;
    };
    expect([high(NaN), high(34.9), high(35)]).toEqual([false, false, true]);
    expect([high(70, {}, 2), high(70, {}, 3)]).toEqual([false, true]);
    const long = (length: number) => high(70, { smallest: { length, height: 15, depth: 15 } });
    expect([long(201), long(200)]).toEqual([false, true]);
    // Both corners of an end want room for the cutter, and a quarter more.
    expect([high(44.9, { cutterDiameter: 20 }), high(45, { cutterDiameter: 20 })]).toEqual([false, true]);
  });

  test('within the place as it is at each depth', () => {
    const even = flatRoom(8, () => 70, () => 20); // prettier-ignore
    const leaning = (deep: number) => (deep > 60 ? undefined : { from: 200 + deep, to: 400 });
    const filling = bestFilling(leaning, { blind: Infinity }, even, () => [], spec)!;
    // By hand: (200 − d) · d is most at 100, and no depth over 60 has a place.
    expect(filling.depth).toBe(60);
    expect(boxes(filling)).toEqual([[260, 400, 20, 70]]);
  });
});

describe('something in its way', () => {
  const room = flatRoom(4, () => 70, () => 20); // prettier-ignore

  test('is gone around, and parts the place', () => {
    const filling = filled(room, [met('vent', 290, 320)])!;
    expect(boxes(filling)).toEqual([[200, 290, 20, 70], [320, 400, 20, 70]]); // prettier-ignore
    expect(filling.letters).toEqual(['a', 'b']);
    expect(filling.stretches).toEqual([{ from: 200, to: 290 }, { from: 320, to: 400 }]); // prettier-ignore
    expect([filling.around.map(({ name }) => name), filling.past]).toEqual([['vent'], []]);
    expect(filling.volume).toBeCloseTo(170 * 50 * 30, 6);
    // A web lies between the parts, too.
    expect(boxes(filled(room, [met('pipe', 298, 302)]))).toEqual([[200, 290, 20, 70], [310, 400, 20, 70]]); // prettier-ignore
    expect(boxes(filled(room, [met('vent', 220, 320)]))).toEqual([[320, 400, 20, 70]]);
  });

  test('is passed under or over where that takes more out, and keeps the chamber to that height', () => {
    const under = filled(room, [met('plug', 290, 320, 65)])!;
    expect(boxes(under)).toEqual([[200, 400, 20, 65]]);
    expect([under.low, under.high, under.past.map(({ name }) => name)]).toEqual([-Infinity, 65, ['plug']]);
    const over = filled(room, [met('plug', 290, 320, -Infinity, 25)])!;
    expect(boxes(over)).toEqual([[200, 400, 25, 70]]);
    expect([over.low, over.high, over.around]).toEqual([25, Infinity, []]);
    // Where it leaves less, it is gone around: 170 · 50 is more than 200 · 40.
    expect(boxes(filled(room, [met('plug', 290, 320, 60)]))).toHaveLength(2);
  });

  test('may be two things, one passed under and one gone around, or between one and the other', () => {
    expect(boxes(filled(room, [met('plug', 290, 320, 66), met('vent', 380, 420)]))).toEqual([[200, 380, 20, 66]]);
    expect(boxes(filled(room, [met('plug', 220, 390, 66), met('vent', 220, 390, -Infinity, 23)]))).toEqual([
      [200, 400, 23, 66],
    ]);
  });
});

// Brute force: every depth, and every way past every obstacle, drawn as boxes.
test(`no other way past what is in the way takes more out (seed ${SEED})`, () => {
  const ends = fc.tuple(fc.integer({ min: 190, max: 400 }), fc.integer({ min: 5, max: 120 }));
  const obstacle = fc.tuple(
    ends,
    fc.constantFrom('deck', 'bottom', 'through', 'dot'),
    fc.integer({ min: 25, max: 65 }),
  );
  fc.assert(
    fc.property(
      fc.array(obstacle, { maxLength: 3 }),
      fc.integer({ min: 16, max: 70 }),
      fc.integer({ min: 0, max: 4 }),
      (those, blind, slope) => {
        const high = (deep: number) => 70 - (slope * deep) / 10;
        const room = flatRoom(8, high, () => 20);
        const obstacles = those.map(([[from, long], kind, z], i): Met => {
          const [low, top] = {
            deck: [z, Infinity],
            bottom: [-Infinity, z],
            through: [-Infinity, Infinity],
            dot: [z - 5, z + 5],
          }[kind] as [number, number];
          return met(`thing ${i}`, from, from + long, low, top);
        });
        let best = 0;
        for (let j = 1; j < 8; j++) {
          const depth = Math.min(10 * j, blind);
          if (depth < 15 || 10 * (j - 1) >= blind) continue;
          for (let way = 0; way < 3 ** obstacles.length; way++) {
            const ways = obstacles.map(({ blocked }, i) => ({ blocked, how: Math.floor(way / 3 ** i) % 3 }));
            const lid = Math.min(
              high(10 * j),
              ...ways.filter(({ how }) => how === 1).map(({ blocked }) => blocked.low),
            );
            const ground = Math.max(20, ...ways.filter(({ how }) => how === 2).map(({ blocked }) => blocked.high));
            if (lid - ground < 15) continue;
            const gone = ways.filter(({ how }) => how === 0).map(({ blocked }) => blocked);
            const free = freeOf(place, gone).filter(({ from, to }) => to - from >= 40);
            const apart = free.map(({ from, to }, i) => {
              const [before, after] = [free[i - 1], free[i + 1]];
              return {
                from: before ? Math.max(from, from + (20 - (from - before.to)) / 2) : from,
                to: after ? Math.min(to, to - (20 - (after.from - to)) / 2) : to,
              };
            });
            const long = apart.map(({ from, to }) => to - from).filter((each) => each >= 40);
            best = Math.max(best, long.reduce((sum, each) => sum + each, 0) * (lid - ground) * depth);
          }
        }
        expect(filled(room, obstacles, { blind })?.volume ?? 0).toBeCloseTo(best, 4);
      },
    ),
    { seed: SEED, numRuns: 300 },
  );
});

/** What of a stretch no other covers, millimetre by millimetre. */
function freeOf({ from, to }: Stretch, gone: readonly Stretch[]): Stretch[] {
  const free: { from: number; to: number }[] = [];
  for (let s = from; s < to; s++) {
    if (gone.some((each) => each.from < s + 1 && each.to > s)) continue;
    const last = free[free.length - 1];
    if (last && last.to === s) last.to = s + 1;
    else free.push({ from: s, to: s + 1 });
  }
  return free;
}

test('the longest run that is high enough is drawn where the room closes in between', () => {
  const count = 130;
  const top = Float64Array.from({ length: 4 * count }, (_, i) =>
    (i % count) * 8 > 248 && (i % count) * 8 < 272 ? 30 : 70,
  );
  const room: Room = { step: 8, count, layer: 10, layers: 4, top, bottom: new Float64Array(4 * count).fill(20) };
  expect(boxes(filled(room))).toEqual([[272, 400, 20, 70]]);
});
