import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Worked } from '#engine/connections/worked.ts';
import { circuitOrder } from '#engine/work/circuit-order.ts';
import { referencesOf } from '#engine/work/references.ts';
import { edited } from '../circuit/any-edited-job.ts';
import { demoJob } from '../demo-jobs/demo-estimates.ts';
import { demoSchemes, firstWorked } from './worked-schemes.ts';

/** Every cable of a circuit is told once, as found and as proposed, whatever its shape. */
function holds(worked: Worked): void {
  const references = referencesOf(worked);
  for (const which of ['found', 'proposed'] as const)
    for (const circuitId of worked.circuitIds) {
      const order = circuitOrder(worked, which, circuitId, references);
      const shape = (which === 'found' ? worked.foundShapes : worked.shapes).get(circuitId);
      if (order === null) {
        expect(worked.found.circuits.map(({ id }) => id)).not.toContain(circuitId);
        continue;
      }
      const nodes = new Set(shape?.places.map(({ nodeId }) => nodeId));
      const told = [...order.rows.flatMap(({ by }) => by ?? []), ...order.others].map(({ edgeId }) => edgeId);
      const wired = worked[which].edges.filter(
        ({ kind, from, to }) => kind === 'cable' && (nodes.has(from) || nodes.has(to)),
      );
      expect(told.toSorted()).toEqual(wired.map(({ id }) => id).toSorted());
    }
}

describe('the order of a circuit', () => {
  it.each(demoSchemes())('has every cable of $name once', ({ worked }) => holds(worked));

  it('has every cable of any scheme once', () => {
    fc.assert(
      fc.property(edited, (job) => holds(firstWorked(job))),
      { numRuns: 100 },
    );
  });

  it('goes round a ring from end A to end B, branches after what they hang from', () => {
    const worked = firstWorked(demoJob('saltglass-row'));
    const references = referencesOf(worked);
    const said = (which: 'found' | 'proposed') =>
      circuitOrder(worked, which, 'ring-house', references)?.rows.map(
        ({ mark, depth, by, fuse }) =>
          `${'-'.repeat(depth)}${mark}${by === null ? '' : ` by ${by.mark}`}${fuse ? ` fuse ${fuse.ratingA}` : ''}`,
      );
    expect(said('found')?.slice(-3)).toEqual(['R9 by R8–R9', '-S1 by R9–S1', 'Consumer unit by R9–board B']);
    expect(said('proposed')).toEqual([
      'Consumer unit',
      'R1 by board A–R1',
      '-W1 by K1',
      'R2 by R1–R2',
      'R3 by R2–R3',
      'R4 by R3–R4',
      'R5 by R4–R5',
      'R6 by R5–R6',
      '-W4 by K4',
      '--W4 fuse 3',
      'R7 by R6–R7',
      'R8 by R7–R8',
      '-W3 by K3',
      'J1 by R8–J1',
      '-W2 by K2',
      'R9 by J1–R9',
      '-S1 by R9–S1',
      'Consumer unit by R9–board B',
    ]);
  });
});
