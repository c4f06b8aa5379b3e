import { describe, expect, it } from 'vitest';
import type { Waypoint } from '#model/cable.ts';
import type { Job } from '#model/job.ts';
import { demoEstimate, demoJob, estimateOf, findingsOf, gatingFailures, schemeOf } from './demo-estimates.ts';

const job = demoJob('quarrel-court');
const flat = demoEstimate('quarrel-court');
const everyScheme = ['ring-by-w2', 'spurs-rcbo', 'ring-apart', 'onechannel', 'heater-w2b'] as const;

/** What is asked for must be there. */
function need<T>(value: T | undefined | null, what: string): T {
  if (value === undefined || value === null) throw new Error(`there is no ${what}`);
  return value;
}

it('lists the schemes that are judged here, and no others', () => {
  expect(flat.schemes.map(({ id }) => id)).toEqual(everyScheme);
});

/** Lengths of a scheme's new cables in metres, by the end that each goes to. */
const newM = (id: string): Readonly<Record<string, number>> =>
  Object.fromEntries(
    schemeOf(flat, id).runs.map((run) => [run.to.pointId ?? run.id, need(run.lengthMm, 'length') / 1000]),
  );

/** Amperes that a flat 2.5 mm² cable carries in channel by itself. Source: BS 7671 Table 4D2A, method B. */
const ALONE_A = 23;
/** Two together. Source: BS 7671 Table 4C1, two circuits enclosed: 0.80. 23 × 0.80 = 18.4. */
const TOGETHER_A = 18.4;
/** What a ring's cable must carry. Source: BS 7671 433.1.204. */
const NEEDED_A = 20;

const numbersOf = (id: string, rule: string, subject: string) =>
  findingsOf(schemeOf(flat, id), rule)
    .filter((finding) => finding.subject === subject)
    .map(({ outcome, actual, limit, unit }) => [outcome, actual, limit, unit]);

const pointAt = (label: string) => job.points.find((point) => point.label === label)?.place;

/** The flat with the old leg C2 – C3 cut elsewhere, so far from C2. */
const cutAt = (alongMm: number, flatJob: Job = job): Job => ({
  ...flatJob,
  schemes: flatJob.schemes.map((each) => ({
    ...each,
    connections: each.connections.map((connection) =>
      connection.kind === 'ring-extension' && connection.leg === 'leg-c02c03'
        ? { ...connection, back: { how: 'old-cable' as const, alongMm } }
        : connection,
    ),
  })),
});

