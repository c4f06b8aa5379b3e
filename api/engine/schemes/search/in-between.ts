import { type Aim, atPerPoint, weightOf } from './aim.ts';
import { EXACT_POINTS } from './least-costs.ts';
import { type LookBy, type LookedBy, lookBy } from './look-by-aim.ts';
import type { Passing } from './passing.ts';
import type { SearchGround } from './search-ground.ts';

/** How often it is looked between two schemes; for more points than every choice can be looked at for, each look takes long. */
const looksFor = (points: number): number => (points > EXACT_POINTS ? 1 : 3);
/** How many of each look are taken, and how many choices are looked at for them. */
const MOST = { wanted: 2, cap: 100 };

/** Of two schemes the cheaper one, and the one that disturbs less. */
type Pair = readonly [cheap: Passing, calm: Passing];

/**
 * Schemes between the cheapest and the least disturbing: what weighs least where a point of disturbance is worth just so
 * much that both weigh the same, and again on either side of what is found. So each lies on the lower edge of cost against
 * disturbance. A step a choice.
 * Y. P. Aneja, K. P. K. Nair, "Bicriteria transportation problem", 1979.
 */
export function* lookInBetween(
  ground: SearchGround,
  by: LookBy,
  [pence, mess]: readonly [LookedBy, LookedBy],
): Generator<null, readonly Passing[]> {
  const [cheap, calm] = [pence.looked.passing[0], mess.looked.passing[0]];
  if (cheap === undefined || calm === undefined) return [];
  const found: Passing[] = [];
  const pairs: Pair[] = [[cheap, calm]];
  for (let looks = looksFor(ground.wanted.length); looks > 0; looks -= 1) {
    const pair = pairs.shift();
    if (pair === undefined) break;
    const aim = aimBetween(pair);
    if (aim === null) continue;
    const passing = yield* bestBy(ground, { ...by, aim, most: MOST });
    found.push(...passing);
    const [middle] = passing;
    if (middle === undefined || weightOf(aim, middle.works) >= weightOf(aim, pair[0].works)) continue;
    pairs.push([pair[0], middle], [middle, pair[1]]);
  }
  return found;
}

/** The aim by which two schemes weigh the same; null where the one has both less money and less disturbance. */
function aimBetween([cheap, calm]: Pair): Aim | null {
  const millipence = calm.works.millipence - cheap.works.millipence;
  const mess = cheap.works.mess - calm.works.mess;
  return millipence <= 0 || mess <= 0 ? null : atPerPoint(millipence / mess);
}

function* bestBy(ground: SearchGround, by: LookBy): Generator<null, readonly Passing[]> {
  const looking = lookBy(ground, by);
  for (;;) {
    const step = looking.next();
    if (step.done) return step.value.looked.passing;
    yield null;
  }
}
