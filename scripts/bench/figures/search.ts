import loadHighs from 'highs';
import { choicesByCost, leastCost } from '#engine/schemes/search/cheapest-choices.ts';
import type { SearchSpace } from '#engine/schemes/search/search-space.ts';
import { houseOf } from '#tests/houses/house-of.ts';
import { type Highs, leastByHighs, spaceOfHouse } from '#tests/outside/partition-in-highs.ts';
import { medianOf, timed } from '../growth.ts';
import { byTurns, type FigureGroup } from '../measuring.ts';

const ROOMS = 8;
const OUTLETS = 16;
/** Ours is over before a clock ticks: every space is searched so often in a round. */
const TIMES = 20;

/** How many times as fast ours is at so many wanted points; null where an optimum differs. */
async function ratioAt(highs: Highs, wanted: number, rounds: number): Promise<number | null> {
  const spaces = Array.from(
    { length: rounds },
    (_, i): SearchSpace =>
      spaceOfHouse({
        job: houseOf({ seed: i + 1, rooms: ROOMS, outlets: OUTLETS, wanted }),
        allowAssumedLegs: [],
      }),
  );
  const costs: { ours: number | null; theirs: number | null }[] = spaces.map(() => ({
    ours: null,
    theirs: null,
  }));
  const spaceIn = (round: number): SearchSpace => spaces[round] as SearchSpace;
  const best = (space: SearchSpace): number | null => {
    const first = choicesByCost(space).next().value;
    return first ? first.cost : null;
  };
  best(spaceIn(0));
  const { ours, theirs } = await byTurns(rounds, {
    ours: (round) => {
      const { ms, result } = timed(() => {
        let cost: number | null = null;
        for (let i = 0; i < TIMES; i += 1) cost = best(spaceIn(round));
        return cost;
      });
      costs[round] = { ours: result, theirs: costs[round]?.theirs ?? null };
      return ms / TIMES;
    },
    theirs: (round) => {
      const { ms, result } = timed(() => leastByHighs(highs, spaceIn(round)));
      costs[round] = { ours: costs[round]?.ours ?? null, theirs: result };
      return ms;
    },
  });
  const isEqual = costs.every(
    (cost, i) => cost.ours === cost.theirs && leastCost(spaceIn(i)) === cost.theirs,
  );
  return isEqual ? medianOf(theirs) / medianOf(ours) : null;
}

/** The search for the cheapest choice beside an integer programming solver on the same columns. */
export const searchFigures: FigureGroup = {
  name: 'search',
  measure: async ({ rounds }) => {
    const highs = await loadHighs();
    return {
      searchVsHighs: await ratioAt(highs, 6, rounds),
      searchVsHighsTen: await ratioAt(highs, 10, Math.min(rounds, MOST_OF_TEN)),
    };
  },
};

/** The solver takes seconds over each house of ten points. */
const MOST_OF_TEN = 3;
