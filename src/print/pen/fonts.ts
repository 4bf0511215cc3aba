import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** The embedded open font (DejaVu Sans, licence in its package): Latin, Greek, Cyrillic, mathematical signs. */
export interface FontFiles {
  readonly regular: Buffer;
  readonly bold: Buffer;
}

let read: FontFiles | undefined;

/** Reads the font files once. */
export function fontFiles(): FontFiles {
  const require = createRequire(import.meta.url);
  const file = (name: string): Buffer => readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}`));
  read ??= { regular: file('DejaVuSans.ttf'), bold: file('DejaVuSans-Bold.ttf') };
  return read;
}
