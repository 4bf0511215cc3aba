import words from '../../templates/stock.json' with { type: 'json' };
import { printLength } from '../length/length.js';
import { WRITTEN_STEP } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import { say } from '../words/say.js';
import type { Slid } from './slid.js';

/** What is done to a strip of foam on the bench, both ends told where they differ. */
export function saySlid({ along, up, noseUp }: Slid, units: Units): string {
  const by = (mm: number) => printLength(Math.abs(mm), units);
  const isAny = (mm: number) => Math.abs(mm) >= WRITTEN_STEP[units] / 2;
  const ends = [
    { mm: up + noseUp, where: words.slid.atNose },
    { mm: up, where: words.slid.atTail },
  ];
  const isLevel = !isAny(noseUp);
  const moves = [
    ...(isLevel ? [{ mm: up, where: '' }] : ends).map(({ mm, where }) =>
      isAny(mm)
        ? say(words.slid.raised, { way: mm < 0 ? words.slid.down : words.slid.up, by: by(mm), where })
        : isLevel
          ? ''
          : say(words.slid.level, { where }),
    ),
    isAny(along)
      ? say(words.slid.along, { by: by(along), way: along < 0 ? words.slid.toNose : words.slid.toTail })
      : '',
  ].filter((move) => move !== '');
  return moves.length > 0 ? moves.join(words.slid.and) : words.slid.none;
}

/** The same as it is written in the job. */
export function slidInJob(strip: string, { along, up, noseUp }: Slid, units: Units): string {
  const keys = Object.entries({ along, up, noseUp }).flatMap(([key, mm]) =>
    Math.abs(mm) < NOTHING ? [] : [`, ${key}: ${printLength(mm, units)}`],
  );
  return `strips: [{strip: ${strip}${keys.join('')}}]`;
}

/** Less is none, mm. */
const NOTHING = 1e-6;
