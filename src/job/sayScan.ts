import words from '../../templates/scan.json' with { type: 'json' };
import { counted } from '../length/counted.js';
import { printLength } from '../length/length.js';
import type { Units } from '../length/units.js';
import type { Scan } from '../scan/whole/scan.js';
import { say } from '../words/say.js';

/** What the board of a plan was taken from, in a line; nothing where it was given by numbers. */
export function sayScan(scan: Scan | undefined, units: Units): string[] {
  if (!scan) return [];
  const { report } = words;
  const { usual, most } = scan.form.off;
  const holes = scan.holes.length === 0 ? '' : say(report.holes, { count: counted(scan.holes.length, 'hole') });
  return [
    say(report.scan, {
      count: scan.measured / 3,
      holes,
      usual: printLength(usual, units),
      most: printLength(most, units),
    }),
  ];
}
