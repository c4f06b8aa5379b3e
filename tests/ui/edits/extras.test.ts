import { describe, expect, it } from 'vitest';
import { readJob } from '#model/read-job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { addExtra, removeExtra, renameExtra, setExtra } from '../../../ui/edits/extras.ts';
import { removePoint } from '../../../ui/edits/remove-things.ts';
import { edited } from './random-edits.ts';

const job = demoJob('saltglass-row');
const extra = { id: 'x1', words: 'Double the rotten joist', typicalMin: 60 };
const withIt = edited(job, addExtra(extra));
const only = (of: typeof job) => of.extras?.[0];

describe('work that is not on the drawing', () => {
  it('is added, changed and removed, and leaves nothing behind', () => {
    expect(withIt.extras).toEqual([extra]);
    const renamed = edited(withIt, renameExtra('x1', '  New joist beside the old one '));
    expect(only(renamed)?.words).toBe('New joist beside the old one');
    expect(edited(renamed, removeExtra(extra))).toEqual(job);
  });

  it('keeps its words where somebody empties them', () => {
    expect(edited(withIt, renameExtra('x1', '  '))).toEqual(withIt);
  });

  it('keeps its three figures in order, and has no ends without the figure between them', () => {
    const three = edited(withIt, setExtra('x1', { lowMin: 30, highMin: 90 }));
    expect(only(three)).toMatchObject({ lowMin: 30, typicalMin: 60, highMin: 90 });
    expect(only(edited(three, setExtra('x1', { typicalMin: 120 })))).toMatchObject({
      lowMin: 30,
      highMin: 120,
    });
    expect(only(edited(three, setExtra('x1', { typicalMin: 20 })))).toMatchObject({
      lowMin: 20,
      highMin: 90,
    });
    expect(only(edited(three, setExtra('x1', { typicalMin: null })))).toEqual({
      id: 'x1',
      words: extra.words,
    });
  });

  it('stays to be done where the thing it was at is removed', () => {
    const [point] = job.points;
    if (point === undefined) throw new Error('The job has points.');
    const at = edited(withIt, setExtra('x1', { at: point.id }));
    expect(only(at)?.at).toBe(point.id);
    const without = edited(at, removePoint(point));
    expect(only(without)).toEqual(extra);
    expect(readJob(without).ok).toBe(true);
  });

  it.each([
    [{ ...extra, words: '' }, 'extras[0].words'],
    [{ ...extra, typicalMin: -1 }, 'extras[0].typicalMin'],
    [{ ...extra, materialsPence: 12.5 }, 'extras[0].materialsPence'],
    [{ ...extra, at: 'nowhere' }, 'extras[0].at'],
    [{ ...extra, pence: 5 }, 'extras[0].pence'],
  ])('is refused as %j, naming the place and the remedy', (wrong, path) => {
    const read = readJob({ ...job, extras: [wrong] });
    expect(read.ok ? [] : read.faults.map((fault) => fault.path)).toEqual([path]);
    expect(read.ok ? '' : (read.faults[0]?.remedy ?? '')).not.toBe('');
  });
});
