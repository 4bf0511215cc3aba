/** The router and the guides it runs on, mm. */
export interface RoutingSpec {
  /** How far the cutter can be set out of the router's base, cutting over all of it. */
  readonly cutterLength: number;
  /** Outside diameter of the guide bush. */
  readonly bush: number;
  /** Thickness of the stock that guides are cut from. */
  readonly guideStock: number;
  /** Depth of one pass, at most. */
  readonly passDepth: number;
  /**
   * Whether chambers share guides: so many, or as few as lose no more than this share of what is routed out. Absent: a
   * guide each.
   */
  readonly guides?:
    { readonly kind: 'count'; readonly count: number } | { readonly kind: 'loss'; readonly share: number };
}
