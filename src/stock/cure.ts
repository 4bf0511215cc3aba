import { boardOf, type Board } from '../board/board.js';
import type { MouldedBlankSpec } from '../job/spec/stock.js';
import type { Layup } from '../layup/layup.js';
import { largerBlank, type Larger } from './largerBlank.js';
import type { Placement } from './placement.js';
import type { ShortPlace } from './short.js';
import { stripFits, type StripFits } from './stripFits.js';

/**
 * What takes every short place away: the board laid elsewhere in the same blank, or a larger blank of the same shape.
 */
export type Cure =
  { readonly kind: 'place'; readonly place: Placement } | { readonly kind: 'blank'; readonly larger: Larger };

/** How far the mesh of raw stock may lie from its surface, mm: no moulded foam is true to less. */
export const STOCK_CHORD_ERROR = 0.2;
/** How often a blank is made larger before it is given up. */
const ROUNDS = 8;

/**
 * What cures a blank in which the board is short: tried by laying the board in it anew, in whole steps of the rule, so
 * that what is told does what it promises. Undefined where nothing of the kind does.
 *
 * @param now how the board lies
 * @param lacks by how much the blank is too narrow on each side, and too short, whatever lies where, mm
 * @param step the finest that is told, mm
 */
export function cureOf(
  spec: MouldedBlankSpec,
  now: StripFits,
  lacks: Pick<Larger, 'wider' | 'longer'>,
  asked: number,
  board: Board,
  layup: Layup,
  isOneSided: boolean,
  step: number,
): Cure | undefined {
  const { place, ...found } = spec;
  const lain = (larger: Larger, at?: Placement) =>
    stripFits(
      boardOf(largerBlank(spec.shape, larger), [], STOCK_CHORD_ERROR),
      { ...found, ...(at && { place: at }) },
      asked,
      board,
      layup,
      isOneSided,
    );
  const upTo = (mm: number) => Math.ceil(mm / step - ROUNDING) * step;
  const least: Larger = { thicker: 0, wider: upTo(lacks.wider), longer: upTo(lacks.longer) };
  let larger = least;
  let tried = place || larger.wider + larger.longer > 0 ? lain(larger) : now;
  if (place && larger.wider + larger.longer === 0) {
    const { along, up, noseUp } = tried.fits[0]!.placement;
    const onRule = (mm: number) => Math.round(mm / step) * step;
    const there = { along: onRule(along), up: onRule(up), noseUp: onRule(noseUp) };
    if (tried.short.length === 0 && lain(larger, there).short.length === 0) return { kind: 'place', place: there };
  }
  for (let round = 0; round < ROUNDS && tried.short.length > 0; round++) {
    const more = lacksOf(tried.short, asked);
    larger = {
      thicker: larger.thicker + upTo(more.thicker),
      wider: larger.wider + upTo(more.wider),
      longer: larger.longer + upTo(more.longer),
    };
    tried = lain(larger);
  }
  if (tried.short.length > 0) return undefined;
  // A place that is cured by a longer blank may seem to want a wider one: what is not needed is left out.
  for (const key of ['wider', 'longer', 'thicker'] as const) {
    const without = { ...larger, [key]: least[key] };
    if (larger[key] > least[key] && lain(without).short.length === 0) larger = without;
  }
  return { kind: 'blank', larger };
}

const ROUNDING = 1e-6;

/**
 * What is lacking in all: what deck and bottom lack together, what the rails lack on one side, what nose and tail lack
 * together. Where the blank does not reach a place of deck or bottom, it is too narrow or too short there.
 */
function lacksOf(short: readonly ShortPlace[], asked: number): Larger {
  const most = (wanted: (place: ShortPlace) => boolean) =>
    short.filter(wanted).reduce((least, { over }) => Math.max(least, asked - over), 0);
  const [deck, bottom] = (['deck', 'bottom'] as const).map((flat) =>
    most(({ side, isOutOfReach }) => side === flat && !isOutOfReach),
  ) as [number, number];
  const rails = most(({ side }) => side === 'left rail' || side === 'right rail');
  const longer = most(({ side }) => side === 'nose') + most(({ side }) => side === 'tail');
  const isNone = deck + bottom + rails + longer === 0;
  return { thicker: deck + bottom, wider: isNone ? most(() => true) : rails, longer };
}
