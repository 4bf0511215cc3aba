/** A kind of quantity a builder writes down: its name, its units, and how one is written properly. */
export interface QuantityKind {
  /** `a length` */
  readonly name: string;
  /** Every way to write each unit, lower case, and what it is worth in the unit used inside. */
  readonly units: readonly { readonly names: readonly string[]; readonly worth: number }[];
  /** Units that are written together, larger first: `11 ft 4 in`, and how many of the smaller make the larger. */
  readonly together?: {
    readonly larger: string;
    readonly smaller: string;
    readonly count: number;
    /** Whether `11.4` of the larger may have been meant for 11 of the larger and 4 of the smaller. */
    readonly decimalsAreAsked?: true;
  };
  /** The unit that is never written in fractions, and the one whose fractions are meant where one stands beside it. */
  readonly decimal?: { readonly unit: string; readonly fractionsOf: string };
  /** `19 mm, 3/4 in or 11 ft 4 in` */
  readonly examples: string;
}
