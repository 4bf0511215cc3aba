import { printAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';

/** Why a block is not in the cutting plan, or a stock size not used, and what would do. Lengths in mm. */
export type CutFinding =
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

/**
 * A finding in one sentence: which block or sheet, what is wrong, what would do. Lengths are written for the reader's
 * `units`.
 */
export function sayCutFinding(finding: CutFinding, units: Units): string {
  const needed = (mm: number) => printAs('needed', mm, units);
  const size = ({ length, width }: SheetSize) => `${needed(length)} × ${needed(width)}`;
  const side = (mm: number) => printAs('there', mm, units);
  switch (finding.kind) {
    case 'no-size':
      return `Block ${finding.part}: its length or height is not a number above 0. Give both.`;
    case 'taper-runs-out':
      return `Block ${finding.part}: its taper leaves nothing at the ${finding.end}. Make the taper smaller or the block higher.`;
    case 'no-stock':
      return `Block ${finding.part}: no sheet of ${finding.foam} is listed. List one of at least ${size(finding.needs)}.`;
    case 'too-large': {
      const turn = finding.mayTurn ? 'either way round' : 'with its length along the grain';
      return `Block ${finding.part}: larger than any sheet of ${finding.foam}. A sheet of at least ${size(finding.needs)}, trimming included, would do, ${turn}.`;
    }
    case 'kerf-too-wide':
      return `Block ${finding.part}: its short side of ${side(finding.side)} is no wider than the saw cut of ${needed(finding.kerf)}. Use a blade or wire that cuts narrower than ${side(finding.side)}.`;
    case 'stock-used-up':
      return `Block ${finding.part}: the sheets of ${finding.foam} are used up. Add a sheet of at least ${size(finding.needs)}.`;
    case 'useless-stock':
      return `Sheet ${finding.stock} is not used: ${USELESS[finding.reason]}`;
    case 'bad-saw':
      return `Saw: ${finding.what === 'keep' ? 'the smallest rest to keep' : `the ${finding.what}`} is not a number of 0 or more. Nothing is planned until it is.`;
  }
}

const USELESS = {
  size: 'its length or width is not a number above 0. Give both.',
  trim: 'trimming its edges leaves nothing. Trim less or list a larger sheet.',
  count: 'the number of sheets is not a whole number of 0 or more. Count them again.',
  price: 'its price is not a number of 0 or more. Give a price or leave it out.',
} as const;
