import loadHighs from 'highs';
import { cutPlan } from '#engine/price/buying/cut-plan.ts';
import { randomCutList } from '#tests/engine/price/buying/random-cut-list.ts';
import { cutListShape, cuttingModel, leastCutByHighs } from '#tests/outside/cutting-in-highs.ts';
import { medianOf, timed } from '../growth.ts';
import { byTurns, type FigureGroup } from '../measuring.ts';

/** Lists in a round; the shapes come round again after sixty. */
const LISTS = 60;
const SEED = 1;
const STEPS = 5_000_000;

const listAt = (i: number) => randomCutList(SEED + i, cutListShape(i));

/** The cheapest purchase for a cut list beside an integer programming solver; null where an optimum differs or is not proved. */
export const buyFigures: FigureGroup = {
  name: 'buying',
  measure: async ({ rounds }) => {
    const highs = await loadHighs();
    const oursOf = (i: number) => {
      const { pieces, offers, vanMm } = listAt(i);
      return timed(() => cutPlan(pieces, offers, vanMm, STEPS));
    };
    const theirsOf = (i: number) => {
      const model = cuttingModel(listAt(i));
      return timed(() => leastCutByHighs(highs, model));
    };
    for (let i = 0; i < LISTS; i += 1) oursOf(i);
    const pence = new Map<number, { ours?: number; theirs?: number }>();
    const keep = (turn: number, own: { ours?: number; theirs?: number }): void => {
      pence.set(turn, { ...pence.get(turn), ...own });
    };
    // List by list, so that both have the same ones within moments of each other.
    const { ours, theirs } = await byTurns(LISTS * Math.min(rounds, 2), {
      ours: (turn) => {
        const { ms, result } = oursOf(turn);
        const { millipence, boundMillipence } = result;
        keep(turn, { ours: boundMillipence === millipence ? millipence / 1000 : Number.NaN });
        return ms;
      },
      theirs: (turn) => {
        const { ms, result } = theirsOf(turn);
        keep(turn, { theirs: result });
        return ms;
      },
    });
    const isEqual = [...pence.values()].every((each) => each.ours === each.theirs);
    return { buyVsHighs: isEqual ? medianOf(theirs) / medianOf(ours) : null };
  },
};
