import words from '../../../templates/bench.json' with { type: 'json' };

export { words };

/** `deckSkin` as a person says it: `deck skin`. */
export function spoken(key: string): string {
  return key.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
}
