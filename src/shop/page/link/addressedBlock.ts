/** The longest number that is said back, letters. */
const MOST_SAID = 40;

/** The block an address asks for, `#block=R2-07`, however oddly it is written; nothing where it asks for none. */
export function addressedBlock(hash: string): string | undefined {
  const written = /^#block=([^&]*)/i.exec(hash)?.[1];
  if (written === undefined) return undefined;
  const said = decoded(written).trim().slice(0, MOST_SAID);
  return said === '' ? '(no number)' : said;
}

/** An address may hold a stray per cent sign. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
