/**
 * A function of an immutable object that works the answer to the same object out once. The answer lives as
 * long as the object does and is shared: for pure functions whose answers nobody changes.
 */
export function remembered<A extends object, R>(work: (a: A) => R): (a: A) => R {
  const known = new WeakMap<A, { readonly answer: R }>();
  return (a) => {
    const found = known.get(a);
    if (found !== undefined) return found.answer;
    const answer = work(a);
    known.set(a, { answer });
    return answer;
  };
}

/** The same for a function of two immutable objects; an answer lives as long as both do. */
export function rememberedOfTwo<A extends object, B extends object, R>(
  work: (a: A, b: B) => R,
): (a: A, b: B) => R {
  const ofFirst = remembered((a: A) => remembered((b: B) => work(a, b)));
  return (a, b) => ofFirst(a)(b);
}
