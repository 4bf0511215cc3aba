/**
 * Density of water at 15 °C, kg/m³: ITTC Recommended Procedure 7.5-02-01-03, fresh water and sea water of 35.165 g/kg
 * of salt.
 */
export const WATER = { fresh: 999.1, sea: 1026.02 } as const;
export type Water = keyof typeof WATER;

/** How a board floats in one kind of water. */
export interface Float {
  /** What it can carry before it is all under, kg. */
  readonly carries: number;
  /** What is left of that under the rider, kg; negative when board and rider sink. */
  readonly spare?: number;
  /** Share of its volume under water, with the rider where there is one. */
  readonly under: number;
}

/**
 * Archimedes: the water displaced weighs what floats.
 *
 * @param volume of the board, litres
 * @param weight of the board, kg
 * @param rider kg
 */
export function floatOf(volume: number, weight: number, rider?: number): Record<Water, Float> {
  const inWater = (water: Water): Float => {
    const lift = (volume * WATER[water]) / 1000;
    const carries = lift - weight;
    return {
      carries,
      under: (weight + (rider ?? 0)) / lift,
      ...(rider !== undefined && { spare: carries - rider }),
    };
  };
  return { fresh: inWater('fresh'), sea: inWater('sea') };
}
