/** A mark as what stands before its last number, and that number; -1 where it ends with none. */
function parted(mark: string): readonly [string, number] {
  const digits = /\d+$/.exec(mark)?.[0] ?? '';
  return [mark.slice(0, mark.length - digits.length), digits === '' ? -1 : Number(digits)];
}

/** Marks as people count them: P2 before P10; for sorting. */
export function byMark(a: string, b: string): number {
  const [[before, number], [otherBefore, otherNumber]] = [parted(a), parted(b)];
  if (before !== otherBefore) return before < otherBefore ? -1 : 1;
  return number - otherNumber || (a < b ? -1 : a > b ? 1 : 0);
}
