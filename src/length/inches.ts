/** The smallest mark on an inch rule that a builder reads, as parts of an inch. */
export const RULE_PARTS = 16;

/** `4 1/2` from 72 sixteenths: whole inches and a fraction in its lowest terms. */
export function inchesOf(parts: number, toAnInch: number = RULE_PARTS): string {
  const whole = Math.floor(parts / toAnInch);
  let above = parts % toAnInch;
  let below = toAnInch;
  while (above > 0 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  if (above === 0) return `${whole}`;
  return whole === 0 ? `${above}/${below}` : `${whole} ${above}/${below}`;
}
