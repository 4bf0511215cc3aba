/**
 * A part of a section that bends as one with the rest: its modulus, MPa, and ∫ dA, ∫ z dA, ∫ z² dA, in mm², mm³, mm⁴,
 * about the same level for all.
 */
export interface SectionPart {
  readonly modulus: number;
  readonly area: number;
  readonly firstMoment: number;
  readonly secondMoment: number;
}

/** How a section resists bending. */
export interface Bending {
  /** N·mm². */
  readonly stiffness: number;
  /** Height of the neutral axis, mm. */
  readonly axis: number;
}

/** The level rectangle between two heights, mm. */
export function rectangle(modulus: number, width: number, low: number, high: number): SectionPart {
  return {
    modulus,
    area: width * (high - low),
    firstMoment: (width * (high ** 2 - low ** 2)) / 2,
    secondMoment: (width * (high ** 3 - low ** 3)) / 3,
  };
}

/**
 * The transformed section: every part counted as often as it is stiff, about their common neutral axis.
 * Source: J. M. Gere, "Mechanics of Materials", 7th ed., ch. 6.3.
 */
export function bendingOf(parts: readonly SectionPart[]): Bending {
  let [e, ez, ezz] = [0, 0, 0];
  for (const { modulus, area, firstMoment: firstMoment, secondMoment: secondMoment } of parts) {
    e += modulus * area;
    ez += modulus * firstMoment;
    ezz += modulus * secondMoment;
  }
  return e === 0 ? { stiffness: 0, axis: 0 } : { stiffness: ezz - (ez * ez) / e, axis: ez / e };
}
