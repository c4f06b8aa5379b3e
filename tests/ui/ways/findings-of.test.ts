import { describe, expect, it } from 'vitest';
import { demoEstimate, demoNames, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { connectionOf } from '../../../ui/edits/joined-by.ts';
import { findingsAt } from '../../../ui/elements/ways/findings-of.ts';

const rulesAt = (name: (typeof demoNames)[number], schemeId: string, pointId: string): readonly string[] => {
  const scheme = schemeOf(demoEstimate(name), schemeId);
  const connection = scheme.worked.scheme === null ? null : connectionOf(scheme.worked.scheme, pointId);
  return findingsAt(scheme, pointId, connection).map(({ rule, outcome }) => `${outcome} ${rule}`);
};

describe('the findings of a point’s row', () => {
  it('are those of the point itself, gravest first', () => {
    const rules = rulesAt('saltglass-row', 'two-on-one', 'w2-bedroom');
    expect(rules.slice(0, 2).sort()).toEqual(['fails SP1', 'fails SP3']);
    const order = ['fails', 'decide', 'not-proven'];
    const ranks = rules.map((words) => order.indexOf(words.split(' ')[0] ?? ''));
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
  });

  it('take in those of the unit at the first point behind it, and at no other', () => {
    expect(rulesAt('fernlow-close', 'fused-unit', 'b1-kitchen')).toContain('decide FU2');
    expect(rulesAt('fernlow-close', 'fused-unit', 'b2-kitchen')).not.toContain('decide FU2');
  });

  it.each(demoNames)('are shown once each, whatever scheme of %s is shown', (name) => {
    for (const scheme of demoEstimate(name).schemes) {
      const { worked } = scheme;
      if (worked.scheme === null) continue;
      const ids = worked.scheme.connections.map(({ id }) => id);
      const shown = worked.job.points
        .filter(({ status }) => status === 'wanted')
        .flatMap(({ id }) =>
          findingsAt(scheme, id, worked.scheme === null ? null : connectionOf(worked.scheme, id)),
        );
      const ofConnections = scheme.findings.filter(
        ({ origin, outcome, subject }) =>
          origin === 'scheme' &&
          (outcome === 'fails' || outcome === 'decide' || outcome === 'not-proven') &&
          ids.some((id) => subject === id || subject.startsWith(`${id}/`)),
      );
      for (const finding of ofConnections) expect(shown.filter((one) => one === finding)).toHaveLength(1);
    }
  });

  it('say of a point that nothing joins that it is not joined', () => {
    const scheme = schemeOf(demoEstimate('fernlow-close'), 'fused-unit');
    const alone = { ...scheme, findings: scheme.findings.map((one) => ({ ...one, subject: 'b1-kitchen' })) };
    expect(findingsAt(alone, 'b1-kitchen', null).length).toBeGreaterThan(0);
    expect(findingsAt(alone, 'b2-kitchen', null)).toEqual([]);
  });
});
