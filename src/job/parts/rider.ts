import type { Quantities } from '../quantities.js';

export function riderSchema(q: Quantities) {
  return q.weight('weight of whoever rides it, clothes and all', {
    least: 10,
    most: 400,
    because: 'it is the weight of one rider or a few',
  });
}
