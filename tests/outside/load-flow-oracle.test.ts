import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { prepareFlow } from '#engine/proof/flow/prepare-flow.ts';
import {
  type NetworkKind,
  networkKinds,
  randomFrom,
  randomNetwork,
} from '../engine/proof/flow/random-network.ts';
import { Circuits, type Comparison, compared, PART, type Trial } from './flow-in-spice.ts';

/** Another seed gives other circuits; the failure message names the one circuit that it is about. */
const SEED = 20_261_125;
const CIRCUITS_OF_A_KIND = 75;
const CIRCUITS_OF_A_RUN = 25;
function trialsOf(kind: NetworkKind | 'open-ring', kindIndex: number): readonly Trial[] {
  return Array.from({ length: CIRCUITS_OF_A_KIND }, (_, i) => {
    const seed = SEED + kindIndex * 1000 + i;
    const random = randomFrom(seed);
    const size = 1 + Math.floor(random() * 30);
    const linkPercent = i % 3 === 0 ? 25 : 0;
    const loaded = randomNetwork({
      seed,
      kind: kind === 'open-ring' ? 'ring-with-trees' : kind,
      size,
      linkPercent,
      isOdd: i % 5 === 0,
    });
    const ringLegs = kind === 'open-ring' ? (prepareFlow(loaded.network).ring?.legs ?? []) : [];
    const openLeg = ringLegs[Math.floor(random() * ringLegs.length)] ?? -1;
    return { ...loaded, openLeg, name: `${kind}, seed ${seed}, size ${size}` };
  });
}

describe('the load flow beside ngspice', () => {
  const done: Comparison[] = [];
  let circuits: Circuits;

  beforeAll(async () => {
    circuits = await Circuits.start();
  });

  afterAll(() => {
    const values = done.reduce((sum, each) => sum + each.compared, 0);
    const worst = Math.max(...done.map((each) => each.worst)) * PART;
    console.info(
      `Load flow beside ngspice: ${done.length} circuits, ${values} values, seed ${SEED}, worst ${worst.toExponential(1)}`,
    );
  });

  it.each([...networkKinds, 'open-ring'] as const)(
    `agrees on every current and volt drop of %s circuits, seed ${SEED}`,
    async (kind) => {
      const trials = trialsOf(kind, [...networkKinds, 'open-ring'].indexOf(kind));
      const comparisons: Comparison[] = [];
      for (let start = 0; start < trials.length; start += CIRCUITS_OF_A_RUN) {
        const run = trials.slice(start, start + CIRCUITS_OF_A_RUN);
        const values = await circuits.solve(run);
        comparisons.push(...run.map((trial, at) => compared(trial, at, values)));
      }
      done.push(...comparisons);
      expect(comparisons).toHaveLength(CIRCUITS_OF_A_KIND);
      expect(comparisons.filter(({ worst }) => worst > 1)).toEqual([]);
      expect(comparisons.reduce((sum, each) => sum + each.compared, 0)).toBeGreaterThan(
        CIRCUITS_OF_A_KIND * 10,
      );
    },
  );
});