describe('W1 and the heater as spurs, the ring through W2', () => {
  const id = 'ring-by-w2';
  const scheme = schemeOf(flat, id);

  it('may go ahead, without a joint', () => {
    expect(scheme.complies).toBe('yes');
    expect(scheme.findings.filter(({ outcome }) => outcome === 'fails')).toEqual([]);
    expect(scheme.joints.filter(({ state }) => state === 'new')).toEqual([]);
  });

  it('takes 3.1, 3.1 and 2.5 m of new cable', () => {
    // W1 and W2 2.0 m along, W3 1.4; 0.22 down and 0.22 up; 0.2 m at either end and 0.3 m of slack.
    expect(newM(id)).toEqual({
      'w1-livingr': expect.closeTo(2 + 0.44 + 0.7, 6),
      'w2-bedroom': expect.closeTo(2 + 0.44 + 0.7, 6),
      'w3-heater1': expect.closeTo(1.4 + 0.44 + 0.7, 6),
    });
  });

  it('keeps C3’s side of the old leg, which is long enough to come up at W2', () => {
    const kept = findingsOf(scheme, 'CN3');
    expect(kept.map(({ outcome, subject }) => [outcome, subject])).toEqual([['passes', 'leg-c02c03/part-1']]);
    // Cut 1.95 m from C2: 7.05 m stay. Down at W2, 1.2 + 3.0 + 2.0 m round the walls, up at C3 and two tails: 7.04.
    expect(9 - 1.95).toBeGreaterThanOrEqual(0.22 + 1.2 + 3 + 2 + 0.22 + 2 * 0.2 - 1e-9);
    const [extension] = need(job.schemes[0], 'scheme').connections.filter(
      ({ kind }) => kind === 'ring-extension',
    );
    expect(extension).toMatchObject({ out: { how: 'terminals' }, back: { how: 'old-cable', alongMm: 1950 } });
  });

  it('would not reach W2 round the walls if it were cut 4.5 m from C2, near as that is across the room', () => {
    const judged = (alongMm: number) => {
      const cut = schemeOf(estimateOf(cutAt(alongMm)), id);
      return [
        cut.complies,
        ...findingsOf(cut, 'CN3').flatMap(({ outcome, actual, limit }) => [outcome, actual, limit]),
      ];
    };
    // 9.0 less the cut less C3's tail of 0.2; wanted 0.22 + 2.0 + 3.0 + 1.2 + 0.22 and W2's tail of 0.2.
    expect(judged(4500)).toEqual(['no', 'fails', 4300, 6840]);
    expect(judged(1960)).toEqual(['yes', 'passes', 6840, 6840]);
    expect(judged(1961)).toEqual(['no', 'fails', 6839, 6840]);
  });

  it('would have to go on in channel to a place off the old leg, down to the skirting and up again', () => {
    const away: Job = {
      ...job,
      points: job.points.map((point) =>
        point.label === 'W2' ? { ...point, place: need(pointAt('W3'), 'place of W3') } : point,
      ),
    };
    const judged = (alongMm: number) =>
      findingsOf(schemeOf(estimateOf(cutAt(alongMm, away)), id), 'CN3').map(({ outcome, actual, limit }) => [
        outcome,
        actual,
        limit,
      ]);
    // From C3 0.22 down, 1.4 along, 0.22 up and a tail of 0.2; level along the wall it would be 1.6.
    expect(judged(6760)).toEqual([['passes', 2040, 2040]]);
    expect(judged(6800)).toEqual([['fails', 2000, 2040]]);
  });

  it('leaves a ring of 54.59 m: 53.4 less the 1.95 taken out, and 3.14 new', () => {
    const ring = need(scheme.worked.shapes.get('ring-flat5'), 'shape of the ring');
    const runs = new Map(scheme.runs.map((run) => [run.id, run.lengthMm]));
    const ringMm = ring.ringEdges.reduce(
      (sum, edge) => sum + need(runs.get(edge.id) ?? edge.lengthMm, edge.id),
      0,
    );
    expect(ring.shape).toBe('ring');
    expect(ringMm / 1000).toBeCloseTo(54.59, 6);
  });

  it('carries 23 A in channel by itself, in the ring and on the spurs', () => {
    expect(numbersOf(id, 'CA1', 'c1-w2-ring/cable-1')).toEqual([['passes', ALONE_A, NEEDED_A, 'A']]);
    for (const cable of ['c1-w1-spur/cable-1', 'c1-w3-fuse/cable-1'])
      expect(numbersOf(id, 'SP5', cable)).toEqual([['passes', ALONE_A, NEEDED_A, 'A']]);
  });

  it('has one accessory on each spur: two plugs of 13 A, and the 13 A fuse of the heater', () => {
    // Common practice, no source: a twin outlet's two plugs are the most that a spur is reckoned with.
    expect(numbersOf(id, 'SP1', 'w1-livingr')).toEqual([['passes', 26, 26, 'A']]);
    expect(numbersOf(id, 'SP1', 'w3-heater1')).toEqual([['passes', 13, 26, 'A']]);
  });

  it('puts three 2.5 mm² conductors into the terminals of C3 and C7, 7.5 of 8 mm²', () => {
    // Source: BS 1363-2 (three 2.5 mm² conductors), from memory; 3 × 2.5 = 7.5.
    for (const point of ['c3-bedroom', 'c7-livingr'])
      expect(numbersOf(id, 'TM1', point)).toEqual([['passes', 7.5, 8, 'mm²']]);
    expect(numbersOf(id, 'TM1', 'c2-bedroom')).toEqual([['passes', 5, 8, 'mm²']]);
  });

  it('feeds the heater through 13 A: 1500 W / 230 V = 6.52 A, and 2 kW may share a socket circuit', () => {
    // BS 1362; BS 7671 433.1.1. 2 kW: guidance of BS 7671 Appendix 15.
    expect(numbersOf(id, 'FU1', 'w3-heater1')).toEqual([['passes', 6.52, 13, 'A']]);
    expect(numbersOf(id, 'FL1', 'w3-heater1')).toEqual([['passes', 1500, 2000, 'W']]);
  });
});

