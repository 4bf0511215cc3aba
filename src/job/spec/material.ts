export interface Material {
  readonly name: string;
  /** kg/m³. */
  readonly density: number;
  /** Where the density comes from. */
  readonly source: string;
  /**
   * How far the stock at hand may differ from it, one standard deviation as a share of it; the usual for such a
   * material where absent.
   */
  readonly spread?: number;
}
