import { describe, expect, it } from 'vitest';
import type { Network } from '#engine/circuit/network.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { bruteTrial, failsAnew, judgedHouse, leastFound, library } from './brute-trial.ts';
import { type VariedHouse, variedHouse } from './varied-house.ts';

/**
 * A radial whose first point, in a single box that is full with a third cable, lies half a metre from where W1 goes: to open the leg
 * from the board to it is cheaper than a further cable at the board.
 */
const house = variedHouse(85_978_797, 2);

const openings = (connections: readonly Connection[]) =>
  connections.flatMap((each) => (each.kind === 'ring-extension' ? [each] : []));

/** The same with P4 and the leg to it, which was followed, behind a fused unit where P3 was. */
function behindUnit({ job, ...more }: VariedHouse): VariedHouse {
  const fused: Job = {
    ...job,
    points: job.points.map((point) =>
      point.id === 'p3' ? { ...point, kind: 'fused-unit', unit: { fuseA: 13, switched: true } } : point,
    ),
    legs: job.legs.map((leg) =>
      leg.id === 'l4' ? { ...leg, from: { point: 'p3', side: 'load' as const } } : leg,
    ),
  };
  return { job: fused, ...more };
}

describe('a leg of a radial that is opened', () => {
  it('is found where it is the cheapest, as nothing that can be written down is cheaper', () => {
    expect(judgedHouse(house).faults).toEqual([]);
    const trial = bruteTrial(house);
    const best = leastFound(trial)?.scheme.connections ?? [];
    expect(best.map(({ kind }) => kind).toSorted()).toEqual(['ring-extension', 'spur']);
    const [{ leg, between, through } = {}] = openings(best);
    expect({ leg, between, through }).toEqual({
      leg: 'l1',
      between: [{ origin: 'c' }, { point: 'p1' }],
      through: ['w1'],
    });
  }, 60_000);

  it('adds no cable at either end of it, where a branch adds one', () => {
    const found = findSchemes(house.job, library, { most: 5 });
    const [best] = found.schemes;
    if (best === undefined) throw new Error('nothing found');
    const { worked } = best.estimate;
    const cablesAt = ({ edges }: Network, nodeId: string): number =>
      edges.filter(({ kind, from, to }) => kind === 'cable' && [from, to].includes(nodeId)).length;
    const [opened] = openings(best.scheme.connections);
    expect(opened?.leg).toBe('l1');
    for (const nodeId of ['c', 'p1'])
      expect(cablesAt(worked.proposed, nodeId), nodeId).toBe(cablesAt(worked.found, nodeId));
    expect(failsAnew(house, found)).toEqual([]);
  });

  it('is none behind a fused unit, where no joint is made in a leg either', () => {
    const of = ({ job, allowAssumedLegs }: VariedHouse) =>
      findSchemes(job, library, { most: 12, allowAssumedLegs, kinds: false }).schemes.flatMap(({ scheme }) =>
        JSON.stringify(scheme.connections),
      );
    expect(of(house).some((words) => words.includes('"l4"'))).toBe(true);
    const fused = of(behindUnit(house));
    expect(fused.length).toBeGreaterThan(0);
    expect(fused.filter((words) => /"(l4|p4)"/.test(words))).toEqual([]);
  });
});
