import { parseDocument, type Document } from 'yaml';

let last: { readonly text: string; readonly document: Document.Parsed } | undefined;

/** The job's text as a YAML document, not to be changed. The last one is kept: what an edit has written is what the fields show and the next edit reads. */
export function documentOf(text: string): Document.Parsed {
  if (last?.text !== text) last = { text, document: parseDocument(text) };
  return last.document;
}
