import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { readJob } from '#model/read-job.ts';
import { demoEstimate, demoJob, demoNames, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { setLegWay } from '../../../ui/edits/leg-ways.ts';
import { begin, cornerAt, found, ledOn, leg } from './draw.ts';

describe('a way that is drawn by hand', () => {
  const start = begin(leg('leg-r03r04'));
  const [x, y] = start.to.at;

  it('grows by its corners, and lies where it was drawn', () => {
    const down = ledOn(start, [{ do: 'move', by: 'down' }]);
    const along = cornerAt(down, [x - 1500, y]);
    expect(down.drawnMm).toBeGreaterThan(start.drawnMm);
    expect(along.drawnMm).toBeGreaterThan(down.drawnMm + 1000);
    const pinned = along.segments.filter(({ certainty }) => certainty === 'pinned');
    expect(pinned.reduce((sum, { lengthMm }) => sum + lengthMm, 0)).toBeCloseTo(along.drawnMm, 3);
    expect(pinned.map(({ direction }) => direction)).toEqual(['vertical', 'horizontal']);
    expect(along.segments.at(-1)?.to.at).toEqual(start.to.at);
  });

  it('takes back what was put down last, and all of it; that can be brought back', () => {
    const down = ledOn(start, [{ do: 'move', by: 'down' }]);
    const along = cornerAt(down, [x - 1500, y]);
    expect(ledOn(along, [{ do: 'take-back' }]).steps).toEqual(down.steps);
    const none = ledOn(along, [{ do: 'drop' }]);
    expect(none.via).toEqual([]);
    expect(ledOn(none, [{ do: 'bring-back' }]).via).toEqual(along.via);
    expect(ledOn(start, [{ do: 'take-back' }]).via).toEqual([]);
  });

  it('goes to another height of the wall plumb, and not beyond floor and ceiling', () => {
    const higher = ledOn(start, [{ do: 'height', heightMm: 1200 }]);
    expect(higher.via).toMatchObject([{ heightMm: 1200, wall: start.from.onWall?.wallId }]);
    expect(higher.here.at[0]).toBeCloseTo(start.from.at[0], 0);
    for (const heightMm of [-50, 9000]) expect(ledOn(start, [{ do: 'height', heightMm }]).via).toEqual([]);
  });

  it('written down runs where it was drawn', () => {
    const way = cornerAt(ledOn(start, [{ do: 'move', by: 'down' }]), [x, y]);
    const job = demoJob('saltglass-row');
    const { change } = setLegWay('leg-r03r04', 'it', { via: way.via, certainty: 'seen' });
    const changed = produce(job, (draft) => change(draft));
    expect(readJob(changed)).toMatchObject({ ok: true });
    const run = estimateOf(changed).asFound.worked.foundRuns.get('leg-r03r04');
    expect(run?.segments.map(({ from, to, medium }) => [from.at, to.at, medium])).toEqual(
      way.segments.map(({ from, to, medium }) => [from.at, to.at, medium]),
    );
  });

  it.each(demoNames)('begins at every cable whose ends are placed, in %s', (name) => {
    const { asFound, schemes } = demoEstimate(name);
    for (const { id } of asFound.worked.job.legs) {
      const run = asFound.worked.foundRuns.get(id);
      if (run?.from.position != null && run.to.position !== null)
        expect(begin(leg(id), asFound.worked).here).toEqual(run.from.position);
    }
    for (const { worked } of schemes)
      for (const { id, from, to } of worked.runs) {
        if (from.position === null || to.position === null) continue;
        const target = { what: 'run', schemeId: worked.scheme?.id ?? '', runId: id } as const;
        expect(begin(target, worked).via).toEqual([]);
      }
  });

  it('is not there for a cable that is gone', () => {
    expect(() => begin(leg('no-such-leg'), found)).toThrow();
  });
});
