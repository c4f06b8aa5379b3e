/** An entry that could not be read: it stands in its field as typed, and nothing of it is saved. */
export interface UnreadEntry {
  /** The field that it stands in. */
  readonly field: { readonly isConnected: boolean };
  readonly label: string;
  readonly typed: string;
}

const entries = new Map<UnreadEntry['field'], UnreadEntry>();
const listeners = new Set<() => void>();

function tell(): void {
  for (const changed of listeners) changed();
}

/** Says that a field holds an entry that could not be read. */
export function holdUnread(entry: UnreadEntry): void {
  entries.set(entry.field, entry);
  tell();
}

/** Says that a field holds none any more: it was mended, taken back, or the field is gone. */
export function releaseUnread(field: UnreadEntry['field']): void {
  if (entries.delete(field)) tell();
}

/** All entries in this window that could not be read, in the order in which they were typed. */
export const unreadEntries = (): readonly UnreadEntry[] => [...entries.values()];

/** Tells of every change; what is given back ends that. */
export function listenToUnread(changed: () => void): () => void {
  listeners.add(changed);
  return () => listeners.delete(changed);
}
