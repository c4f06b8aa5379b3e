type Group = Readonly<Record<string, unknown>>;

/** Whether a value is a group of fields, as opposed to a list, a word, a number or nothing. */
export const isGroup = (value: unknown): value is Group =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The fields by which things of a list are known again, whatever their order, the first that they have. */
const keyFields = ['id', 'question', 'entry', 'item', 'task', 'sum', 'service', 'stage'] as const;

/** What a thing of a list is known by; null for something that is no such thing. */
export function keyOf(thing: unknown): string | null {
  if (!isGroup(thing)) return null;
  const field = keyFields.find((name) => typeof thing[name] === 'string');
  return field === undefined ? null : String(thing[field]);
}
