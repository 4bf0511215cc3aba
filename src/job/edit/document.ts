import type { Document } from 'yaml';
import { readingOf, type Reading } from '../text/reading.js';

let last: Reading | undefined;

/**
 * The job's text as a YAML document, to be read at once: asked for another text, it becomes that one's. The last one is
 * kept: what an edit has written is what the fields show and the next edit reads.
 */
export function documentOf(text: string): Document.Parsed {
  last = readingOf(text, last);
  return last.document;
}

/** Whether the text is no YAML. */
export function isBroken(text: string): boolean {
  last = readingOf(text, last);
  return last.broken.length > 0;
}
