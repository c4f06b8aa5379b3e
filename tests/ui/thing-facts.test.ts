import { describe, expect, it } from 'vitest';
import { demoEstimate } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { thingFacts } from '../../ui/thing-facts.ts';

const [scheme] = demoEstimate('saltglass-row').schemes;
if (scheme === undefined) throw new Error('the demo job has no scheme');
const { worked } = scheme;
const idOf = (label: string): string => worked.job.points.find((point) => point.label === label)?.id ?? '';
const factsOf = (id: string) => Object.fromEntries(thingFacts(worked, id)?.facts ?? []);

describe('what is known of a chosen thing', () => {
  it('says of a point where it is and which circuit feeds it, and where that can be changed', () => {
    expect(thingFacts(worked, idOf('R1'))).toMatchObject({ kind: 'single socket-outlet', step: 'as-found' });
    expect(factsOf(idOf('R1'))).toMatchObject({ Circuit: 'Socket ring, whole house' });
    expect(factsOf(idOf('R1')).Where).toMatch(/^Hall, \d+ mm above the floor$/);
  });

  it('says of a wanted point what it is to feed', () => {
    expect(thingFacts(worked, idOf('W4'))).toMatchObject({ kind: 'fused connection unit', step: 'wanted' });
    expect(factsOf(idOf('W1'))).not.toHaveProperty('Circuit');
  });

  it('says of a leg its cable and its length', () => {
    expect(factsOf(worked.job.legs[0]?.id ?? '')).toMatchObject({ Cable: '2.5 / 1.5 mm²' });
  });

  it('says of a connection how much new cable it takes, all runs together', () => {
    for (const { id } of scheme.worked.scheme?.connections ?? []) {
      const runs = scheme.runs.filter((run) => run.connectionId === id);
      const totalMm = runs.reduce((sum, run) => sum + (run.lengthMm ?? 0), 0);
      expect(factsOf(id)['New cable']).toBe(
        `${(totalMm / 1000).toFixed(2)} m in ${runs.length} ${runs.length === 1 ? 'run' : 'runs'}`,
      );
    }
  });

  it('says of new cable what it cuts and opens on its way', () => {
    const w2 = scheme.runs.find(({ to }) => to.pointId === idOf('W2'));
    expect(factsOf(w2?.id ?? '')['On its way']).toBe('2 joists drilled, 2 boards up');
    const w4 = scheme.runs.find(({ to }) => to.pointId === idOf('W4'));
    expect(factsOf(w4?.id ?? '')).not.toHaveProperty('On its way');
  });

  it('knows boards and circuits, and nothing of what is not there', () => {
    expect(thingFacts(worked, worked.job.boards[0]?.id ?? '')?.kind).toBe('board');
    expect(factsOf(worked.job.circuits[0]?.id ?? '')['Protective device']).toMatch(/ A$/);
    expect(thingFacts(worked, 'gone')).toBeNull();
  });
});
