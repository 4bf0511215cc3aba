import type { Units } from '../../length/units.js';
import type { JobFinding } from '../finding.js';
import { readOffsets, type OffsetStation } from '../parts/offsets.js';
import type { Beside } from '../beside.js';
import type { Say } from '../mistake/say.js';

/**
 * Stands for what a table that could not be read would have held: its numbers are unknown, so nothing is missed and
 * nothing too large.
 */
const UNKNOWN: OffsetStation = {
  x: NaN,
  line: 0,
  points: [0, 1, 2].map(() => ({ y: NaN, z: NaN, edge: false, line: 0 })),
};

/**
 * The stations of the table of offsets that a job names, if it names one.
 *
 * @param found takes what is wrong within the table; what is wrong about its name is said
 */
export function tableBeside(
  name: string | undefined,
  units: Units,
  readBeside: (name: string) => Beside,
  found: (findings: readonly JobFinding[]) => void,
  say: Say,
): readonly OffsetStation[] {
  if (name === undefined) return [];
  if (/[/\\]/.test(name)) {
    say.error([], `"${name}" is a path`, 'the name of a file in the same folder as the job');
    return [UNKNOWN];
  }
  const text = readBeside(name);
  if (text === undefined) {
    say.error([], `there is no file "${name}" beside the job`, 'put it into the same folder, or mend its name');
    return [UNKNOWN];
  }
  if (typeof text !== 'string') {
    say.error([], `"${name}" beside the job cannot be read: ${text.what}`, 'a table of offsets (CSV) that may be read');
    return [UNKNOWN];
  }
  const { stations, findings } = readOffsets(text, name, units);
  found(findings);
  return findings.length > 0 ? [UNKNOWN] : stations;
}
