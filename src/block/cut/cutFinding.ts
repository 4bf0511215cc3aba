import words from '../../../templates/cutting.json' with { type: 'json' };
import type { Finding } from '../../finding/finding.js';
import { printAs } from '../../length/rounded.js';
import type { Units } from '../../length/units.js';
import { say } from '../../words/say.js';
import type { CutFault, SheetSize } from './cutFault.js';

/** A fault of cutting as what a builder must act on: which block or sheet, what is wrong, what would do. */
export function cutFinding(fault: CutFault, units: Units): Finding {
  const { what, remedy } = fault.kind === 'useless-stock' ? W[fault.kind][fault.reason] : W[fault.kind];
  const values = valuesOf(fault, units);
  return { where: say(whereOf(fault), values), what: say(what, values), remedy: say(remedy, values) };
}

const W = words.findings.cut;

function whereOf({ kind }: CutFault): string {
  return kind === 'useless-stock' ? W.stock : kind === 'bad-saw' ? W.saw : W.block;
}

function valuesOf(fault: CutFault, units: Units): Record<string, string> {
  const needed = (mm: number) => printAs('needed', mm, units);
  const size = ({ length, width }: SheetSize) => say(W.size, { length: needed(length), width: needed(width) });
  switch (fault.kind) {
    case 'no-stock':
    case 'stock-used-up':
      return { ...fault, needs: size(fault.needs) };
    case 'too-large':
      return {
        part: fault.part,
        foam: fault.foam,
        needs: size(fault.needs),
        turn: fault.mayTurn ? W.turn.either : W.turn.grain,
      };
    case 'kerf-too-wide':
      return { part: fault.part, side: printAs('there', fault.side, units), kerf: needed(fault.kerf) };
    case 'bad-saw':
      return { what: W.setting[fault.what] };
    default:
      return fault;
  }
}
