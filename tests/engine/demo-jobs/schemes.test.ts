import { describe, expect, it } from 'vitest';
import { demoEstimate, demoNames, findingsOf, gatingFailures, schemeOf } from './demo-estimates.ts';

const terrace = demoEstimate('saltglass-row');
const semi = demoEstimate('fernlow-close');
const quoting = demoEstimate('saltglass-row-quoting');
const rulesThatGate = (estimate: typeof terrace, id: string): readonly string[] =>
  [...new Set(gatingFailures(schemeOf(estimate, id)).map((failure) => failure.split(' ')[0] ?? ''))].sort();

describe('3 Saltglass Row', () => {
  it('lets the spurs with an RCBO, the ring through W2 and the fused branch go ahead', () => {
    for (const id of ['spurs-rcbo', 'ring-to-w2', 'fused-beds'])
      expect([id, schemeOf(terrace, id).complies]).toEqual([id, 'yes']);
  });

  it('refuses a spur off the spur S1 without an RCBO: for what that spur feeds, for its being a spur from a spur, and for the RCD', () => {
    expect(schemeOf(terrace, 'off-spur-1').complies).toBe('no');
    expect(rulesThatGate(terrace, 'off-spur-1')).toEqual(['RC1', 'RC3', 'SP1', 'SP3']);
  });

  it('refuses two twin outlets in turn on one unfused spur: 52 A possible where one twin can draw 26 A', () => {
    const scheme = schemeOf(terrace, 'two-on-one');
    expect(scheme.complies).toBe('no');
    expect(rulesThatGate(terrace, 'two-on-one')).toContain('SP1');
    const failure = findingsOf(scheme, 'SP1').find((finding) => finding.outcome === 'fails');
    expect([failure?.actual, failure?.limit, failure?.unit, failure?.origin]).toEqual([
      52,
      26,
      'A',
      'scheme',
    ]);
    expect(failure?.remedy).toMatch(/fused unit before the first outlet/i);
    expect(failure?.remedy).toMatch(/ring carried out and back/i);
  });

  it('prices the RCBO that the scheme without one lacks', () => {
    const failure = findingsOf(schemeOf(terrace, 'off-spur-1'), 'RC1').find(
      (finding) => finding.outcome === 'fails',
    );
    expect(failure?.fix?.kind).toBe('rcbo');
    expect(failure?.consequencePence).toBeGreaterThan(1000);
  });

  it('puts the joint in R8–R9 at 32 A, maintenance-free, upstream of it the circuit’s device', () => {
    const [joint, ...others] = schemeOf(terrace, 'spurs-rcbo').joints.filter(({ state }) => state === 'new');
    expect(others).toEqual([]);
    expect(joint).toMatchObject({
      kind: 'maintenance-free',
      ratingA: 32,
      inRing: true,
      upstream: { kind: 'device', ratingA: 32 },
    });
  });
});

describe('18 Fernlow Close', () => {
  it('refuses three twin outlets in turn without a fuse, and names the spur', () => {
    const scheme = schemeOf(semi, 'no-fuse-b3');
    expect(scheme.complies).toBe('no');
    expect(rulesThatGate(semi, 'no-fuse-b3')).toContain('SP1');
    const failure = findingsOf(scheme, 'SP1').find((finding) => finding.outcome === 'fails');
    expect([failure?.actual, failure?.limit]).toEqual([78, 26]);
  });

  it('leaves the fused branch to decide on its plug-in loads: 26.5 A behind 13 A', () => {
    const scheme = schemeOf(semi, 'fused-unit');
    expect(scheme.complies).toBe('yes');
    const loads = findingsOf(scheme, 'FU2');
    expect(loads.map((finding) => [finding.outcome, finding.limit])).toEqual([['decide', 13]]);
    expect(Number(loads[0]?.actual)).toBeCloseTo(6100 / 230, 1);
  });

  it('lets the ring go out and back with two joints, nothing removed: 83.5 m', () => {
    const scheme = schemeOf(semi, 'ring-to-b3');
    expect(scheme.complies).toBe('yes');
    expect(scheme.joints.filter(({ state }) => state === 'new').length).toBe(2);
    const newMm = scheme.runs.reduce((sum, run) => sum + (run.lengthMm ?? 0), 0);
    expect(Math.abs(70_700 + newMm - 83_500)).toBeLessThan(400);
  });
});

