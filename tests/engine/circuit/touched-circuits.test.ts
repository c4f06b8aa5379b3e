import { describe, expect, it } from 'vitest';
import { circuitShapes } from '#engine/circuit/circuit-shapes.ts';
import { territories } from '#engine/circuit/circuit-territory.ts';
import { circuitsWithNewEnds, circuitsWithNewWiring } from '#engine/circuit/touched-circuits.ts';
import type { Job } from '#model/job.ts';
import { jobOf, pointOf, proposedOf, smallRing, wantedOf } from './circuit-job.ts';

const found = smallRing();

function touchedBy(job: Job) {
  const network = proposedOf(job);
  return {
    ends: [...circuitsWithNewEnds(network, circuitShapes(job, network))],
    wiring: [...circuitsWithNewWiring(job, network, territories(job, network))],
  };
}

describe('circuits that a scheme touches', () => {
  it('are none where nothing is done', () => {
    expect(touchedBy(jobOf(found))).toEqual({ ends: [], wiring: [] });
  });

  it('are those at which a new cable ends', () => {
    const job = jobOf({
      points: [...found.points, wantedOf('W1')],
      legs: found.legs,
      connections: [{ id: 'c1', kind: 'spur', from: { point: 'R4' }, to: 'W1' }],
    });
    expect(touchedBy(job)).toEqual({ ends: ['o'], wiring: ['o'] });
  });

  it('change their wiring, without new ends, where a point is only taken out', () => {
    const points = [
      ...found.points.map((point) => (point.id === 'S1' ? { ...point, status: 'removed' as const } : point)),
      pointOf('X1', { circuit: 'o' }),
    ];
    const { ends, wiring } = touchedBy(jobOf({ points, legs: found.legs }));
    expect(ends).toEqual([]);
    expect(wiring).toEqual(['o']);
  });
});
