import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import {
  demoEstimate,
  demoJob,
  estimateOf,
  findingsOf,
  gatingFailures,
  schemeOf,
} from '#tests/engine/demo-jobs/demo-estimates.ts';

/**
 * What every practitioner does when adding an outlet to a ring, run through the whole product.
 * Common practice, no source, unless a line below names one; the amperes are arithmetic: 13 A a plug (BS 1363).
 */
const base = demoJob('saltglass-row');

const rcbo: Scheme['remedies'] = [{ kind: 'rcbo', at: base.circuits[0]?.id ?? '' }];
const withScheme = (connections: readonly Connection[], job: Job = base): Job => ({
  ...job,
  schemes: [
    { id: 'the-scheme', name: 'The scheme', connections: [...connections], remedies: rcbo, locks: [] },
  ],
});
const worked = (connections: readonly Connection[], job: Job = base) =>
  schemeOf(estimateOf(withScheme(connections, job)), 'the-scheme');

const idOf = (label: string): string => base.points.find((point) => point.label === label)?.id ?? label;
const spur = (id: string, from: string, to: string): Connection => ({
  id,
  kind: 'spur',
  from: { point: idOf(from) },
  to: idOf(to),
});
const failing = (connections: readonly Connection[], job?: Job): readonly string[] =>
  gatingFailures(worked(connections, job)).filter((failure) => !failure.startsWith('CN2'));

describe('common practice, no source: a ring on 32 A in 2.5 mm² twin and earth', () => {
  it('is what the demo ring is, and passes as ring, device and cable', () => {
    const { findings } = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
    expect(base.circuits[0]?.device).toMatchObject({ curve: 'B', ratingA: 32 });
    expect(base.legs.every((leg) => leg.cable?.lineMm2 === 2.5 && leg.cable.cpcMm2 === 1.5)).toBe(true);
    for (const rule of ['RG1', 'DV1'])
      expect([rule, findings.find((finding) => finding.rule === rule)?.outcome]).toEqual([rule, 'passes']);
  });

  // BS 7671 433.1.204: a ring is protected by a device of 30 or 32 A.
  it('fails on a device above 32 A', () => {
    const job: Job = {
      ...base,
      circuits: base.circuits.map((circuit) => ({
        ...circuit,
        device: { standard: 'BS-EN-60898', curve: 'B', ratingA: 40 },
      })),
    };
    expect(
      findingsOf(worked([spur('cn-1', 'R1', 'W1')], job), 'DV1').map((finding) => [
        finding.outcome,
        finding.actual,
        finding.limit,
      ]),
    ).toEqual([['fails', 40, 32]]);
  });
});

describe('common practice, no source: joints of 32 A or more', () => {
  const leg =
    base.legs.find((candidate) => 'point' in candidate.from && candidate.from.point === idOf('R8'))?.id ?? '';
  const jointed = (ratingA: number): Connection => ({
    id: 'cn-1',
    kind: 'spur',
    from: { leg, alongMm: 6000, joint: { kind: 'maintenance-free', ratingA, accessible: false } },
    to: idOf('W2'),
  });

  it('pass at 32 A and fail at 20 A in a ring on 32 A', () => {
    const outcomes = [32, 20].map((ratingA) =>
      findingsOf(worked([jointed(ratingA)]), 'JN1').map((finding) => finding.outcome),
    );
    expect(outcomes).toEqual([['passes'], ['fails']]);
    expect(failing([jointed(20)]).map((failure) => failure.split(' ')[0])).toEqual(['JN1']);
  });

  it('are fitted at 32 A, maintenance-free, when nothing else is said', () => {
    const [joint] = worked([
      { id: 'cn-1', kind: 'spur', from: { leg, alongMm: 6000 }, to: idOf('W2') },
    ]).joints.filter(({ state }) => state === 'new');
    expect(joint).toMatchObject({ kind: 'maintenance-free', ratingA: 32 });
  });
});

describe('common practice, no source: one unfused spur from one point or joint', () => {
  it('may feed one twin outlet: two 13 A plugs, 26 A, and no more', () => {
    const finding = findingsOf(worked([spur('cn-1', 'R1', 'W1')]), 'SP1').find(
      ({ origin }) => origin === 'scheme',
    );
    expect([finding?.outcome, finding?.actual, finding?.limit, finding?.unit]).toEqual([
      'passes',
      26,
      26,
      'A',
    ]);
    expect(finding?.message).toContain('26 A');
  });

  it('fails with a second twin outlet on it: 52 A is possible', () => {
    const scheme = worked([spur('cn-1', 'R1', 'W1'), spur('cn-2', 'W1', 'W2')]);
    const finding = findingsOf(scheme, 'SP1').find(({ outcome }) => outcome === 'fails');
    expect([finding?.actual, finding?.limit]).toEqual([52, 26]);
    expect(finding?.message).toContain('52 A');
    expect(finding?.message).toContain('26 A');
    expect(scheme.complies).toBe('no');
  });

  it('fails when a second spur starts from the same point', () => {
    expect(
      failing([spur('cn-1', 'R1', 'W1'), spur('cn-2', 'R1', 'W2')]).some((failure) =>
        failure.startsWith('SP2'),
      ),
    ).toBe(true);
  });

  it('fails with a second twin when the fused unit comes only after the first', () => {
    const late: readonly Connection[] = [
      spur('cn-1', 'R1', 'W1'),
      {
        id: 'cn-2',
        kind: 'fused-spur',
        from: { point: idOf('W1') },
        unit: {},
        feeds: [{ from: 'unit', to: idOf('W2') }],
      },
    ];
    expect(failing(late).some((failure) => failure.startsWith('SP1'))).toBe(true);
  });
});

describe('common practice, no source: what puts a second twin outlet right', () => {
  it('is a fused unit before the first outlet of the branch', () => {
    const feeds = [
      { from: 'unit', to: idOf('W1') },
      { from: idOf('W1'), to: idOf('W2') },
    ];
    const scheme = worked([{ id: 'cn-1', kind: 'fused-spur', from: { point: idOf('R1') }, unit: {}, feeds }]);
    expect(gatingFailures(scheme).filter((failure) => failure.startsWith('SP'))).toEqual([]);
    expect(scheme.fusedUnits.find(({ state }) => state === 'new')).toMatchObject({ fuseA: 13, outlets: 2 });
  });

  it('or the ring carried out and back through both', () => {
    const between: [{ point: string }, { point: string }] = [{ point: idOf('R1') }, { point: idOf('R2') }];
    const scheme = worked([
      {
        id: 'cn-1',
        kind: 'ring-extension',
        circuit: base.circuits[0]?.id ?? '',
        between,
        out: { how: 'terminals' },
        back: { how: 'terminals' },
        through: [idOf('W1'), idOf('W2')],
      },
    ]);
    expect(
      gatingFailures(scheme).filter((failure) => failure.startsWith('SP') || failure.startsWith('RG')),
    ).toEqual([]);
    const shape = scheme.worked.shapes.get(base.circuits[0]?.id ?? '');
    expect(shape?.shape).toBe('ring');
    expect(shape?.ringNodes).toEqual(expect.arrayContaining([idOf('W1'), idOf('W2')]));
  });
});
