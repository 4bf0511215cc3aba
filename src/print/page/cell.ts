import type { Cell } from '../../sheet/pages.js';

/** How a cell is written; a tick box has no words. */
export function textOf(cell: Cell): string {
  if (typeof cell === 'object') return cell.text;
  return typeof cell === 'boolean' ? '' : String(cell);
}

/** What a cell counts in a total. */
export function valueOf(cell: Cell | undefined): number {
  if (typeof cell === 'number') return cell;
  return typeof cell === 'object' ? cell.value : 0;
}
