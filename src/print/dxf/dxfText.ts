import { oneLine } from '../trace/lettering.js';

/**
 * A text as DXF of 2000 takes it: the file itself is plain ASCII, other characters go as `\U+XXXX` (DXF reference,
 * "Unicode in DXF"), and what would be read as a control code is written so that it is not: `^` as `^ `, `%%` as two
 * `%%%`.
 */
export function dxfText(text: string): string {
  return Array.from(oneLine(text).replaceAll('^', '^ ').replaceAll('%%', '%%%%%%'))
    .map((letter) => (/^[ -~]$/.test(letter) ? letter : coded(letter)))
    .join('');
}

/** Each half of a character beyond the first 65,536 by itself, as UTF-16 has them. */
function coded(letter: string): string {
  return Array.from({ length: letter.length }, (_, i) => letter.charCodeAt(i))
    .map((unit) => `\\U+${unit.toString(16).toUpperCase().padStart(4, '0')}`)
    .join('');
}
