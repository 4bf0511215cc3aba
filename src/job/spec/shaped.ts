import type { Scan } from '../../scan/whole/scan.js';

/** What is known of the board after shaping: measures, or the whole of it scanned anew. */
export type ShapedSpec = Measured | { readonly kind: 'scan'; readonly scan: Scan };

/** What was measured on the board after shaping; the blank is never exactly the drawing. mm. */
export type Measured =
  | {
      readonly kind: 'thickness';
      readonly x: number;
      /** From the centreline, positive to the right. */
      readonly y: number;
      readonly value: number;
      /** On which side the difference lies; half on each where the builder does not know. */
      readonly off: 'deck' | 'bottom' | 'both';
    }
  | { readonly kind: 'width'; readonly x: number; readonly value: number }
  | {
      readonly kind: 'wall';
      /** The chamber at whose thinnest place the wall was measured. */
      readonly chamber: string;
      readonly wall: 'deck' | 'bottom' | 'rail';
      readonly value: number;
    };
