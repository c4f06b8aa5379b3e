import { allRules } from '#engine/all-rules.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { factsOf } from '#engine/schemes/facts-of.ts';
import { byPence } from '#engine/schemes/search/aim.ts';
import { buildSpace } from '#engine/schemes/search/build-space.ts';
import { type ChargedChoice, chargedChoices } from '#engine/schemes/search/charged-choices.ts';
import { choicesByCost } from '#engine/schemes/search/cheapest-choices.ts';
import { circuitCharges } from '#engine/schemes/search/circuit-charges.ts';
import { judge, schemeOf } from '#engine/schemes/search/gate.ts';
import { partsOf } from '#engine/schemes/search/passing.ts';
import type { SearchOptions } from '#engine/schemes/search/search.ts';
import { endOfNode, searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { workshop } from '#engine/schemes/search/workshop.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { workHouse, workScheme } from '#engine/schemes/work-scheme.ts';
import { houseNet } from '#engine/ways/graph/house-net.ts';
import { type HouseWays, houseWays } from '#engine/ways/house-ways.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { WayEnd } from '#engine/ways/way-cost.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { timed } from './growth.ts';

/** What is timed, in the order of the work. */
export const stages = {
  plan: 'the plan',
  house: 'circuits and their ways as found',
  net: 'the net of ways',
  run: 'one way between two ends',
  row: 'ways from one end to all others',
  priced: 'the same as the search prices them',
  columns: 'columns',
  choice: 'charges and the first choices',
  gate: 'the gate, one choice',
  best: 'the search, best schemes',
  whole: 'the search, best of each kind too',
  ends: 'the search, least disturbing too',
} as const;
export type Stage = keyof typeof stages;
/** Milliseconds by stage; a stage that was not run is absent. */
export type StageTimes = Partial<Record<Stage, number>>;

/** As many choices as people look through go through the gate. */
const CHOICES = 10;

/** One pass through the stages, each with all that it asks for but what stages before it have made. */
export function timeStages(given: Job, library: Library): StageTimes {
  // A copy: what the engine remembers of a job goes with the object.
  const job = structuredClone(given);
  const plan = timed(() => buildPlan(job));
  const house = timed(() => workHouse(job, tariffOf(library), defaultLengthAllowances));
  const { proofs: proofsFound } = factsOf(workScheme(house.result, null), library, null);
  const ground = searchGround(house.result, library, { ways: waysInHouse(house.result, library) });
  const found = job.points.filter(({ status }) => status === 'existing');
  const ends = found.flatMap(({ id }) => endOfNode(ground, id) ?? []);
  const wanted = ground.wanted.map(({ end }) => end);
  const ways = timeWays(given, library, { wanted, found: ends });
  const priced = timed(() => {
    for (const end of wanted) ground.ways.costs(end, ends, 'pence');
  });
  const columns = timed(() => {
    const shop = workshop(ground, byPence);
    return { shop, space: buildSpace(shop).space };
  });
  const { shop, space } = columns.result;
  const judges = { rules: allRules, proofsFound };
  const choice = timed(() =>
    firstChoices(chargedChoices(space, circuitCharges(shop, space, judges), choicesByCost)),
  );
  const gate = timed(() => {
    for (const { choice: each } of choice.result)
      judge(ground, schemeOf(ground, 'timed', partsOf(shop, each.columns)), judges);
  });
  return {
    plan: plan.ms,
    house: house.ms,
    ...ways,
    ...(wanted.length > 0 ? { priced: priced.ms / wanted.length } : {}),
    columns: columns.ms,
    choice: choice.ms,
    ...(choice.result.length > 0 ? { gate: gate.ms / choice.result.length } : {}),
  };
}

/** Between what ends ways are timed. */
interface Ends {
  readonly wanted: readonly WayEnd[];
  readonly found: readonly WayEnd[];
}

/**
 * The net of a house that nobody has asked yet; then a way from a wanted point to one found, by the mean of all wanted but the
 * last; then those from a wanted point to all found, by the mean of all wanted: one alone stands by a long wall or a short one.
 */
function timeWays(given: Job, library: Library, { wanted, found }: Ends): StageTimes {
  const tariff = tariffOf(library);
  const net = timed(() => houseNet({ plan: buildPlan(given), tariff })).ms;
  const [one, other] = found;
  if (one === undefined || wanted.length === 0) return { net };
  const waysOnce = (): HouseWays => {
    const ways = houseWays(buildPlan(structuredClone(given)), tariff);
    // What is weighed once for all ways is no part of one.
    if (other !== undefined) ways.costs(one, [other], 'pence');
    return ways;
  };
  const asked = wanted.length === 1 ? wanted : wanted.slice(0, -1);
  const ways = waysOnce();
  const runs = timed(() => {
    for (const end of asked) ways.costs(end, [one], 'pence');
  }).ms;
  const rows = wanted.map((from) => {
    const others = waysOnce();
    for (const end of wanted) if (end !== from) others.costs(end, [one], 'pence');
    return timed(() => others.costs(from, found, 'pence')).ms;
  });
  return { net, run: runs / asked.length, row: rows.reduce((sum, ms) => sum + ms, 0) / rows.length };
}

function firstChoices(choices: Iterable<ChargedChoice>): readonly ChargedChoice[] {
  const taken: ChargedChoice[] = [];
  for (const choice of choices) {
    taken.push(choice);
    if (taken.length === CHOICES) break;
  }
  return taken;
}

/** The whole search of a job from nothing. */
export function timeSearch(given: Job, library: Library, options: SearchOptions): number {
  const job = structuredClone(given);
  return timed(() => findSchemes(job, library, options)).ms;
}
