/**
 * Something in a finished plan that breaks a rule of its job, found from the plan's published results alone. Lengths in
 * mm.
 */
export type Fault = RuleFault | BlockFault;

interface RuleFault {
  readonly kind: 'solid-end' | 'keep-out' | 'web' | 'floor' | 'corner' | 'small' | 'margin' | 'glue';
  /** The chamber or dot that is at fault. */
  readonly where: string;
  /**
   * What it comes too near to: nose or tail, a keep-out, a neighbour, a joint, glue; of a small chamber, which of its
   * sizes.
   */
  readonly by?: string;
  /** What there is, and what there would have to be at least. */
  readonly has: number;
  readonly needs: number;
}

/** A block that does not go into its chamber: too thick, over its outline (`has` in mm²), or not there at all. */
interface BlockFault {
  readonly kind: 'block';
  readonly where: string;
  readonly by?: 'thickness' | 'outline';
  readonly has: number;
  readonly needs: number;
}

/** What a rule is missed by and still counts as kept, mm: rounding of the computation, far less than a pencil line. */
export const NEAR = 0.01;
