/** True when exactly these things are lit, and there are any. */
export function areLit(lit: ReadonlySet<string>, ids: readonly string[]): boolean {
  return ids.length > 0 && lit.size === new Set(ids).size && ids.every((id) => lit.has(id));
}
