import words from '../../../templates/cutting.json' with { type: 'json' };
import type { Finding } from '../../finding/finding.js';
import { say } from '../../words/say.js';
import type { GlueFault } from './batches.js';

const W = words.findings.glue;

/** A number that allows no gluing as what a builder must act on. */
export function glueFinding(fault: GlueFault): Finding {
  const { what, remedy } = W[fault.kind];
  const values: Record<string, string | number> =
    fault.kind === 'not-a-number'
      ? { what: W.setting[fault.what], least: fault.what === 'loss' ? W.least.any : W.least.some }
      : { needs: fault.needs, open: fault.openTime };
  return { where: W.where, what: say(what, values), remedy: say(remedy, values) };
}
