import table from '../../templates/cautions.json' with { type: 'json' };
import type { TextBlock } from './set.js';

/** Every caution of `templates/cautions.json`, in its order, ready for a page of text. */
export const cautions: readonly (TextBlock & { readonly kind: 'caution'; readonly id: string })[] = table.cautions.map(
  ({ id, title, lines }) => ({ kind: 'caution', id, title, lines }),
);