describe('the quoting visit to 3 Saltglass Row', () => {
  it('gives every scheme a price without legs, order, depths or boards', () => {
    for (const scheme of quoting.schemes) {
      expect(scheme.totals.grossPence).toBeGreaterThan(10_000);
      expect(scheme.complies).not.toBe('yes');
    }
  });

  it('gives a wider range than the full survey, and says what would narrow it', () => {
    const width = (estimate: typeof terrace): number => {
      const { range } = schemeOf(estimate, 'spurs-rcbo');
      return (range.highPence - range.lowPence) / range.typicalPence;
    };
    expect(width(quoting)).toBeGreaterThan(width(terrace) * 1.2);
    const open = schemeOf(quoting, 'spurs-rcbo').openQuestions;
    expect(open.length).toBeGreaterThanOrEqual(3);
    expect(open.map(({ question }) => question)).toEqual(
      expect.arrayContaining(['rcbo-available', 'box-depths']),
    );
    for (const { worthPence, subjects } of open) {
      expect(worthPence).toBeGreaterThan(0);
      expect(subjects.length).toBeGreaterThan(0);
    }
  });

  it('calls nothing proved that a look at the plates cannot tell', () => {
    const scheme = schemeOf(quoting, 'spurs-rcbo');
    expect(findingsOf(scheme, 'RG1').map((finding) => finding.outcome)).toEqual(['not-proven']);
  });
});

describe.each(demoNames)('any scheme of %s', (name) => {
  const estimate = demoEstimate(name);

  it('has money that adds up', () => {
    for (const { totals } of estimate.schemes) {
      expect(totals.materialsPence + totals.labourPence + totals.otherPence + totals.contingencyPence).toBe(
        totals.netPence,
      );
      expect(totals.netPence + totals.vatPence).toBe(totals.grossPence);
      for (const pence of Object.values(totals).slice(1)) expect(Number.isInteger(pence)).toBe(true);
    }
  });

  it('has a cause for every line, and causes that exist', () => {
    for (const scheme of estimate.schemes) {
      const known = new Set([
        ...estimate.asFound.worked.job.points.map(({ id }) => id),
        ...scheme.worked.proposed.nodes.map(({ id }) => id),
        ...scheme.worked.proposed.edges.map(({ id }) => id),
        ...scheme.worked.proposed.circuits.map(({ id }) => id),
        ...scheme.worked.job.boards.map(({ id }) => id),
        ...scheme.worked.job.legs.map(({ id }) => id),
        ...(scheme.worked.scheme?.connections ?? []).map(({ id }) => id),
        ...(scheme.worked.scheme?.remedies ?? []).map(({ kind, at }) =>
          at === undefined ? `remedy/${kind}` : `remedy/${kind}/${at}`,
        ),
        scheme.id,
      ]);
      for (const line of [...scheme.takeoff, ...scheme.labour]) {
        expect(line.causes.length, JSON.stringify(line)).toBeGreaterThan(0);
        expect(
          line.causes.filter((cause) => !known.has(cause)),
          JSON.stringify(line),
        ).toEqual([]);
      }
    }
  });

  it('fills every place in its sentences, and calls nothing safe or certified', () => {
    for (const finding of [
      ...estimate.asFound.findings,
      ...estimate.schemes.flatMap(({ findings }) => findings),
    ]) {
      const text = `${finding.message} ${finding.remedy ?? ''}`;
      expect(text).not.toMatch(/[{}]|undefined|NaN/);
      expect(text).not.toMatch(/\b(is|are) (safe|certified)\b/i);
      expect(finding.source.length).toBeGreaterThan(5);
    }
  });

  it('is the same again from the same job', () => {
    expect(demoEstimate(name)).toEqual(estimate);
  });

  it('prices every line and every task', () => {
    for (const scheme of estimate.schemes) expect(findingsOf(scheme, 'PL1')).toEqual([]);
  });
});
