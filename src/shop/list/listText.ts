/** How many zero bytes tell UTF-16 without a mark: every second one, for Latin letters. */
const MANY_ZEROS = 0.3;

/**
 * The text of a list as a spreadsheet saves it: UTF-8 or UTF-16, with or without a byte order mark, or else Latin-1 as
 * Windows writes it (WHATWG Encoding: windows-1252). Control characters other than tabs and line ends are left out, and
 * counted.
 */
export function listText(bytes: Uint8Array): { readonly text: string; readonly removed: number } {
  const read = decoded(bytes).replace(/^\uFEFF/, '');
  const text = read.replace(/[^\P{Cc}\t\r\n]/gu, '');
  return { text, removed: read.length - text.length };
}

function decoded(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  const zeros = (from: number) => bytes.filter((byte, i) => i % 2 === from && byte === 0).length;
  if (zeros(1) > MANY_ZEROS * bytes.length) return new TextDecoder('utf-16le').decode(bytes);
  if (zeros(0) > MANY_ZEROS * bytes.length) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
