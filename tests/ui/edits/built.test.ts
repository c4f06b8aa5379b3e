import { describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { setBuilt, setBuiltWords } from '../../../ui/edits/built.ts';
import { removeScheme } from '../../../ui/edits/schemes.ts';
import { edited, faultsOf } from './random-edits.ts';

const job = demoJob('saltglass-row');

describe('that the work is done', () => {
  it('is said with its scheme, day and words, and taken back whole', () => {
    const done = edited(job, setBuilt('spurs-rcbo', '2026-12-03'), setBuiltWords(' All as drawn. '));
    expect(done.built).toEqual({ scheme: 'spurs-rcbo', on: '2026-12-03', words: 'All as drawn.' });
    expect(faultsOf(done)).toEqual([]);
    expect(edited(done, setBuilt('spurs-rcbo', '2026-12-04')).built).toMatchObject({
      on: '2026-12-04',
      words: 'All as drawn.',
    });
    expect(edited(done, setBuiltWords('  ')).built).toEqual({ scheme: 'spurs-rcbo', on: '2026-12-03' });
    expect(edited(done, setBuilt('spurs-rcbo', null))).toEqual(job);
  });

  it('is not said any more of a scheme that is removed', () => {
    const done = edited(job, setBuilt('spurs-rcbo', '2026-12-03'));
    const scheme = { id: 'spurs-rcbo', name: 'x' };
    expect(faultsOf(edited(done, removeScheme(scheme)))).toEqual([]);
    expect(edited(done, removeScheme(scheme)).built).toBeUndefined();
    expect(edited(done, removeScheme({ id: 'two-on-one', name: 'y' })).built).toEqual(done.built);
  });

  it('leaves nothing said of work that is not done', () => {
    expect(edited(job, setBuiltWords('Something'))).toEqual(job);
  });
});