describe('the RCCB of type AC', () => {
  const rcdFindings = (id: string) =>
    findingsOf(schemeOf(flat, id), 'RC2').map(({ outcome, actual, limit, origin }) => [
      outcome,
      actual,
      limit,
      origin,
    ]);

  it('covers the new outlets by its 30 mA', () => {
    // Source: BS 7671 411.3.3 and 415.1.1.
    for (const id of everyScheme)
      expect(numbersOf(id, 'RC1', 'ring-flat5')).toEqual([['passes', 30, 30, 'mA']]);
  });

  it('is advised against, as found, and never gates', () => {
    // Source: BS 7671 531.3.3: type AC for fixed equipment known to have no DC.
    for (const id of everyScheme.filter((each) => each !== 'spurs-rcbo'))
      expect(rcdFindings(id)).toEqual([['advice', 'AC', 'A', 'found']]);
  });

  it('is answered by an RCBO of type A, which is bought in that scheme alone', () => {
    expect(rcdFindings('spurs-rcbo')).toEqual([['passes', 'A', 'A', 'scheme']]);
    const rcbos = everyScheme.map((id) =>
      schemeOf(flat, id)
        .takeoff.filter(({ item }) => item.startsWith('rcbo-'))
        .map(({ item, measured }) => [item, measured]),
    );
    expect(rcbos).toEqual([[], [['rcbo-b32-30-a', 1]], [], [], []]);
  });

  it('proves nothing when nobody has told that the ring is behind it', () => {
    const untied: Job = {
      ...job,
      circuits: job.circuits.map(({ upstreamRcd: _behind, ...circuit }) => circuit),
    };
    const scheme = schemeOf(estimateOf(untied), 'ring-by-w2');
    expect(findingsOf(scheme, 'RC1').map(({ outcome }) => outcome)).toEqual(['not-proven']);
    expect(scheme.complies).toBe('not-proven');
  });
});

describe('all three as spurs', () => {
  it('may go ahead: one spur a point, two of them unfused, and seven points in the ring', () => {
    const scheme = schemeOf(flat, 'spurs-rcbo');
    expect(scheme.complies).toBe('yes');
    for (const point of ['c2-bedroom', 'c3-bedroom', 'c7-livingr'])
      expect(numbersOf('spurs-rcbo', 'SP2', point)).toEqual([['passes', 1, 1, null]]);
    // A fused unit is not in the count of unfused spurs: W1 and W2. Source: IET On-Site Guide 7.2.2 (guidance).
    expect(numbersOf('spurs-rcbo', 'SP4', 'ring-flat5')).toEqual([['passes', 2, 7, null]]);
    expect(newM('spurs-rcbo')).toEqual(newM('ring-by-w2'));
  });
});

describe('the ring out to W1 and back', () => {
  const channels = (id: string) =>
    Object.fromEntries(
      schemeOf(flat, id)
        .takeoff.filter(({ item }) => /^channel-\d/.test(item))
        .map(({ item, measured }) => [item, measured]),
    );

  it('fails with both legs in one channel: 23 × 0.80 = 18.4 A, 20 needed', () => {
    const leg = 'c4-w1-ring/cable-1';
    expect(schemeOf(flat, 'onechannel').complies).toBe('no');
    expect(gatingFailures(schemeOf(flat, 'onechannel'))).toEqual([`RG4 ${leg}`]);
    expect(numbersOf('onechannel', 'RG4', leg)).toEqual([['fails', TOGETHER_A, NEEDED_A, 'A']]);
    const [failure] = findingsOf(schemeOf(flat, 'onechannel'), 'RG4');
    // 2.0 m along the wall and 0.22 up to W1.
    expect(failure?.message).toContain('W1 and W1');
    expect(failure?.message).toContain('for 2.2 m: method B × 0.8 for cables together leaves each 18.4 A');
    expect(failure?.remedy).toMatch(/channel for each leg/);
  });

  it('may go ahead with a channel for each leg: 23 A', () => {
    expect(schemeOf(flat, 'ring-apart').complies).toBe('yes');
    expect(gatingFailures(schemeOf(flat, 'ring-apart'))).toEqual([]);
    for (const leg of ['c3-w1-ring/cable-1', 'c3-w1-ring/cable-2'])
      expect(numbersOf('ring-apart', 'CA1', leg)).toEqual([['passes', ALONE_A, NEEDED_A, 'A']]);
  });

  it('is joined on at 32 A behind 32 A', () => {
    // Source: BS 7671 512.1.2; maintenance-free by 526.3 (BS 5733).
    for (const id of ['ring-apart', 'onechannel']) {
      const joints = schemeOf(flat, id).joints.filter(({ state }) => state === 'new');
      expect(joints).toMatchObject([
        { kind: 'maintenance-free', ratingA: 32, inRing: true, upstream: { kind: 'device', ratingA: 32 } },
      ]);
    }
  });

  it('takes the wider channel for two cables only, and is the cheaper for it, which is the temptation', () => {
    // 2.0 m along the wall and 0.22 up to W1 hold both.
    expect(channels('onechannel')['channel-25x16']).toBeCloseTo(2.22, 6);
    expect(Object.keys(channels('ring-apart'))).toEqual(['channel-16x16']);
    // 2.2 + 0.22, and 0.18 + 2.0 + 0.18 at 120 mm for W1; 2.44 for W2; 1.84 for W3.
    expect(channels('ring-apart')['channel-16x16']).toBeCloseTo(2.42 + 2.36 + 2.44 + 1.84, 6);
    expect(schemeOf(flat, 'onechannel').totals.netPence).toBeLessThan(
      schemeOf(flat, 'ring-apart').totals.netPence,
    );
  });
});

