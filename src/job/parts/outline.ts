import type { TailShape } from '../spec/board.js';
import type { NoseShape } from '../spec/board.js';
import type { PlanPoint } from '../spec/board.js';
import type { Point } from '../../contour/point.js';
import { z } from 'zod';
import { printLength } from '../../length/length.js';
import type { Units } from '../../length/units.js';
import type { Quantities } from '../quantities.js';
import type { Say } from '../mistake/say.js';

const halfBounds = { least: 0.5, most: 1000, because: 'no board is wider' };

export function noseSchema(q: Quantities) {
  return z
    .union([
      z.enum(['round', 'pointed']),
      z.strictObject({ square: q.length('half of the width of the straight nose', halfBounds) }),
    ])
    .meta({ description: 'how the outline leaves the nose tip: round, pointed, or {square: half of its width}' });
}

export function tailSchema(q: Quantities) {
  const half = (what: string) => q.length(what, halfBounds);
  return z
    .union([
      z.enum(['pin', 'round']),
      z.strictObject({ square: half('half of the width of the straight tail') }),
      z.strictObject({
        squash: half('half of the width of the straight tail, corners and all'),
        corner: q.length('how far in the corners are eased', {
          least: 0.5,
          most: 1000,
          because: 'a corner lies within the tail',
        }),
      }),
      z.strictObject({
        swallow: half('from the centre to each tip'),
        depth: q.length('how deep the notch is', { least: 1, most: 600, because: 'the notch lies within the tail' }),
      }),
    ])
    .meta({
      description:
        'how the outline ends: pin, round, {square: half of its width}, {squash: half of its width, corner: …} or {swallow: centre to tip, depth: …}',
    });
}

export function outlineSchema(q: Quantities) {
  const x = q.length('from the nose tip', {
    least: 0,
    most: 8000,
    because: 'it lies on the board, and no board is longer',
  });
  return z.array(z.tuple([x, q.length('half of the width there', halfBounds)])).meta({
    description:
      'the outline as points [from the nose, half of the width], nose to tail; the tips belong to nose and tail',
  });
}

export function toNose(file: z.infer<ReturnType<typeof noseSchema>>): NoseShape {
  return typeof file === 'string' ? { kind: file } : { kind: 'square', half: file.square };
}

export function toTail(file: z.infer<ReturnType<typeof tailSchema>>, units: Units, say: Say): TailShape {
  if (typeof file === 'string') return { kind: file };
  if ('square' in file) return { kind: 'square', half: file.square };
  if ('squash' in file) {
    if (file.corner > file.squash) {
      const most = printLength(file.squash, units);
      say.error(['corner'], 'the eased corners are wider than the tail', `at most ${most}, half of the tail's width`);
    }
    return { kind: 'squash', half: file.squash, corner: file.corner };
  }
  return { kind: 'swallow', half: file.swallow, depth: file.depth };
}

/** Measured points must follow each other from nose to tail, between the tips. Says each that does not. */
export function toOutline(file: readonly Point[], length: number, units: Units, say: Say): readonly PlanPoint[] {
  file.forEach(([x], i) => {
    const before = file[i - 1]?.[0];
    if (x <= 0 || x >= length) {
      const range = `a place between 0 and ${printLength(length, units, 'feet')}; the tips themselves belong to nose and tail`;
      say.error([i, 0], `this point of the outline lies at a tip or off the board (${printLength(x, units)})`, range);
    } else if (before !== undefined && x <= before) {
      const order = `the point at ${printLength(x, units)} follows one at ${printLength(before, units)}`;
      say.error([i, 0], order, 'list the points once each, from nose to tail');
    }
  });
  return file.map(([x, half]) => ({ x, half }));
}
