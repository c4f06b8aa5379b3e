import { prepareFlow } from '#engine/proof/flow/prepare-flow.ts';
import { newFlowResult, solveFlow } from '#engine/proof/flow/solve-flow.ts';
import { randomNetwork } from '#tests/engine/proof/flow/random-network.ts';
import { Circuits, compared, type Trial } from '#tests/outside/flow-in-spice.ts';
import { medianOf, timed, timedLater } from '../growth.ts';
import { byTurns, type FigureGroup } from '../measuring.ts';

/** Rings with spurs and branches, from a few points to many. */
const CIRCUITS = 25;
const LEAST_NODES = 10;
/** Ours is over before a clock ticks: all circuits are solved so often in a round. */
const TIMES = 200;

const circuitsOf = (round: number): readonly Trial[] =>
  Array.from({ length: CIRCUITS }, (_, i) => {
    const [seed, size] = [round * CIRCUITS + i + 1, LEAST_NODES + 2 * i];
    const network = randomNetwork({ seed, kind: 'ring-with-trees', size, linkPercent: 0, isOdd: false });
    return { ...network, openLeg: -1, name: `seed ${seed}` };
  });

function solveAll(trials: readonly Trial[]): void {
  for (const { network, loadA } of trials) {
    const plan = prepareFlow(network);
    solveFlow(plan, loadA, newFlowResult(plan));
  }
}

/** The load flow beside a circuit simulator, from the wiring to currents and drops; null where the two differ. */
export const networkFigures: FigureGroup = {
  name: 'network',
  measure: async ({ rounds }) => {
    const circuits = await Circuits.start();
    let worst = 0;
    const simulated = async (round: number): Promise<number> => {
      const trials = circuitsOf(round);
      const { ms, result } = await timedLater(() => circuits.solve(trials));
      worst = Math.max(worst, ...trials.map((trial, at) => compared(trial, at, result).worst));
      return ms;
    };
    const solved = (round: number): number => {
      const trials = circuitsOf(round);
      const work = (): void => {
        for (let i = 0; i < TIMES; i += 1) solveAll(trials);
      };
      return timed(work).ms / TIMES;
    };
    await simulated(rounds);
    solved(rounds);
    const { ours, theirs } = await byTurns(rounds, { ours: solved, theirs: simulated });
    return { networkSolveVsNgspice: worst <= 1 ? medianOf(theirs) / medianOf(ours) : null };
  },
};