describe('W2 and the heater in turn on one spur, in the channel of the ring', () => {
  it('is refused for the second accessory, for the spur from a spur, and for the crowded channel', () => {
    const scheme = schemeOf(flat, 'heater-w2b');
    expect(scheme.complies).toBe('no');
    expect(gatingFailures(scheme).toSorted()).toEqual([
      'CA1 leg-c02c03',
      'SP1 w3-heater1',
      'SP3 w3-heater1',
      'SP5 c5-w3-fuse/cable-1',
    ]);
  });

  it('could draw 39 A: two plugs of 13 A and the fuse of 13 A, where 26 A is allowed for', () => {
    expect(numbersOf('heater-w2b', 'SP1', 'w3-heater1')).toEqual([['fails', 39, 26, 'A']]);
    const failure = findingsOf(schemeOf(flat, 'heater-w2b'), 'SP1').find(
      ({ outcome }) => outcome === 'fails',
    );
    expect(failure?.remedy).toMatch(/fused unit before the first outlet/i);
  });

  it('leaves 18.4 A for the spur and for the ring’s own leg beside it', () => {
    expect(numbersOf('heater-w2b', 'SP5', 'c5-w3-fuse/cable-1')).toEqual([
      ['fails', TOGETHER_A, NEEDED_A, 'A'],
    ]);
    expect(numbersOf('heater-w2b', 'CA1', 'leg-c02c03')).toEqual([['fails', TOGETHER_A, NEEDED_A, 'A']]);
    expect(
      findingsOf(schemeOf(flat, 'heater-w2b'), 'CA1')
        .filter(({ subject }) => subject === 'leg-c02c03')
        .map(({ origin, gates }) => [origin, gates]),
    ).toEqual([['scheme', true]]);
    // Nothing but the new cable is to blame: the leg is alone there in every other scheme.
    for (const id of everyScheme.filter((each) => each !== 'heater-w2b'))
      expect(numbersOf(id, 'CA1', 'leg-c02c03')).toEqual([]);
  });

  it('takes 8.74 m round the front of the bedroom', () => {
    // 0.22 down, 1.2 + 3.0 + 2.0 + 1.4 along, 0.22 up, 0.7 for ends and slack.
    expect(newM('heater-w2b')['w3-heater1']).toBeCloseTo(8.74, 6);
  });
});

