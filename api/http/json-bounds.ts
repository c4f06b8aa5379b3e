/** No job comes near any of these; beyond them, reading and explaining would take the server minutes. */
const bounds = {
  depth: 32,
  entriesPerList: 2_000,
  keysPerGroup: 500,
  keyLength: 256,
  values: 100_000,
} as const;

interface Open {
  readonly value: unknown;
  readonly depth: number;
}

/** What of a group or list is too much in itself, in words; null when nothing is. */
function excessOf(value: object): string | null {
  if (Array.isArray(value))
    return value.length > bounds.entriesPerList
      ? `a list of ${value.length}, where ${bounds.entriesPerList} are the most`
      : null;
  const keys = Object.keys(value);
  if (keys.length > bounds.keysPerGroup)
    return `a group of ${keys.length} keys, where ${bounds.keysPerGroup} are the most`;
  const longest = keys.find((key) => key.length > bounds.keyLength);
  return longest === undefined
    ? null
    : `a key of ${longest.length} characters, where ${bounds.keyLength} are the most`;
}

/**
 * Whether parsed JSON holds more than any job or library does. Walks without recursion, so that depth cannot
 * exhaust the stack.
 *
 * @returns what is too much, in words without a full stop; null when all is within bounds.
 */
export function jsonExcess(root: unknown): string | null {
  const open: Open[] = [{ value: root, depth: 1 }];
  let values = 0;
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    values += 1;
    if (values > bounds.values) return `more than ${bounds.values} values`;
    const { value, depth } = next;
    if (typeof value !== 'object' || value === null) continue;
    if (depth > bounds.depth) return `lists and groups within each other more than ${bounds.depth} deep`;
    const excess = excessOf(value);
    if (excess !== null) return excess;
    for (const inner of Object.values(value)) open.push({ value: inner, depth: depth + 1 });
  }
  return null;
}
