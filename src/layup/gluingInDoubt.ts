import words from '../../templates/glueUp.json' with { type: 'json' };
import type { Doubt } from '../job/finding.js';
import type { BlockGlueSpec } from '../job/spec/blocks.js';
import { printLength } from '../length/length.js';
import type { Units } from '../length/units.js';
import { say } from '../words/say.js';
import type { Layup } from './layup.js';

/** Minutes that two hands take, common practice, no source: to spread a metre of a joint, and to tighten a clamp. */
const SPREAD = 1;
const CLAMP = 0.3;

/** Whether the glue stays open until the piece with the most joints is clamped. @param length the board's, mm */
export function gluingInDoubt(
  { pieces }: Pick<Layup, 'pieces'>,
  length: number,
  { openTime, clampSpacing }: BlockGlueSpec,
  units: Units,
): Doubt[] {
  const joints = Math.max(0, ...pieces.map(({ members }) => members.length - 1));
  const piece = pieces.find(({ members }) => members.length - 1 === joints);
  const clamps = Math.ceil(length / clampSpacing) + 1;
  const minutes = Math.ceil((joints * SPREAD * length) / 1000 + clamps * CLAMP);
  if (joints === 0 || minutes <= openTime) return [];
  const values = {
    open: openTime,
    piece: piece!.id,
    joints,
    length: printLength(length, units, 'feet'),
    clamps,
    minutes,
  };
  return [{ where: { path: 'blocks.glue.openTime' }, what: say(words.doubt.what, values), remedy: words.doubt.remedy }];
}
