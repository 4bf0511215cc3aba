import type { Paper, SortedPapers } from './paper.js';

/** Papers by their names, or by their kind for all of it; what is left out is as usual. */
export interface PaperNames {
  /** These and no others. */
  readonly only?: readonly string[] | undefined;
  /** These beside the usual ones. */
  readonly with?: readonly string[] | undefined;
  /** Not these. */
  readonly without?: readonly string[] | undefined;
}

/** What a run makes of a job's papers. */
export interface ChosenPapers extends SortedPapers {
  /** What the cover tells of, whatever few of them are printed anew by `only`. */
  readonly wholeSet: SortedPapers;
  /** Names that no paper has. */
  readonly unknown: readonly string[];
}

/** Sorts a job's papers, in their order, by what was asked for. What is asked for by name is printed. */
export function choosePapers(
  papers: readonly Paper[],
  { only, with: more = [], without = [] }: PaperNames = {},
): ChosenPapers {
  const isAmong = (names: readonly string[], { name, kind, also }: Paper): boolean =>
    [name, kind, also].some((each) => each !== undefined && names.includes(each));
  const kept = papers.filter((paper) => !isAmong(without, paper));
  const isUsual = (paper: Paper, goes: Paper['goes']): boolean => paper.goes === goes && !isAmong(more, paper);
  const wholeSet = sorted(
    papers,
    kept.filter((paper) => isAmong(more, paper) || paper.goes === 'to print'),
    kept.filter((paper) => isUsual(paper, 'to look at')),
  );
  const chosen = only
    ? sorted(
        papers,
        kept.filter((paper) => isAmong([...only, ...more], paper)),
        [],
      )
    : wholeSet;
  const unknown = [...(only ?? []), ...more, ...without].filter(
    (name) => !papers.some((paper) => isAmong([name], paper)),
  );
  return { ...chosen, wholeSet, unknown };
}

const sorted = (all: readonly Paper[], toPrint: readonly Paper[], toLookAt: readonly Paper[]): SortedPapers => ({
  toPrint,
  toLookAt,
  leftOut: all.filter((paper) => !toPrint.includes(paper) && !toLookAt.includes(paper)),
});
