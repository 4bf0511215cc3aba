import type { QuantityKind } from './kind.js';
import type { Parsed } from './parsed.js';
import { parseQuantity } from './quantity.js';

const SHARE: QuantityKind = {
  name: 'a share',
  units: [
    { names: ['of the whole'], worth: 1 },
    { names: ['%', 'percent', 'per cent'], worth: 0.01 },
  ],
  examples: '45 % or 0.45',
};

/** Reads a share of a whole: `45 %`, `0.45`, `1/2`. Gives 0.45 for 45 %. */
export function parseShare(written: string | number): Parsed {
  return parseQuantity(written, SHARE, 'of the whole');
}
