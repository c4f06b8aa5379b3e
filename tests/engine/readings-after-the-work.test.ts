import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { comparedReadings } from '#engine/proof/compared-readings.ts';
import { readingsTaken } from '#engine/proof/readings/readings-taken.ts';
import type { Estimate } from '#engine/schemes/estimate-result.ts';
import type { Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { demoJob, demoNames, estimateOf } from './demo-jobs/demo-estimates.ts';

const kinds = [
  'loop',
  'insulation',
  'zs',
  'ze',
  'pfc',
  'rcd',
  'polarity',
  'rcd-button',
  'afdd-button',
  'spd-indicator',
] as const;
type Kind = Reading['kind'];

/** A reading of a kind without what is common to all, at a place and of a circuit of the job, with any figures. */
const ownOf = (kind: Kind, at: string): fc.Arbitrary<object> =>
  ({
    loop: fc.record({
      loop: fc.constantFrom('L-N', 'L-cpc', 'L', 'N', 'cpc'),
      from: fc.constantFrom('end-to-end', 'A', 'B', 'crossed'),
      at: fc.constant(at),
      ohm: fc.constantFrom(0, 0.3, 0.5, 2, 99),
    }),
    insulation: fc.record({
      between: fc.constantFrom('L-N', 'LN-cpc'),
      megohm: fc.constantFrom(0, 0.5, 200),
      testV: fc.constantFrom(250, 500),
    }),
    zs: fc.record({ at: fc.constant(at), ohm: fc.constantFrom(0.1, 0.6, 3, 900) }),
    ze: fc.record({ ohm: fc.constantFrom(0.05, 0.2, 3, 900) }),
    pfc: fc.record({ kA: fc.constantFrom(0.1, 1, 9, 40) }),
    rcd: fc.record({ mA: fc.constant(30), ms: fc.constantFrom(20, 400) }),
    polarity: fc.record({ at: fc.constant(at), ok: fc.boolean() }),
    'rcd-button': fc.record({ ok: fc.boolean() }),
    'afdd-button': fc.record({ ok: fc.boolean() }),
    'spd-indicator': fc.record({ ok: fc.boolean() }),
  })[kind];

/** Readings of one kind taken after the work, a few at any points of any circuits. */
const afterOf = (job: Job, kind: Kind): fc.Arbitrary<readonly Reading[]> =>
  fc
    .array(
      fc.constantFrom(...job.points.map(({ id }) => id)).chain((at) =>
        fc.record({
          circuit: fc.constantFrom(...job.circuits.map(({ id }) => id)),
          takenOn: fc.constantFrom('2020-01-01', '2027-01-01'),
          own: ownOf(kind, at),
        }),
      ),
      { minLength: 1, maxLength: 4 },
    )
    .map((taken) =>
      taken.map(
        ({ own, ...rest }, index): Reading =>
          ({ id: `after-${kind}-${index}`, kind, phase: 'after', ...rest, ...own }) as Reading,
      ),
    );

const withReadings = (job: Job, readings: readonly Reading[]): Job => ({
  ...job,
  readings: [...job.readings, ...readings],
});

/** A job of which nobody has measured anything: what is read first would decide. */
function unmeasured(job: Job): Job {
  const { zeOhm: _ze, pfcKA: _pfc, ...supply } = job.supply;
  return {
    ...job,
    readings: [],
    supply,
    boards: job.boards.map(({ zdbOhm: _zdb, ...board }) => board),
  };
}

/** All that an estimate says, without the job that it was made of. */
const said = ({ asFound, schemes, ...rest }: Estimate): object => ({
  ...rest,
  asFound: { ...asFound, worked: asFound.worked.things },
  schemes: schemes.map((scheme) => ({ ...scheme, worked: scheme.worked.things })),
});

const live = (job: Job): object =>
  said(estimate(job, demoLibrary(), { date: '2026-11-25', revision: 1 }, { depth: 'live' }));

describe.each(demoNames)('readings taken after the work of %s', (name) => {
  const asRecorded = demoJob(name);
  const jobs = { asRecorded, unmeasured: unmeasured(asRecorded) };

  it.each(kinds)('of the kind %s move no price, no check and nothing that is expected', (kind) => {
    for (const job of Object.values(jobs)) {
      const before = live(job);
      fc.assert(
        fc.property(afterOf(job, kind), (readings) => {
          expect(live(withReadings(job, readings))).toEqual(before);
        }),
        { numRuns: 4 },
      );
    }
  });

  it('move nothing that the survey asks or is worth', () => {
    const job = jobs.unmeasured;
    const before = said(estimateOf(job));
    const any = fc.tuple(...kinds.map((kind) => afterOf(job, kind))).map((each) => each.flat());
    fc.assert(
      fc.property(any, (readings) => {
        expect(said(estimateOf(withReadings(job, readings)))).toEqual(before);
      }),
      { numRuns: 2 },
    );
  });

  it('are seen where measured is held against expected, and only there', () => {
    const { schemes } = estimateOf(asRecorded);
    const proof = schemes
      .flatMap((scheme) => scheme.proof)
      .find(({ expected }) => expected.points.length > 0);
    const point = proof?.expected.points[0]?.point ?? 'none';
    const after = { id: 'after', circuit: proof?.circuit ?? 'none', phase: 'after', kind: 'zs' } as const;
    const job = withReadings(asRecorded, [{ ...after, at: point, ohm: 1.23 }]);
    const zsOf = (phase: Reading['phase'], of: Job) =>
      (proof === undefined ? [] : comparedReadings(proof, readingsTaken(of), phase)).find(
        ({ group, subject }) => group === 'zs' && subject === point,
      );
    expect(zsOf('after', job)?.measuredOhm).not.toBeNull();
    expect(zsOf('after', asRecorded)?.measuredOhm).toBeNull();
    expect(zsOf('before', job)).toEqual(zsOf('before', asRecorded));
  });
});

describe('the same readings taken before the work', () => {
  it('do move what is worked out: the test above would see it', () => {
    const job = unmeasured(demoJob('saltglass-row'));
    const ze: Reading = { id: 'ze', kind: 'ze', phase: 'before', ohm: 0.24 };
    expect(live(withReadings(job, [ze]))).not.toEqual(live(job));
  });
});
