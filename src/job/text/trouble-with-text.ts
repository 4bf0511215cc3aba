/**
 * A job is a few pages of text, some 10,000 characters, and a table not much more. A file larger than this is something
 * else, and finding out how its form is broken would take long.
 */
const MOST_CHARACTERS = 300_000;

/** How an editor is told to save a text. */
const AS_TEXT = 'plain text, encoding UTF-8, line endings LF (Unix) or CRLF (Windows)';

/**
 * Whether a text is one of two bytes a letter read as one of one: every other letter is a NUL, or the mark at its start
 * is undecodable.
 */
function isWide(text: string): boolean {
  const start = text.slice(0, 400);
  const zeros = start.split('\u0000').length - 1;
  return zeros > 0 && (start.startsWith('\ufffd\ufffd') || zeros > start.length / 3);
}

/** Control characters other than tab, line feed and carriage return; and the mark of undecodable bytes. */
// eslint-disable-next-line no-control-regex -- these are the ones looked for
const UNWRITABLE = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffd]/;

/**
 * Why a file cannot be what it should, before anything is read of it: too large, or not a text. Undefined when it may
 * be.
 *
 * @param expected `a job file`
 */
export function troubleWithText(
  text: string,
  expected: string,
): { what: string; remedy: string; line?: number } | undefined {
  if (text.length > MOST_CHARACTERS) {
    return {
      what: `the file is too large for ${expected}: ${Math.round(text.length / 1000)} kB`,
      remedy: `${expected}, a few kB of text`,
    };
  }
  if (isWide(text))
    return {
      what: 'the file is saved as UTF-16, which some editors call "Unicode"',
      remedy: `save it anew as ${AS_TEXT}`,
    };
  if (/\r(?!\n)/.test(text) && !text.includes('\n'))
    return {
      what: 'its lines end as on computers of long ago (CR alone), so that it is one long line',
      remedy: `save it anew as ${AS_TEXT}`,
    };
  const odd = text.search(UNWRITABLE);
  if (odd < 0) return undefined;
  return {
    what: `the file holds characters that no text has; it is not ${expected}`,
    remedy: `a text file: save it as ${AS_TEXT}`,
    line: text.slice(0, odd).split('\n').length,
  };
}
