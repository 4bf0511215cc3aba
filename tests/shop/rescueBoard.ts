import type { ShopEvent, StoredEvent } from '../../src/shop/log/event.js';
import type { STEPS } from '../../src/shop/log/step.js';
import type { TrackedBlock } from '../../src/shop/log/trackedBlock.js';

/** An invented board of a lake-rescue boat club: six rows, 105 blocks, each a little tapered toward nose and tail. */
export function rescueBlocks(): readonly TrackedBlock[] {
  return ['L3', 'L2', 'L1', 'R1', 'R2', 'R3'].flatMap((row) => {
    const count = row.endsWith('3') ? 16 : row === 'R1' ? 19 : 18;
    return Array.from({ length: count }, (_, i) => rescueBlock(row, i + 1, count));
  });
}

function rescueBlock(row: string, place: number, count: number): TrackedBlock {
  const swell = Math.sin((Math.PI * (place - 0.5)) / count);
  const nose = Math.round(40 + 60 * swell);
  const tail = place * 2 < count ? nose + 3 : nose - 3;
  return block(`${row}-${String(place).padStart(2, '0')}`, [
    [0, 0],
    [180, 0],
    [180, tail],
    [0, nose],
  ]);
}

/** A block with this outline, as thick as said, mm. */
export function block(id: string, outline: TrackedBlock['outline'], thickness = 45): TrackedBlock {
  const [row, place] = id.split('-') as [string, string];
  const spread = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  const sizes = { length: spread(outline.map(([s]) => s)), height: spread(outline.map(([, z]) => z)), thickness };
  return { id, row, place: parseInt(place), side: row[0] as 'L' | 'C' | 'R', sizes, outline };
}

/** A box of a block. */
export function box(id: string, length: number, height: number, thickness = 45): TrackedBlock {
  return block(
    id,
    [
      [0, 0],
      [length, 0],
      [length, height],
      [0, height],
    ],
    thickness,
  );
}

export const NOON = Date.UTC(2026, 2, 14, 12);

/** An event of a phone, everything unsaid filled in. */
export function event(part: Partial<ShopEvent> & Pick<ShopEvent, 'seq' | 'what'>): ShopEvent {
  return { client: 'phone-one', seen: 0, plan: 1, at: NOON + part.seq * 1000, who: '', via: 'page', ...part };
}

/** Events as the log would number them. */
export function numbered(events: readonly ShopEvent[]): StoredEvent[] {
  return events.map((one, i) => ({ ...one, number: i + 1, received: one.at, happened: one.at }));
}

/** That a step of a block was done, or taken back. */
export function step(block: string, name: (typeof STEPS)[number], done = true): ShopEvent['what'] {
  return { kind: 'step', block, step: name, done };
}
