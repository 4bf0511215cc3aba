import words from '../../templates/notes.json' with { type: 'json' };
import type { Note } from '../chamber/chamber.js';
import type { Finding } from '../finding/finding.js';
import { sayFinding } from '../finding/say.js';
import { printLength } from '../length/length.js';
import { printAs } from '../length/rounded.js';
import type { Units } from '../length/units.js';
import { say } from '../words/say.js';

/** A note as a sentence for a builder. */
export function sayNote(note: Note, units: Units): string {
  const finding = noteFinding(note, units);
  if (finding) return sayFinding(finding);
  const { kind, where, shorter } = note;
  const sentence = say(words.kind[kind], {
    where,
    why: reasonOf(note),
    shorter: shorter === undefined ? '' : printAs('needed', shorter, units),
  });
  return sentence + sizesOf(note, units);
}

/** The same of one that a builder must act on; nothing of one that is only to be known. */
export function noteFinding(note: Note, units: Units): Finding | undefined {
  const cures: Partial<Record<Note['why'], string>> = words.cure;
  const remedy = cures[note.why];
  return remedy === undefined ? undefined : { where: note.where, what: reasonOf(note) + sizesOf(note, units), remedy };
}

function reasonOf({ why, by, wall }: Note): string {
  return wall ? say(words.stops, { wall: words.wall[wall] }) : say(words.why[why], { by: by.join(', ') });
}

/** Where it is, what there is and what would have to be, as far as the note says. */
function sizesOf({ at, has, needs }: Note, units: Units): string {
  const place = at === undefined ? '' : say(words.at, { at: printLength(at, units) });
  if (has === undefined || needs === undefined) return place;
  // What there is and what is needed stay apart, whichever of the two is more.
  const [less, more] = has < needs ? (['there', 'needed'] as const) : (['needed', 'there'] as const);
  return place + say(words.sizes, { has: printAs(less, has, units), needs: printAs(more, needs, units) });
}
