/**
 * A job is a few pages of text, some 10,000 characters, and a table not much more. A file larger than this is something else, and
 * finding out how its form is broken would take long.
 */
const MOST_CHARACTERS = 300_000;

/** Control characters other than tab, line feed and carriage return; and the mark of undecodable bytes. */
// eslint-disable-next-line no-control-regex -- these are the ones looked for
const UNWRITABLE = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffd]/;

/**
 * Why a file cannot be what it should, before anything is read of it: too large, or not a text. Undefined when it may be.
 *
 * @param expected `a job file`
 */
export function troubleWithText(
  text: string,
  expected: string,
): { what: string; instead: string; line?: number } | undefined {
  if (text.length > MOST_CHARACTERS) {
    return {
      what: `the file is too large for ${expected}: ${Math.round(text.length / 1000)} kB`,
      instead: `${expected}, a few kB of text`,
    };
  }
  const odd = text.search(UNWRITABLE);
  if (odd < 0) return undefined;
  return {
    what: `the file holds characters that no text has; it is not ${expected}`,
    instead: 'a text file, UTF-8',
    line: text.slice(0, odd).split('\n').length,
  };
}
