import type { Certainty, CertaintyByField } from '#model/primitives.ts';

/** Something of the job that tells how sure its facts are. */
export interface Surveyed {
  certainty?: CertaintyByField | undefined;
}

/** The names of the facts of a thing: all its fields but its id and the certainty itself. */
export type FactOf<T> = Exclude<keyof T & string, 'id' | 'certainty'>;

/** What a fact may be set to: null takes it away, where it need not be there. */
export type FactValue<T, K extends keyof T> = undefined extends T[K] ? Exclude<T[K], undefined> | null : T[K];

/** Sets a fact of a thing, or takes it away with what was said of its certainty: absent is unknown. */
export function putFact<T extends object, K extends FactOf<T>>(
  thing: T & Surveyed,
  fact: K,
  value: FactValue<T, K>,
): void {
  if (value === null) {
    Reflect.deleteProperty(thing, fact);
    putCertainty(thing, fact, null);
  } else Reflect.set(thing, fact, value);
}

/**
 * Says how sure a fact is. A fact that is given counts as seen, so *seen* is left unsaid; null takes back
 * whatever was said.
 */
export function putCertainty(thing: Surveyed, fact: string, certainty: Certainty | null): void {
  if (certainty !== null && certainty !== 'seen') {
    thing.certainty = { ...thing.certainty, [fact]: certainty };
    return;
  }
  if (thing.certainty === undefined) return;
  const { [fact]: _gone, ...others } = thing.certainty;
  if (Object.keys(others).length > 0) thing.certainty = others;
  else delete thing.certainty;
}
