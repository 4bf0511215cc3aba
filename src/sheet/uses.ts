import uses from '../../templates/uses.json' with { type: 'json' };
import type { Plan } from '../plan.js';
import type { DocumentPage, TextBlock, Use as UseOfPage } from './pages.js';
import type { Drawing } from './drawing.js';
import { stampOf } from './stamp.js';
import { say, WORDS } from '../words/say.js';

/**
 * A kind of sheet: what it is for, whether its size matters and when it is valid stands once, in `templates/uses.json`.
 */
export type PaperKind = keyof typeof uses.kinds;

interface Use {
  readonly name: string;
  readonly size: keyof typeof uses.size;
  /** When it is valid, while nothing was measured after shaping; and once it was, where that makes a difference. */
  readonly when: string;
  readonly shaped?: string;
  /**
   * Whether what is measured after shaping may change it; and the kind whose full-size sheets tell, where it has none
   * itself.
   */
  readonly turnsVoid?: boolean;
  readonly follows?: PaperKind;
}

const kinds = uses.kinds as Readonly<Record<PaperKind, Use>>;
const all = Object.keys(kinds) as PaperKind[];

/** What a kind of sheet is called. */
export const kindName = (kind: PaperKind): string => kinds[kind].name;

/**
 * What every page of a kind says of its use: whether its size matters, and when it is valid. A list of a full-size kind
 * may be of any size.
 */
export function useOf(kind: PaperKind, page: DocumentPage['kind'], plan: Plan): UseOfPage {
  const { size } = kinds[kind];
  const own = size === 'full' && page !== 'tiled' && page !== 'check' ? 'any' : size;
  return { size: uses.size[own], when: say(uses.onSheet, { when: whenOf(kind, plan) }) };
}

function whenOf(kind: PaperKind, { job }: Plan): string {
  const { when, shaped } = kinds[kind];
  if (!shaped) return when;
  if (job.shaped?.length) return shaped;
  return job.board.scan ? uses.scanned : when;
}

/**
 * For the cover: each kind of sheet that is printed with its size and when it is valid, what is read or only looked at
 * and what else can be asked for; the revision and which sheets printed before it are void.
 *
 * @param revision what every page carries; `stamp` where it was not given by hand
 * @param sheets the full-size sheets of a kind, of a plan
 */
export function usesOnCover(
  plan: Plan,
  { printed, read, shown, others }: Readonly<Record<'printed' | 'read' | 'shown' | 'others', readonly PaperKind[]>>,
  revision: string,
  stamp: string,
  sheets: (kind: PaperKind, plan: Plan) => readonly Drawing[],
): TextBlock[] {
  const words = uses.revision;
  const names = (some: readonly PaperKind[]) => some.map(kindName).join(WORDS.joinWith).toLowerCase() || words.none;
  const turning = all.filter((kind) => kinds[kind].turnsVoid && printed.includes(kind));
  const { drawn } = plan;
  const isChanged = (kind: PaperKind): boolean => {
    const of = kinds[kind].follows ?? kind;
    return stampOf(sheets(of, drawn!)) !== stampOf(sheets(of, plan));
  };
  const measured = drawn && printed.filter((kind) => sheets(kinds[kind].follows ?? kind, plan).length > 0);
  return [
    { kind: 'heading', text: say(words.heading, { revision }) },
    { kind: 'paragraph', text: say(revision === stamp ? words.stamp : words.given, { revision, stamp }) },
    ...(measured
      ? [
          { kind: 'paragraph', text: say(words.void, { kinds: names(measured.filter(isChanged)) }) } as const,
          {
            kind: 'paragraph',
            text: say(words.same, { kinds: names(measured.filter((k) => !isChanged(k))) }),
          } as const,
        ]
      : [
          {
            kind: 'paragraph',
            text: say(plan.job.board.scan ? words.scanned : words.unmeasured, { kinds: names(turning) }),
          } as const,
        ]),
    { kind: 'heading', text: uses.heading },
    {
      kind: 'pairs',
      pairs: [...printed, ...read].map((kind) => [
        kindName(kind),
        `${uses.size[kinds[kind].size]}. ${sentence(whenOf(kind, plan))}`,
      ]),
    },
    ...(read.length > 0 ? [{ kind: 'paragraph', text: say(uses.toRead, { kinds: names(read) }) } as const] : []),
    ...(shown.length > 0 ? [{ kind: 'paragraph', text: say(uses.toLookAt, { kinds: names(shown) }) } as const] : []),
    ...(others.length > 0 ? [{ kind: 'paragraph', text: say(uses.onRequest, { kinds: names(others) }) } as const] : []),
  ];
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
