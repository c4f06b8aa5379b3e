/**
 * What many work on at once, in the order that it was given in. No more is taken from the source than so many ahead of what was
 * handed on last, whoever is slow: the source, a worker or the reader.
 *
 * @param ahead one at least.
 * @throws what the work of an item throws, in that item's turn.
 */
export async function* inOrder<T, R>(
  items: AsyncIterable<T> | Iterable<T>,
  work: (item: T) => Promise<R>,
  ahead: number,
): AsyncGenerator<R> {
  const begun: Promise<R>[] = [];
  for await (const item of items) {
    const one = work(item);
    // What fails is told in its turn, not before.
    one.catch(() => undefined);
    begun.push(one);
    if (begun.length >= ahead) yield (await begun.shift()) as R;
  }
  for (const one of begun) yield await one;
}
