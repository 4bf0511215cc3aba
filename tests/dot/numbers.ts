/**
 * Numbers from 0 to 1, the same for the same seed. Source: G. Marsaglia, "Xorshift RNGs", Journal of Statistical
 * Software 8(14), 2003, shifts of 13, 17 and 5.
 */
export function numbersFrom(seed: number): () => number {
  let state = seed | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}
