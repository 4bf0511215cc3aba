import { expect, test } from 'vitest';
import type { Chamber } from '../../src/chamber/chamber.js';
import type { Row } from '../../src/layup/layup.js';
import { setUpOf, stopsOf } from '../../src/rout/setUp.js';

const material = { name: 'foam', density: 20, source: 'test' };
const joint = (number: number, at: number, slope = 0) => ({
  id: `JR${number}`,
  side: 'R' as const,
  number,
  kind: 'dotted' as const,
  at,
  slope,
});

/** A row between two faces `width` apart, its far face flared by `slope`. */
function row(width: number, slope = 0, end: Row['end'] = 'face'): Row {
  const left = joint(1, 0);
  const right = joint(2, width, slope);
  const at = { side: 'R', number: 1 } as const;
  const face = {
    id: 'FR1-in',
    on: 'in',
    piece: 'PR1',
    joint: 'JR1',
    origin: [0, 0],
    along: [1, 0],
    inward: [0, 1],
  } as const;
  const far = { ...face, id: 'FR1-out', on: 'out', joint: 'JR2', origin: [0, width], inward: [0, -1] } as const;
  const member = { id: 'MR1', ...at, kind: 'strip', material, routing: 'open', left, right } as const;
  return {
    id: 'R1',
    ...at,
    piece: 'PR1',
    face,
    ...(end === 'face' && { through: far }),
    members: [member],
    end,
    parity: 0,
  };
}

function chamber(depth: number): Chamber {
  const profile = [
    [100, 20],
    [300, 20],
    [300, 80],
    [100, 80],
  ] as const;
  const none = [0, 0, 0] as const;
  return {
    id: 'R1-01',
    row: 'R1',
    place: 1,
    contour: profile.map(([x, y]) => ({ x, y })),
    profile,
    depth: [0, depth],
    wall: { deck: 10, bottom: 10, rail: 30 },
    at: { deck: none, bottom: none, rail: none },
    volume: 1,
  };
}

const router = { cutterLength: 80, guideStock: 12, passDepth: 12, tolerance: 1.5 };

test('passes are even, none deeper than allowed, and the last stop is guide stock and depth together', () => {
  const stops = stopsOf(50, router);
  expect(stops).toHaveLength(5);
  expect(stops).toEqual([22, 32, 42, 52, 62]);
  expect(stopsOf(12, router)).toEqual([24]);
});

test('a row within the cutter’s reach is routed from its own face only', () => {
  const { setUp, notes } = setUpOf(row(60), [chamber(60)], router);
  expect(setUp).toMatchObject({ from: ['FR1-in'], depth: 60, cut: 60, reaches: true });
  expect(notes).toEqual([]);
});

test('a deeper one is routed from both faces to meet in the middle, with a millimetre of overlap', () => {
  const { setUp, notes } = setUpOf(row(100), [chamber(100)], router);
  expect(setUp).toMatchObject({ from: ['FR1-in', 'FR1-out'], depth: 100, cut: 50.5, reaches: true });
  expect(setUp.stops.at(-1)).toBe(62.5);
  expect(notes).toMatchObject([{ kind: 'rout', where: 'R1', why: 'halves' }]);
});

test('too deep even for halves it is refused, and the cutter that would do is named', () => {
  const { setUp, notes } = setUpOf(row(160), [chamber(160)], router);
  expect(setUp).toMatchObject({ reaches: false, needs: 172 });
  expect(notes).toMatchObject([{ kind: 'rout', where: 'R1', why: 'reach', by: ['R1-01'], has: 80, needs: 172 }]);
});

test('a blind row cannot be met from behind', () => {
  const { setUp, notes } = setUpOf(row(100, 0, 'rail'), [chamber(90)], router);
  expect(setUp).toMatchObject({ from: ['FR1-in'], reaches: false, needs: 102 });
  expect(notes.map(({ why }) => why)).toEqual(['reach']);
});

test('halves do not meet where the faces flare by more than the router may wander', () => {
  const flared = { ...chamber(115) };
  const { setUp, notes } = setUpOf(row(100, 0.05), [flared], router);
  expect(setUp.reaches).toBe(false);
  expect(notes.map(({ why }) => why)).toEqual(['flare', 'reach']);
});

// 68 mm of reach: two halves of 67.5 and the millimetre of overlap between them are 135.
test('halves meet as deep as both cutters reach, to the last of it', () => {
  expect(setUpOf(row(135), [chamber(135)], router).setUp).toMatchObject({ reaches: true, cut: 68 });
  expect(setUpOf(row(135.01), [chamber(135.01)], router).setUp).toMatchObject({ reaches: false, needs: 147.01 });
  expect(setUpOf(row(68), [chamber(68)], router).setUp).toMatchObject({ reaches: true, from: ['FR1-in'] });
});

test('a row without chambers has nothing to reach, a shallow chamber beside a deep one is routed from its face', () => {
  expect(setUpOf(row(100), [], router).setUp).toMatchObject({ reaches: true, depth: 0, cut: 0, chambers: [] });
  const shallow = { ...chamber(40), id: 'R1-02' };
  const { setUp } = setUpOf(row(100), [chamber(100), shallow], router);
  expect(setUp.chambers.map(({ chamber: id, from, cut }) => [id, from.length, cut])).toEqual([
    ['R1-01', 2, 50.5],
    ['R1-02', 1, 40],
  ]);
  // One that does not go through cannot be met from behind, whatever its neighbours do.
  const blind = { ...chamber(90), id: 'R1-03' };
  expect(setUpOf(row(100), [chamber(100), blind], router).setUp).toMatchObject({ reaches: false, needs: 112 });
});

test('a flare is told by how far the halves part, and halves meet within what the router may wander', () => {
  // 0.02 of a slope over half of 107 and its overlap.
  const { setUp, notes } = setUpOf(row(100, 0.02), [chamber(107)], router);
  expect(setUp.reaches).toBe(true);
  expect(notes.map(({ why }) => why)).toEqual(['halves']);
  const wide = setUpOf(row(100, 0.05), [chamber(115)], router).notes[0]!;
  expect([wide.has, wide.needs]).toEqual([58 * 0.05, 1.5]);
});
