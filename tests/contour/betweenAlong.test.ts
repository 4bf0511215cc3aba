import { describe, expect, it } from 'vitest';
import { betweenAlong } from '../../src/contour/betweenAlong.js';

describe('a line between two places along', () => {
  it('is cut where it passes them, and comes in parts where it leaves and comes back', () => {
    const line = [
      [0, 0],
      [10, 10],
      [0, 20],
    ] as const;
    expect(betweenAlong(line, 4, 8)).toEqual([
      [
        [4, 4],
        [8, 8],
      ],
      [
        [8, 12],
        [4, 16],
      ],
    ]);
    expect(betweenAlong(line, -5, 20)).toEqual([line]);
    expect(betweenAlong(line, 11, 20)).toEqual([]);
  });
});
