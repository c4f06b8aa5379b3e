import { describe, expect, it } from 'vitest';
import { jobSteps } from '#engine/quotation/moved/job-steps.ts';
import { stateTag } from '#engine/state-tag.ts';
import type { WorkTask } from '#engine/work/task-list.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { jobDifferences } from '../../../ui/differences/job-differences.ts';
import { copyScheme, removeScheme } from '../../../ui/edits/schemes.ts';
import { putInstrument, removeInstrument, setNotTested, tickTask } from '../../../ui/edits/site-work.ts';
import type { JobEdit } from '../../../ui/job-events.ts';
import { mergeJobs } from '../../../ui/merging/merge-jobs.ts';
import { edited, faultsOf } from './random-edits.ts';

const job = demoJob('saltglass-row');
const scheme = 'spurs-rcbo';
const task = (id: string, hold: string | null = null): WorkTask => ({
  id,
  words: `Words of ${id}`,
  amount: hold === null ? { quantity: 2, highQuantity: 2, unit: 'each', typicalMin: 5 } : null,
  marks: [],
  hold,
});
const lift = tickTask(scheme, task('lift-board'), true);
const dead = (is: boolean | null): JobEdit => tickTask(scheme, task('prove-dead', 'Dead? Else stop.'), is);
const merged = (here: JobEdit, there: JobEdit) => mergeJobs(job, edited(job, here), edited(job, there));

describe('a tick', () => {
  it('is kept with the amount there was, a hold with what was found, and taken away again', () => {
    const ticked = edited(job, lift, dead(false));
    expect(ticked.done).toEqual([
      { entry: 'spurs-rcbo/lift-board', quantity: 2 },
      { entry: 'spurs-rcbo/prove-dead', isSo: false },
    ]);
    expect(faultsOf(ticked)).toEqual([]);
    expect(edited(ticked, dead(true)).done?.[1]).toMatchObject({ isSo: true });
    expect(edited(ticked, dead(null), tickTask(scheme, task('lift-board'), false))).toEqual(job);
  });

  it('moves no state of the papers and nothing that was agreed', () => {
    const ticked = edited(job, lift);
    expect(stateTag(ticked)).toBe(stateTag(job));
    expect(jobSteps(job, ticked)).toEqual([]);
  });

  it('goes with its scheme, and no copy of the scheme has it', () => {
    const ticked = edited(job, lift);
    expect(edited(ticked, removeScheme({ id: scheme, name: 'Spurs' })).done).toBeUndefined();
    const [found] = job.schemes.filter(({ id }) => id === scheme);
    if (found === undefined) throw new Error('no scheme');
    const { edit, schemeId } = copyScheme(found);
    expect(edited(ticked, edit).done?.filter(({ entry }) => entry.startsWith(schemeId))).toEqual([]);
  });

  it('of two people are both kept; of one hold answered otherwise by two, one is asked for', () => {
    const both = merged(lift, dead(true));
    expect(both.clashes).toEqual([]);
    expect(both.merged.done?.map(({ entry }) => entry).toSorted()).toEqual([
      'spurs-rcbo/lift-board',
      'spurs-rcbo/prove-dead',
    ]);
    expect(merged(dead(true), dead(false)).clashes).toHaveLength(1);
  });
});

describe('with what it was tested', () => {
  const tester = { id: 'i1', what: 'Multifunction tester' };

  it('is kept by instrument, changed in its place, and gone with the last of it', () => {
    const told = edited(
      job,
      putInstrument(tester),
      putInstrument({ id: 'i2', what: 'RCD tester' }),
      setNotTested('R3: boxed in'),
    );
    const numbered = edited(told, putInstrument({ ...tester, serial: 'A-4711' }));
    expect(numbered.testing).toEqual({
      instruments: [
        { ...tester, serial: 'A-4711' },
        { id: 'i2', what: 'RCD tester' },
      ],
      notTested: 'R3: boxed in',
    });
    expect(faultsOf(numbered)).toEqual([]);
    const none = edited(
      numbered,
      removeInstrument(tester),
      removeInstrument({ id: 'i2', what: '' }),
      setNotTested(' \n'),
    );
    expect(none).toEqual(job);
    expect(jobSteps(job, numbered)).toEqual([]);
  });

  it('of two people is put together, and told in words', () => {
    const both = merged(putInstrument(tester), setNotTested('R3'));
    expect(both.clashes).toEqual([]);
    expect(both.merged.testing).toEqual({ instruments: [tester], notTested: 'R3' });
    const told = jobDifferences(edited(job, setNotTested('R3')), job, job);
    expect(told).toMatchObject([
      { thing: 'What it was tested with', field: 'what could not be tested', mine: 'R3' },
    ]);
    const instrument = jobDifferences(edited(job, putInstrument(tester)), job, job);
    expect(JSON.stringify(instrument)).toContain('Multifunction tester');
  });
});
