import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { demoJob, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { newJob } from '../../ui/edits/new-job.ts';
import { type Step, steps } from '../../ui/job-view.ts';
import { movablePoints } from '../../ui/movable-points.ts';
import { type StepState, stepStates } from '../../ui/steps-done.ts';

const states = (job: Job, library?: Library): Readonly<Record<Step, StepState>> => {
  const result =
    library === undefined ? estimateOf(job) : estimate(job, library, { date: '2026-11-25', revision: 1 });
  return stepStates(job, result.schemes, result.schemes[0]?.survey ?? result.asFound.survey);
};
const done = (job: Job, library?: Library): string[] => {
  const of = states(job, library);
  return steps.filter((step) => of[step].mark === 'done' || of[step].mark === 'in-part');
};
const demo = demoJob('saltglass-row');

describe('how far a job has got', () => {
  it('is nowhere for a new job', () => {
    const start = { reference: '', title: '' };
    expect(done(newJob({ ...start, terms: { labour: 'typical', vat: 'standard' } }))).toEqual([]);
  });

  it('is as far as the price for the demo jobs, and never claims that papers went out', () => {
    for (const name of ['saltglass-row', 'fernlow-close', 'saltglass-row-quoting'] as const)
      expect(done(demoJob(name))).toEqual(['as-found', 'wanted', 'ways', 'kit', 'price']);
    expect(states(demo).papers).toEqual({ mark: 'ready', lacks: '' });
  });

  it('says of what is open that the step is done in part, never that nothing lacks', () => {
    expect(states(demo)['as-found']).toMatchObject({ mark: 'in-part' });
    expect(states(demo)['as-found'].lacks).toMatch(/^\d+ things? not known$/);
    const { schemes } = estimateOf(demo);
    const ways = schemes.filter(({ complies }) => complies !== 'no');
    const decides = ways.map(({ findings }) => findings.filter(({ outcome }) => outcome === 'decide').length);
    expect(states(demo).ways.mark).toBe('in-part');
    expect(states(demo).ways.lacks).toContain(`${Math.min(...decides)} to decide`);
    expect(states(demo).wanted).toEqual({ mark: 'done', lacks: '' });
  });

  it('says of the kit what is open of the scheme that is shown', () => {
    const job = demoJob('saltglass-row-quoting');
    const { schemes } = estimateOf(job);
    const told = schemes.map(({ id }) => stepStates(job, schemes, [], id).kit.lacks);
    expect(told).toEqual(schemes.map((one) => stepStates(job, [one], [], one.id).kit.lacks));
    expect(new Set(told).size).toBeGreaterThan(1);
  });

  it('says of the kit what nobody has looked at, until it is bought for either way', () => {
    const both = (question: string) => ({ question, outcomes: ['deep', 'shallow'] });
    expect(states(demo).kit).toEqual({ mark: 'in-part', lacks: '2 boxes not looked at' });
    const one = { ...demo, packFor: [both('box/r1-hallway')] };
    expect(states(one).kit).toEqual({ mark: 'in-part', lacks: '1 box not looked at' });
    const all = { ...demo, packFor: [both('box/r1-hallway'), both('box/r6-kitchen')] };
    expect(states(all).kit).toEqual({ mark: 'done', lacks: '' });
    const deepOnly = { ...demo, packFor: [{ question: 'box/r1-hallway', outcomes: ['deep'] }] };
    expect(states(deepOnly).kit).toEqual(states(demo).kit);
  });

  it('stops where nothing tells how what was found hangs together', () => {
    const bare = produce(demo, (job) => {
      job.legs = [];
      job.answers = [];
      job.schemes = [];
    });
    expect(done(bare)).toEqual([]);
  });

  it('stops at a wanted point without a place', () => {
    const unplaced = produce(demo, (job) => {
      const point = job.points.find(({ status }) => status === 'wanted');
      if (point !== undefined) delete point.place;
    });
    expect(done(unplaced)).toEqual(['as-found']);
    expect(states(unplaced).wanted).toEqual({ mark: 'to-do', lacks: '1 point not placed' });
  });

  it('stops at schemes that all fail', () => {
    const failing = estimateOf(demo).schemes.filter(({ complies }) => complies === 'no');
    const bad = produce(demo, (job) => {
      job.schemes = job.schemes.filter(({ id }) => failing.some((scheme) => scheme.id === id));
    });
    expect(bad.schemes.length).toBeGreaterThan(0);
    expect(done(bad)).toEqual(['as-found', 'wanted']);
    expect(states(bad).ways).toEqual({ mark: 'to-do', lacks: 'every scheme fails a check' });
    expect(states(bad).kit.mark).toBe('to-do');
    expect(states(bad).papers).toEqual({ mark: 'waits', lacks: 'Ways is open still' });
  });

  it('stops at schemes that leave a wanted point unconnected', () => {
    const cut = produce(demo, (job) => {
      for (const scheme of job.schemes) scheme.connections.splice(0, 1);
    });
    expect(done(cut)).toEqual(['as-found', 'wanted']);
  });

  it('has a kit but no price where the price list knows nothing', () => {
    const library = produce(demoLibrary(), ({ prices }) => {
      prices.items = [];
    });
    expect(done(demo, library)).toEqual(['as-found', 'wanted', 'ways', 'kit']);
    expect(states(demo, library).price.lacks).toMatch(/^\d+ lines without a price$/);
  });
});

describe('the points that may be dragged', () => {
  const labels = (step: Parameters<typeof movablePoints>[0]['step']): string[] =>
    demo.points.filter(({ id }) => movablePoints({ job: demo, step }).has(id)).map(({ label }) => label);

  it('are those found while finding, those wanted while planning, none after', () => {
    expect(labels('as-found')).toContain('R1');
    expect(labels('as-found')).not.toContain('W1');
    expect(labels('wanted')).toEqual(['W1', 'W2', 'W3', 'W4']);
    expect(labels('ways')).toEqual(labels('wanted'));
    expect(labels('kit')).toEqual([]);
  });
});
