import { describe, expect, test } from 'vitest';
import type { Chamber } from '../../src/chamber/chamber.js';
import type { CarvedRow } from '../../src/chamber/chambers.js';
import { obstacleOf } from '../../src/dot/around.js';
import type { GlueLoss } from '../../src/dot/dot.js';
import { sidesOf } from '../../src/dot/sides.js';
import type { Spot } from '../../src/dot/spot.js';
import { farOn, nearOn, rowTo } from './rows.js';

const row = rowTo(60, 0);
const chamber = (place: number, from: number, to: number, letter = '', deep = 60): Chamber =>
  ({
    id: `R1-0${place}${letter}`,
    row: 'R1',
    place,
    profile: [[from, 0], [to, 0], [to, 60], [from, 60]], // prettier-ignore
    depth: [0, deep],
  }) as unknown as Chamber;
const carved = (...chambers: readonly Chamber[]): CarvedRow =>
  ({ carving: { row }, places: chambers.map((each) => ({ chambers: [each] })) }) as unknown as CarvedRow;

/** What a dot at `s` meets in a row of such chambers. */
function side(s: number, chambers: readonly Chamber[], more: { z?: number; far?: boolean; losses?: GlueLoss[] } = {}) {
  const at = more.far ? farOn(row) : nearOn(row);
  const place = [s, more.z ?? 30] as const;
  const spot: Spot = { name: 'DR1.1', joint: at.face.joint, from: place, to: place, radius: 8 };
  const keep = { spot, at, obstacle: obstacleOf(spot, at, { clearance: 2, may: ['trim'] }), swallowed: false };
  return sidesOf([carved(...chambers)], [keep], more.losses ?? []).get(spot);
}
const met = (way: string, ...chambers: readonly string[]) => [{ row: 'R1', way, chambers }];

describe('what glue meets on a side of its joint', () => {
  const two = [chamber(1, 100, 200), chamber(2, 230, 330)];

  test('is a web between chambers of two places, and an end before the first or behind the last', () => {
    expect(side(215, two)).toEqual(met('web', 'R1-01', 'R1-02'));
    expect(side(200, two)).toEqual(met('web', 'R1-01', 'R1-02'));
    expect(side(230, two)).toEqual(met('web', 'R1-01', 'R1-02'));
    expect(side(50, two)).toEqual(met('end', 'R1-01'));
    expect(side(400, two)).toEqual(met('end', 'R1-02'));
    expect(side(400, [])).toEqual(met('end'));
  });

  test('are the nearest chambers, before and behind', () => {
    const four = [...two, chamber(3, 360, 460), chamber(4, 490, 590)];
    expect(side(345, four)).toEqual(met('web', 'R1-02', 'R1-03'));
  });

  test('is a split where both are parts of one place', () => {
    expect(side(215, [chamber(1, 100, 200, 'a'), chamber(1, 230, 330, 'b')])).toEqual(met('split', 'R1-01a', 'R1-01b'));
  });

  test('is trimmed where it cost that row something, also at an end', () => {
    const loss = (name: string, of = 'R1') => ({ row: of, place: 'R1-01', by: [name], before: 2, after: 1 });
    expect(side(215, two, { losses: [loss('DR1.1')] })).toEqual(met('trimmed', 'R1-01', 'R1-02'));
    expect(side(50, two, { losses: [loss('DR1.1')] })).toEqual(met('trimmed', 'R1-01'));
    expect(side(215, two, { losses: [loss('DR1.2')] })).toEqual(met('web', 'R1-01', 'R1-02'));
    expect(side(215, two, { losses: [loss('DR1.1', 'R2')] })).toEqual(met('web', 'R1-01', 'R1-02'));
  });

  test('is a chamber around it: it swallows what lies inside, and else passes under or over', () => {
    expect(side(150, two)).toEqual(met('swallowed', 'R1-01'));
    expect(side(150, two, { z: 90 })).toEqual(met('passed', 'R1-01'));
  });

  test('at the far side are only those that come near enough to it', () => {
    const blind = [chamber(1, 100, 200, '', 40), chamber(2, 230, 330)];
    expect(side(215, blind, { far: true })).toEqual(met('end', 'R1-02'));
    expect(side(150, blind, { far: true })).toEqual(met('end', 'R1-02'));
  });
});

test('glue that two rows meet has both its sides, in their order', () => {
  const other = { ...row, id: 'L1' };
  const spot: Spot = { name: 'DC.1', joint: 'JC', from: [215, 30], to: [215, 30], radius: 8 };
  const rows = [row, other].map((each) => {
    const at = nearOn(each);
    return { spot, at, obstacle: obstacleOf(spot, at, { clearance: 2, may: ['trim'] }), swallowed: false };
  });
  const empty = { carving: { row: other }, places: [] } as unknown as CarvedRow;
  expect(sidesOf([carved(chamber(1, 100, 200)), empty], rows, []).get(spot)).toEqual([
    { row: 'R1', way: 'end', chambers: ['R1-01'] },
    { row: 'L1', way: 'end', chambers: [] },
  ]);
});
