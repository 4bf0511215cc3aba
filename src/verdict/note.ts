import words from '../../templates/notes.json' with { type: 'json' };
import type { Note } from '../chamber/chamber.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import { say } from '../words/say.js';

/** A note as a sentence for a builder. */
export function sayNote({ kind, where, why, by, shorter, wall, at, has, needs }: Note, units: Units): string {
  const length = (mm: number | undefined) => (mm === undefined ? '' : printLength(mm, units));
  const reason = wall ? say(words.stops, { wall: words.wall[wall] }) : say(words.why[why], { by: by.join(', ') });
  const sentence = say(words.kind[kind], {
    where,
    why: reason,
    shorter: shorter === undefined ? '' : printAs('needed', shorter, units),
  });
  // What there is and what is needed stay apart, whichever of the two is more.
  const [less, more] = (has ?? 0) < (needs ?? 0) ? (['there', 'needed'] as const) : (['needed', 'there'] as const);
  return (
    sentence +
    (at === undefined ? '' : say(words.at, { at: length(at) })) +
    (has === undefined || needs === undefined
      ? ''
      : say(words.sizes, { has: printAs(less, has, units), needs: printAs(more, needs, units) }))
  );
}
