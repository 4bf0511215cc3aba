/**
 * The word of `known` that `written` most likely meant, or undefined when none is near.
 * Near is: no more letters changed, dropped, added or swapped than a third of the longer word.
 */
export function nearest(written: string, known: readonly string[]): string | undefined {
  let best: string | undefined;
  let bestDistance = Infinity;
  for (const word of known) {
    const distance = editDistance(written.toLowerCase(), word.toLowerCase());
    if (distance < bestDistance) [best, bestDistance] = [word, distance];
  }
  const allowed = Math.floor(Math.max(written.length, best?.length ?? 0) / 3);
  return bestDistance <= allowed ? best : undefined;
}

/** Optimal string alignment distance: insert, delete, replace, swap neighbours (Damerau 1964; Levenshtein 1966). */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      let cost = Math.min(last[j]! + 1, row[j - 1]! + 1, replaced);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) cost = Math.min(cost, beforeLast[j - 2]! + 1);
      row.push(cost);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}
