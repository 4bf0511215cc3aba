import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { svgOf } from '../../src/print/svg/svg.js';
import type { Drawing } from '../../src/sheet/drawing.js';

/**
 * Compares a drawing with the picture that was looked at. A picture that is missing is a failure, never written on the
 * way: `PICTURES=write npx vitest run tests/sheet` writes them, and then they have to be opened and judged.
 */
export function expectPicture(drawing: Drawing): void {
  const file = fileURLToPath(new URL(`pictures/${drawing.id}.svg`, import.meta.url));
  const svg = svgOf(drawing);
  if (process.env.PICTURES === 'write') writeFileSync(file, svg);
  expect(existsSync(file), `no picture of ${drawing.id} was looked at yet`).toBe(true);
  expect(svg).toBe(readFileSync(file, 'utf8'));
}
