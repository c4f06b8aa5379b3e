/**
 * The candidate that a misspelt word most likely meant.
 *
 * @param mostEdits letters that may differ (case, `-`, `_` and spaces never count); by default a third of the word.
 * @returns undefined if none is near enough; the first of equally near ones.
 */
export function nearest(
  word: string,
  candidates: readonly string[],
  mostEdits = Math.max(1, Math.floor(word.length / 3)),
): string | undefined {
  if (word.length > 64) return undefined; // no key or enum value is that long
  const wanted = plain(word);
  let best: string | undefined;
  let fewest = mostEdits + 1;
  for (const candidate of candidates) {
    const edits = editDistance(wanted, plain(candidate));
    if (edits < fewest) [best, fewest] = [candidate, edits];
  }
  return best;
}

function plain(word: string): string {
  return word.toLowerCase().replaceAll(/[-_ ]/g, '');
}

/** Letters to insert, delete, change or swap with a neighbour to make one word of the other. */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      row.push(
        Math.min(
          (last[j] ?? 0) + 1,
          (row[j - 1] ?? 0) + 1,
          (last[j - 1] ?? 0) + (same ? 0 : 1),
          swapped ? (beforeLast[j - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY,
        ),
      );
    }
    [beforeLast, last] = [last, row];
  }
  return last[b.length] ?? 0;
}