describe('cable after a fuse in the channel of the ring’s leg', () => {
  const channel = (at: [number, number], heightMm: number, bundle?: string): Waypoint => ({
    storey: 'flat-floor',
    at,
    heightMm,
    medium: 'surface-channel',
    wall: 'fl-hall-02',
    side: 'left',
    containment: 'channel',
    ...(bundle === undefined ? {} : { bundle }),
  });
  /** A unit beside C2 that feeds W2, its cable in the channel of C2 – C3 from y 2900 to y 1200 or in one of its own. */
  const fused = (bundle: string | undefined): Job => ({
    ...job,
    legs: job.legs.map((leg) =>
      leg.id === 'leg-c02c03'
        ? { ...leg, via: leg.via?.map((each, index) => (index === 1 ? { ...each, bundle: 'by-w2' } : each)) }
        : leg,
    ),
    schemes: job.schemes.slice(0, 1).map((each) => ({
      ...each,
      connections: [
        ...each.connections.filter(({ kind }) => kind !== 'ring-extension'),
        {
          id: 'c1-w2-fuse',
          kind: 'fused-spur' as const,
          from: { point: 'c2-bedroom' },
          unit: {
            fuseA: 13,
            place: { wall: 'fl-hall-02', side: 'left' as const, alongMm: 1650, heightMm: 300 },
          },
          feeds: [{ from: 'unit', to: 'w2-bedroom' }],
          runs: [
            {
              // The unit that the connection brings along has no name, so any will do for it.
              from: { point: 'w2-bedroom' },
              to: { point: 'w2-bedroom' },
              via: [channel([5300, 2900], 80), channel([5300, 1200], 80, bundle)],
            },
          ],
        },
      ],
    })),
  });

  it('is blamed for leaving the leg 18.4 of 20 A', () => {
    const scheme = schemeOf(estimateOf(fused('by-w2')), 'ring-by-w2');
    expect(gatingFailures(scheme)).toEqual(['CA1 leg-c02c03']);
    expect(scheme.complies).toBe('no');
  });

  it('is fit to go ahead in a channel of its own', () => {
    const scheme = schemeOf(estimateOf(fused(undefined)), 'ring-by-w2');
    expect(gatingFailures(scheme)).toEqual([]);
    expect(scheme.complies).toBe('yes');
  });
});

describe('what Scotland asks', () => {
  it('leaves open whether work in a flat wants a warrant, and adds no sum for notifying', () => {
    // Source: Building (Scotland) Regulations 2004, reg 5 and schedule 3; for flats, sources do not agree.
    for (const id of everyScheme) {
      const scheme = schemeOf(flat, id);
      expect(findingsOf(scheme, 'NT1').map(({ outcome, gates }) => [outcome, gates])).toEqual([
        ['decide', false],
      ]);
      expect(scheme.price.other.map(({ sum }) => sum)).not.toContain('notification');
    }
  });

  it('would need no warrant in a house of one storey', () => {
    const house: Job = { ...job, site: { ...job.site, premises: 'house' } };
    expect(
      findingsOf(schemeOf(estimateOf(house), 'ring-by-w2'), 'NT1').map(({ outcome }) => outcome),
    ).toEqual(['passes']);
  });

  it('lets the heater’s unit stand on the separating wall in a surface box, not in a flush one', () => {
    expect(numbersOf('ring-by-w2', 'BX3', 'w3-heater1').map(([outcome]) => outcome)).toEqual(['passes']);
    const flush: Job = {
      ...job,
      points: job.points.map((point) =>
        point.label === 'W3' ? { ...point, mount: 'flush' as const } : point,
      ),
    };
    // Source: the same Regulations (a recess that harms a separating wall), from memory.
    expect(findingsOf(schemeOf(estimateOf(flush), 'ring-by-w2'), 'BX3')).toMatchObject([
      { outcome: 'decide', subject: 'w3-heater1' },
    ]);
  });

  it('advises 400 mm above floor where the outlets stand at 300 mm like their neighbours', () => {
    // Source: Scottish Building Standards Technical Handbook 4.8.5; the 400 mm from memory.
    for (const point of ['w1-livingr', 'w2-bedroom', 'w3-heater1'])
      expect(numbersOf('ring-by-w2', 'PO1', point)).toEqual([['advice', 300, 400, 'mm']]);
  });

  it('wants 350 mm to the corner, and has 1050 mm at the nearest', () => {
    // Source: the same, 4.8.5. W3 at 3400 with the rear wall's face at 4450; W2 1200 and W1 1700 off theirs.
    expect(numbersOf('ring-by-w2', 'PO2', 'w3-heater1')).toEqual([['passes', 1050, 350, 'mm']]);
    expect(numbersOf('ring-by-w2', 'PO2', 'w2-bedroom')).toEqual([['passes', 1200, 350, 'mm']]);
    expect(numbersOf('ring-by-w2', 'PO2', 'w1-livingr')).toEqual([['passes', 1700, 350, 'mm']]);
  });

  it('has the tenant’s landlord asked first', () => {
    expect(findingsOf(schemeOf(flat, 'ring-by-w2'), 'PR4').map(({ outcome }) => outcome)).toEqual(['passes']);
    const unasked: Job = { ...job, answers: job.answers.filter(({ question }) => question !== 'consent') };
    expect(
      findingsOf(schemeOf(estimateOf(unasked), 'ring-by-w2'), 'PR4').map(({ outcome }) => outcome),
    ).toEqual(['advice']);
  });
});
