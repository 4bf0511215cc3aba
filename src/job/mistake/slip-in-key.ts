import { nearest } from './nearest.js';

/** A slip of the hand that makes a key one that nobody knows, where it is one; `known` are the keys of its block. */
export function slipInKey(
  key: string,
  known: readonly string[],
): { what: string; remedy: string; meant?: string } | undefined {
  const bare = /^["'“”„‘’«»]+(.*?)["'“”„‘’«»]*$/.exec(key)?.[1];
  if (bare !== undefined && known.includes(bare))
    return { what: `curly quotes stand around "${bare}"`, remedy: `${bare}: without quotes`, meant: bare };
  const [, word = '', sign = '', value = ''] = /^([\p{L}_][\p{L}\w-]*)(\s*[:=;,]|\s)\s*(.*)$/u.exec(key) ?? [];
  const meant = known.includes(word) ? word : sign.trim() === ':' ? nearest(word, known) : undefined;
  if (meant === undefined) return undefined;
  const remedy = `${meant}: ${value.slice(0, 40)}`.trim();
  if (value === '')
    return { what: `"${sign.trim()}" is written once too often behind "${word}"`, remedy: `${meant}:`, meant };
  if (sign.trim() === ':') return { what: `a space is missing behind the colon of "${word}"`, remedy, meant };
  if (sign.trim() === '') return { what: `the colon behind "${word}" is missing`, remedy, meant };
  return { what: `"${sign.trim()}" stands behind "${word}" where a colon belongs`, remedy, meant };
}
