/** Where a firm without jobs begins to count. */
const FIRST = 'J-0001';

/**
 * The reference that follows those in use: the most used stem with the next number, as wide as before.
 * References that hold no number are passed over.
 */
export function nextReference(references: readonly string[]): string {
  const stems = new Map<string, { count: number; highest: number; width: number }>();
  for (const reference of references) {
    const [, stem = '', digits = ''] = /^(.*?)(\d{1,9})\D?$/.exec(reference.trim()) ?? [];
    if (digits === '') continue;
    const had = stems.get(stem) ?? { count: 0, highest: 0, width: 0 };
    stems.set(stem, {
      count: had.count + 1,
      highest: Math.max(had.highest, Number(digits)),
      width: Math.max(had.width, digits.length),
    });
  }
  const [best] = [...stems].sort(([a, x], [b, y]) => y.count - x.count || (a < b ? -1 : 1));
  if (best === undefined) return FIRST;
  const [stem, { highest, width }] = best;
  return `${stem}${String(highest + 1).padStart(width, '0')}`;
}
