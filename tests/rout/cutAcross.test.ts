import { layupOf } from '../../src/layup/layupOf.js';
import { expect, test } from 'vitest';
import type { Glue } from '../../src/dot/dot.js';
import type { Chamber } from '../../src/chamber/chamber.js';
import { cutAcross } from '../../src/rout/cutAcross.js';
import { sampleJob } from '../samples.js';

const CLEARANCE = 5;
const { glueUp, board } = sampleJob('tarn-rescue');
const layup = layupOf(glueUp, board.length);
const row = layup.rows.find(({ side }) => side === 'R')!;

/** A box from `from` to 400 along the face and from 20 to 80 in height, mm. */
const box = (from: number): Chamber['profile'] => [
  [from, 20],
  [400, 20],
  [400, 80],
  [from, 80],
];
const chamber = { id: 'R1-02', row: row.id, profile: box(100) } as Chamber;
/** A dot 20 mm across, its middle at 200 along the joint and 50 high. */
const glue = (way: 'swallowed' | 'passed'): Glue => ({
  dots: [
    {
      id: 'DR1.1',
      joint: row.face.joint,
      s: 200,
      z: 50,
      x: 200,
      diameter: 20,
      glued: false,
      margin: 20,
      sides: [{ row: row.id, way, chambers: ['R1-02'] }],
    },
  ],
  smears: [],
  losses: [],
});

// By hand: the dot reaches from 190 to 210, with its clearance from 185 to 215.
test.each([
  [100, []],
  [185, []],
  [186, ['DR1.1']],
  [200, ['DR1.1']],
  [300, ['DR1.1']],
])('a cut from %i on cuts across the dots %j that the whole chamber takes away', (from, across) => {
  expect(cutAcross(chamber, box(from), glue('swallowed'), layup, CLEARANCE)).toEqual(across);
});

test('glue that the chamber passes is no matter: a smaller cut passes it further off', () => {
  expect(cutAcross(chamber, box(300), glue('passed'), layup, CLEARANCE)).toEqual([]);
});
