import { PATCHES, type Patch } from '../board/mesh.js';
import { placeName } from '../job/names.js';
import type { Chamber, Note } from './chamber.js';
import type { Filling } from './filling.js';
import type { Slot } from './slots.js';
import type { Stretch } from './stretch.js';

/** A chamber drawn in by less than this, mm, is not worth a word. */
const TRIMMED = 2;
/** A chamber of less than this share of what its row's middle one holds is small enough to say why. */
const SMALL = 0.35;

/** What a builder must know of a place that is not filled from end to end. */
export function noteOf(
  row: string,
  slot: Slot,
  stretch: Stretch,
  { around, past, parts }: Filling,
  chambers: readonly Chamber[],
  asked: Asked,
): Note[] {
  if (chambers.length === 0) return [];
  const notes: Note[] = [];
  const here = { where: placeName(row, slot.place), row, place: slot.place };
  const names = (obstacles: Filling['around']) => [...new Set(obstacles.map(({ name }) => name))];
  const reason = (obstacles: Filling['around']) => (obstacles.some((o) => o.why === 'keep-out') ? 'keep-out' : 'dot');
  if (chambers.length > 1) notes.push({ kind: 'split', ...here, why: reason(around), by: names(around) });
  if (past.length > 0) notes.push({ kind: 'lowered', ...here, why: reason(past), by: names(past) });
  const ends = chambers.flatMap(({ profile }) => profile.map(([s]) => s));
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  const shorter = slot.to - slot.from - (to - from);
  if (shorter > TRIMMED && (parts.length === chambers.length || chambers.length === 1)) {
    const atEnds = stretch.from > slot.from + TRIMMED || stretch.to < slot.to - TRIMMED;
    const why = around.length > 0 ? reason(around) : atEnds ? 'ends' : 'room';
    const wall = why === 'room' && { wall: stoppedBy(chambers, asked) };
    const where = chambers.length === 1 ? chambers[0]!.id : here.where;
    notes.push({ kind: 'trimmed', ...here, where, why, by: names(around), shorter, ...wall });
  }
  return notes;
}

/**
 * Chambers much smaller than their row's middle one, of which nothing else is said: where the board is thin or narrow.
 */
export function smallOnes(chambers: readonly Chamber[], said: readonly Note[], asked: Asked): Note[] {
  const volumes = chambers.map(({ volume }) => volume).sort((a, b) => a - b);
  const middle = volumes[volumes.length >> 1] ?? 0;
  return chambers.flatMap((chamber): Note[] => {
    const { id, row, place, volume } = chamber;
    const spoken = said.some(({ where }) => where === id || where === placeName(row, place));
    if (volume >= SMALL * middle || spoken) return [];
    return [{ kind: 'small', where: id, row, place, why: 'room', by: [], wall: stoppedBy([chamber], asked) }];
  });
}

type Asked = Readonly<Record<Patch, number>>;

/** The wall that is nearest to what is asked. */
function stoppedBy(chambers: readonly Chamber[], asked: Asked): Patch {
  const spare = (patch: Patch) => Math.min(...chambers.map(({ wall }) => wall[patch])) - asked[patch];
  return PATCHES.reduce((a, b) => (spare(b) < spare(a) ? b : a));
}
