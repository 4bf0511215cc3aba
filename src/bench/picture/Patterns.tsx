import { useMemo } from 'preact/hooks';
import type { SpareName } from './spare.js';

/** Pattern tile, px on the screen. */
const TILE = 8;

/** The lines of a tile. */
const LINES: Readonly<Record<Exclude<SpareName, 'much'>, string>> = {
  thin: 'M0 0H8M0 2H8M0 4H8M0 6H8M0 0V8M2 0V8M4 0V8M6 0V8',
  none: 'M0 0L8 8M8 0L0 8',
  little: 'M-2 2L2 -2M0 8L8 0M6 10L10 6',
  some: 'M2 2h1M6 6h1',
};

/** What fills a chamber: a pattern, or where there is spare enough plain colour, which is drawn in no time. */
export function fillOf(prefix: string, name: SpareName): string {
  return name === 'much' ? 'var(--much)' : `url(#${prefix}-${name})`;
}

/** The class of a number written on such a fill: on lines it stands on a light ground of its own. */
export function numberOn(name: SpareName): string {
  return name === 'much' ? 'number' : 'number on-lines';
}

/**
 * The fills of the chambers by spare wall: the less there is, the denser the lines, so that they are told apart without
 * colour.
 *
 * @param prefix of the patterns' names in the document
 * @param scale px in a mm: the tiles keep their size on the screen
 */
export function Patterns({ prefix, scale }: { readonly prefix: string; readonly scale: number }) {
  return useMemo(
    () => (
      <defs>
        {Object.entries(LINES).map(([name, d]) => (
          <pattern
            key={name}
            id={`${prefix}-${name}`}
            width={TILE}
            height={TILE}
            patternUnits="userSpaceOnUse"
            patternTransform={`scale(${1 / scale})`}
          >
            <rect class={`fill-${name}`} width={TILE} height={TILE} />
            <path class={`lines-${name}`} d={d} />
          </pattern>
        ))}
      </defs>
    ),
    [prefix, scale],
  );
}
