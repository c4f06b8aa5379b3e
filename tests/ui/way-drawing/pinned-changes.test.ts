import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoEstimate, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { pinRun } from '../../../ui/edits/pin-run.ts';
import { waypointAt } from '../../../ui/way-drawing/levels.ts';
import { pinnedChanges } from '../../../ui/way-drawing/pinned-changes.ts';

describe('what a pinned way changes', () => {
  const before = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
  const run = before.runs.find(({ connectionId }) => connectionId === 'c1-w3-spur');

  it('is told in metres and money, and by what checks say then and say no more', () => {
    if (run?.from.position == null) throw new Error('There is no such cable.');
    const { position } = run.from;
    // Level across the room at the height of the outlet: no zone of any accessory.
    const astray = { ...position, heightMm: 900, levelMm: position.levelMm + 600 };
    const at = { schemeId: 'spurs-rcbo', connectionId: run.connectionId ?? '' };
    const edit = pinRun(before.worked, at, { run, name: 'it', via: [waypointAt(astray)] });
    const after = schemeOf(
      estimateOf(produce(before.worked.job, (draft) => edit.change(draft))),
      'spurs-rcbo',
    );
    const changes = pinnedChanges(before, after, run.id);
    expect(changes.words).toMatch(/^\d+\.\d\d m of cable in place of \d+\.\d\d m; .*£[\d,]+\.\d\d\)\.$/);
    expect(pinnedChanges(after, before, run.id)).toMatchObject({
      worse: changes.better,
      better: changes.worse,
    });
  });

  it('is nothing where nothing changes', () => {
    expect(pinnedChanges(before, before, run?.id ?? '')).toMatchObject({ worse: [], better: [] });
    expect(pinnedChanges(before, before, run?.id ?? '').words).toContain('the price stays');
  });
});
