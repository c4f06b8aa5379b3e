import { restsOn } from './cut-legs.ts';
import { type LookBy, lookBy } from './look-by-aim.ts';
import type { Looked, Passing } from './passing.ts';
import type { SearchGround } from './search-ground.ts';

/** The best without a joint in a leg whose way is only assumed; null where none passes. */
export interface WithoutGuesses {
  readonly best: Passing | null;
  readonly optimal: boolean;
}

/**
 * Where the best rests on legs whose way is only assumed, the best without: looked for in a space that has no such joint,
 * so that it is proved by itself. What is held fast and rests on one stays as it is. Null where the best rests on none. A
 * step a choice.
 */
export function* withoutGuesses(
  ground: SearchGround,
  by: LookBy,
  { passing }: Looked,
): Generator<null, WithoutGuesses | null> {
  const [best] = passing;
  const { job } = ground.house;
  const isHeld = new Set(restsOn(job, ground.locked));
  if (best === undefined || restsOn(job, best.scheme.connections).every((legId) => isHeld.has(legId)))
    return null;
  const most = { ...by.most, wanted: 1 };
  const looking = lookBy({ ...ground, allowAssumedLegs: new Set() }, { ...by, most });
  for (;;) {
    const step = looking.next();
    if (!step.done) {
      yield null;
      continue;
    }
    const { looked } = step.value;
    const [found] = looked.passing;
    return { best: found ?? null, optimal: found !== undefined && found.cost <= looked.bound };
  }
}
