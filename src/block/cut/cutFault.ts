/** Why a block is not in the cutting plan, or a stock size not used. Lengths in mm. */
export type CutFault =
  | { readonly kind: 'no-size'; readonly part: string }
  | { readonly kind: 'taper-runs-out'; readonly part: string; readonly end: 'head' | 'tail' }
  | { readonly kind: 'no-stock'; readonly part: string; readonly foam: string; readonly needs: SheetSize }
  | {
      readonly kind: 'too-large';
      readonly part: string;
      readonly foam: string;
      readonly needs: SheetSize;
      readonly mayTurn: boolean;
    }
  | { readonly kind: 'kerf-too-wide'; readonly part: string; readonly kerf: number; readonly side: number }
  | { readonly kind: 'stock-used-up'; readonly part: string; readonly foam: string; readonly needs: SheetSize }
  | { readonly kind: 'useless-stock'; readonly stock: string; readonly reason: 'size' | 'trim' | 'count' | 'price' }
  | { readonly kind: 'bad-saw'; readonly what: 'kerf' | 'trim' | 'keep' };

/** The smallest sheet, trimming included, that would do. */
export interface SheetSize {
  readonly length: number;
  readonly width: number;
}
