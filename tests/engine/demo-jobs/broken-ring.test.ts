import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { demoJob, estimateOf, schemeOf } from './demo-estimates.ts';

const ruleOf = (job: Job, rule: string) =>
  schemeOf(estimateOf(job), 'spurs-rcbo').findings.filter((finding) => finding.rule === rule);

const job = demoJob('saltglass-row');

/** Without its readings, a ring is only what its legs say. */
const unread: Job = {
  ...job,
  readings: [],
  circuits: job.circuits.map((circuit) => ({
    ...circuit,
    certainty: { ...circuit.certainty, order: 'assumed' },
  })),
};

describe('stop gates on the demo house', () => {
  it('lets nothing go ahead on a ring that does not close, whichever leg is missing', () => {
    const ringLegs = job.legs.filter((leg) => !('point' in leg.to && leg.to.point.startsWith('s1')));
    expect(ringLegs.length).toBeGreaterThanOrEqual(10);
    for (const missing of ringLegs) {
      const scheme = schemeOf(
        estimateOf({ ...unread, legs: unread.legs.filter((leg) => leg.id !== missing.id) }),
        'spurs-rcbo',
      );
      const gate = scheme.findings.find((finding) => finding.rule === 'RG1' && finding.stopGate);
      expect([missing.id, gate?.outcome, gate?.origin, scheme.complies]).toEqual([
        missing.id,
        'fails',
        'found',
        'no',
      ]);
    }
  });

  it('takes an unproved ring for unproved, not for a pass', () => {
    const scheme = schemeOf(estimateOf(unread), 'spurs-rcbo');
    expect(
      scheme.findings
        .filter((finding) => finding.rule === 'RG1')
        .map((finding) => [finding.outcome, finding.stopGate]),
    ).toEqual([['not-proven', true]]);
    expect(scheme.complies).toBe('not-proven');
  });

  it('is shut by a missing main bond until the scheme mends it', () => {
    const bonds = job.supply.bonding.map((bond, i) =>
      i === 0 ? { service: bond.service, seen: false } : bond,
    );
    const bare: Job = { ...job, supply: { ...job.supply, bonding: bonds } };
    expect(schemeOf(estimateOf(bare), 'spurs-rcbo').complies).toBe('no');
    const mended: Job = {
      ...bare,
      schemes: bare.schemes.map((scheme) => ({
        ...scheme,
        remedies: [...scheme.remedies, { kind: 'bond-upgrade' as const, at: bonds[0]?.service ?? 'water' }],
      })),
    };
    expect(schemeOf(estimateOf(mended), 'spurs-rcbo').complies).not.toBe('no');
  });

  it('is shut by an unsafe board', () => {
    const unsafe: Job = {
      ...job,
      answers: [
        ...job.answers.filter((answer) => answer.question !== 'board-condition'),
        { question: 'board-condition', value: 'unsafe', certainty: 'seen' },
      ],
    };
    const gate = schemeOf(estimateOf(unsafe), 'spurs-rcbo').findings.filter(
      (finding) => finding.stopGate && finding.outcome === 'fails',
    );
    expect(gate.length).toBe(1);
  });

  it('passes on the readings of the demo ring', () => {
    expect(ruleOf(job, 'RG1').map((finding) => finding.outcome)).toEqual(['passes']);
  });
});
