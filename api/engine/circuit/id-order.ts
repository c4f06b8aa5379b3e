/** Orders ids by their characters, the same on every machine; for `toSorted`. */
export function inIdOrder(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
