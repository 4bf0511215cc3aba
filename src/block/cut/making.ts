/** How a block gets its thickness from the sheets there are. */
export interface Making {
  /**
   * `whole` – the sheet is as thick as the block; `planed` – a little thicker: sanded or planed down; `sliced` – much
   * thicker: sliced, and the rest kept; `laminated` – layers glued up first, and planed where there is a surplus.
   */
  readonly way: 'whole' | 'planed' | 'sliced' | 'laminated';
  /** Thickness of the sheets, mm. */
  readonly sheet: number;
  readonly layers: number;
  /** What comes off, mm. */
  readonly surplus: number;
}

/**
 * A sheet may be thinner than its block by this much, mm: the glue that foams behind it fills it. Common practice, no
 * source.
 */
const SHORT = 0.5;
/**
 * Less than this is sanded flush with the face, mm; more than the second is sliced off rather than planed. Common
 * practice, no source.
 */
export const FLUSH = 0.5;
const MOST_PLANED = 6;

/**
 * The way that takes least foam, and of these the one with fewest layers; undefined without sheets.
 * @param thickness of the block, mm
 * @param sheets thicknesses there are, mm
 */
export function makingOf(thickness: number, sheets: readonly number[]): Making | undefined {
  const ways = sheets.map((sheet): Making => {
    const layers = Math.max(1, Math.ceil((thickness - SHORT) / sheet));
    const surplus = Math.max(0, layers * sheet - thickness);
    const way = layers > 1 ? 'laminated' : surplus <= FLUSH ? 'whole' : surplus <= MOST_PLANED ? 'planed' : 'sliced';
    return { way, sheet, layers, surplus };
  });
  return ways.reduce<Making | undefined>((best, each) => {
    if (!best) return each;
    const more = each.sheet * each.layers - best.sheet * best.layers;
    return more < 0 || (more === 0 && each.layers < best.layers) ? each : best;
  }, undefined);
}
