import type { Finding } from '../../rules/finding.ts';
import { judge, judgesOfParts, schemeOf } from './gate.ts';
import { EXACT_POINTS } from './least-costs.ts';
import { goodChoice } from './many-points.ts';
import {
  failsAlone,
  failsBy,
  type Looked,
  lookInSteps,
  lookThrough,
  type MostLooked,
  type Passing,
  partsOf,
  passed,
  type ToLookThrough,
  wholeScheme,
  withNext,
} from './passing.ts';
import { sizeOf } from './point-prices.ts';
import type { SchemeColumn } from './scheme-column.ts';
import type { Choice } from './search-space.ts';
import { waysByCharge, within } from './ways-of-touching.ts';

/** How often a choice that fails is made again without what failed in it. */
const MOST_ROUNDS = 12;

/** Looks through the choices of a space: of few points in the order of cost, of many a good one with its bound. */
export function look(toLook: ToLookThrough, most: MostLooked): Looked {
  return toLook.space.points > EXACT_POINTS ? lookAtMany(toLook, most) : lookThrough(toLook, most);
}

/** The same in steps: of many points there is one alone. */
export function* lookStepwise(toLook: ToLookThrough, most: MostLooked): Generator<Looked | null, Looked> {
  if (toLook.space.points > EXACT_POINTS) return lookAtMany(toLook, most);
  return yield* lookInSteps(toLook, most);
}

/**
 * For more points than every choice can be looked at for: a good choice; where it fails, without the column that failed
 * again, up to twelve times. The bound holds whatever was left out on the way: it is raised only while all that was
 * left out fails by itself.
 */
function lookAtMany(toLook: ToLookThrough, { cap }: MostLooked): Looked {
  const { shop, judges, bad } = toLook;
  const barred = new Set<SchemeColumn>();
  let [bound, isBoundOpen, examined] = [0, true, 0];
  let fails: readonly Finding[] = [];
  const done = (passing: readonly Passing[]): Looked => ({
    passing,
    examined,
    bound: Math.min(bound, ...passing.map(({ cost }) => cost)),
    fails,
  });
  for (let round = 0; round < Math.min(MOST_ROUNDS, cap); round += 1) {
    const good = goodCharged(toLook, barred);
    if (isBoundOpen) bound = good.bound;
    if (good.choice === null) return done([]);
    const { columns } = good.choice;
    examined += 1;
    const judged = judge(shop.ground, wholeScheme(toLook, columns), judges);
    if (judged.passes) return done([passed(toLook, good.choice, judged)]);
    if (fails.length === 0) fails = judged.fails;
    for (const column of columns) if (!bad.has(column)) bad.set(column, failsBy(toLook, column));
    const alone = columns.filter((column) => failsAlone(bad, column));
    for (const column of alone) barred.add(column);
    if (alone.length > 0) continue;
    isBoundOpen = false;
    for (const column of culprits(toLook, columns)) barred.add(column);
  }
  return done([]);
}

/**
 * The best of the good choices by every way in which circuits can be touched, and what no choice costs less than. Ways
 * that charge so much that they cannot be better are left out: no choice in them costs less than their charges and the
 * bound of the whole space.
 */
function goodCharged(toLook: ToLookThrough, barred: ReadonlySet<SchemeColumn>) {
  const { charges } = toLook;
  const rest = withNext(toLook, (column) => barred.has(column));
  const floor = goodChoice(rest).bound;
  let best: { readonly choice: Choice<SchemeColumn>; readonly cost: number } | null = null;
  let bound = Number.POSITIVE_INFINITY;
  for (const { states, charge } of waysByCharge(charges, rest.points)) {
    if (best !== null && charge + floor >= best.cost) {
      bound = Math.min(bound, charge + floor);
      break;
    }
    const good = goodChoice(within(rest, charges, states));
    bound = Math.min(bound, charge + good.bound);
    const cost = charge + (good.choice?.cost ?? 0);
    if (good.choice !== null && (best === null || cost < best.cost)) best = { choice: good.choice, cost };
  }
  return { choice: best?.choice ?? null, bound };
}

/** A column whose absence cures a choice; where none does alone, all that connect most points. */
function culprits(
  { shop, judges }: ToLookThrough,
  columns: readonly SchemeColumn[],
): readonly SchemeColumn[] {
  const cured = columns.find((column) => {
    const others = partsOf(
      shop,
      columns.filter((each) => each !== column),
    );
    return judge(shop.ground, schemeOf(shop.ground, 'cured', others), judgesOfParts(judges)).passes;
  });
  if (cured !== undefined) return [cured];
  const most = Math.max(...columns.map(({ mask }) => sizeOf(mask)));
  return columns.filter(({ mask }) => sizeOf(mask) === most);
}
