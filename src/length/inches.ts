/** The smallest mark on an inch rule that a builder reads, as parts of an inch. */
export const RULE_PARTS = 16;

/** `4 1/2` from 72 sixteenths: whole inches and a fraction in its lowest terms. */
export function inchesOf(sixteenths: number): string {
  const whole = Math.floor(sixteenths / RULE_PARTS);
  let above = sixteenths % RULE_PARTS;
  let below = RULE_PARTS;
  while (above > 0 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  if (above === 0) return `${whole}`;
  return whole === 0 ? `${above}/${below}` : `${whole} ${above}/${below}`;
}
