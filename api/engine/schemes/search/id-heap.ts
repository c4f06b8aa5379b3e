/** A queue of whole numbers that gives the first of them by an order of the caller's. */
export interface IdHeap {
  readonly size: number;
  push(id: number): void;
  /** Takes out the first; -1 where there is none. */
  pop(): number;
}

/** A binary heap that begins with `ids`, which it takes over. `before` must be a strict order of all ids. */
export function idHeap(ids: number[], before: (a: number, b: number) => boolean): IdHeap {
  for (let at = (ids.length >>> 1) - 1; at >= 0; at--) sink(ids, at, before);
  return {
    get size() {
      return ids.length;
    },
    push(id) {
      let at = ids.push(id) - 1;
      for (let up = (at - 1) >> 1; at > 0 && before(id, ids[up] as number); up = (at - 1) >> 1) {
        ids[at] = ids[up] as number;
        at = up;
      }
      ids[at] = id;
    },
    pop() {
      const first = ids[0] ?? -1;
      const last = ids.pop();
      if (last !== undefined && ids.length > 0) {
        ids[0] = last;
        sink(ids, 0, before);
      }
      return first;
    },
  };
}

function sink(ids: number[], from: number, before: (a: number, b: number) => boolean): void {
  const id = ids[from] as number;
  let at = from;
  for (;;) {
    let down = 2 * at + 1;
    if (down >= ids.length) break;
    if (down + 1 < ids.length && before(ids[down + 1] as number, ids[down] as number)) down++;
    if (!before(ids[down] as number, id)) break;
    ids[at] = ids[down] as number;
    at = down;
  }
  ids[at] = id;
}
