/**
 * What has to be sent of data where an earlier state of it is known: null for nothing; else the whole of it, or the parts of
 * an object or a list that changed, with the keys that are gone and how long the list is by now.
 */
export type DataChange =
  | null
  | { readonly whole: unknown }
  | {
      readonly parts: readonly (readonly [key: string | number, change: DataChange])[];
      readonly gone?: readonly string[];
      readonly length?: number;
    };

type Keyed = Readonly<Record<string, unknown>>;

const isKeyed = (data: unknown): data is Keyed =>
  typeof data === 'object' && data !== null && Object.getPrototypeOf(data) === Object.prototype;

/** The key is there, even where it holds nothing. */
const has = (data: Keyed, key: string): boolean => Object.hasOwn(data, key);

/**
 * What changed from one state of plain data to another; what both hold as the same object is not looked into. Objects of
 * other kinds than plain ones and lists are sent whole where they are not the same.
 */
export function changeOf(now: unknown, before: unknown): DataChange {
  if (Object.is(now, before)) return null;
  if (Array.isArray(now) && Array.isArray(before)) return listChange(now, before);
  if (isKeyed(now) && isKeyed(before)) return keyedChange(now, before);
  return { whole: now };
}

function listChange(now: readonly unknown[], before: readonly unknown[]): DataChange {
  const parts = now.flatMap((one, i) => {
    const change: DataChange = i < before.length ? changeOf(one, before[i]) : { whole: one };
    return change === null ? [] : [[i, change] as const];
  });
  if (parts.length === 0 && now.length === before.length) return null;
  return { parts, length: now.length };
}

function keyedChange(now: Keyed, before: Keyed): DataChange {
  const parts = Object.keys(now).flatMap((key) => {
    const change: DataChange = has(before, key) ? changeOf(now[key], before[key]) : { whole: now[key] };
    return change === null ? [] : [[key, change] as const];
  });
  const gone = Object.keys(before).filter((key) => !has(now, key));
  if (parts.length === 0 && gone.length === 0) return null;
  return gone.length === 0 ? { parts } : { parts, gone };
}

/** The later state: what did not change is in it as the same object; the earlier one stays as it is. */
export function withChange(before: unknown, change: DataChange): unknown {
  if (change === null) return before;
  if ('whole' in change) return change.whole;
  if (Array.isArray(before)) return listWith(before, change);
  const gone = new Set(change.gone);
  const kept = Object.entries(before as Keyed).filter(([key]) => !gone.has(key));
  const own = before as Keyed;
  const parts = change.parts.map(([key, part]) => [key, withChange(own[key], part)] as const);
  return Object.fromEntries([...kept, ...parts]);
}

function listWith(
  before: readonly unknown[],
  change: Extract<DataChange, { readonly parts: unknown }>,
): unknown[] {
  const now = before.slice(0, change.length);
  for (const [key, part] of change.parts) now[Number(key)] = withChange(before[Number(key)], part);
  return now;
}

/** Sends states of data to one receiver, each as what changed of the one before. */
export class ChangeSender {
  #last: unknown;

  changeTo(now: unknown): DataChange {
    const change = changeOf(now, this.#last);
    this.#last = now;
    return change;
  }
}

/** Takes what a sender sends, in its order, and gives the states back. */
export class ChangeTaker {
  #last: unknown;

  take(change: DataChange): unknown {
    this.#last = withChange(this.#last, change);
    return this.#last;
  }
}
