import { describe, expect, it } from 'vitest';
import type { Connection } from '#model/scheme.ts';
import {
  type DemoName,
  demoEstimate,
  demoJob,
  estimateOf,
  schemeOf,
} from '#tests/engine/demo-jobs/demo-estimates.ts';
import { firstTryWords } from '../../../ui/edits/first-try-words.ts';
import { maySpurFrom, sourcePoints } from '../../../ui/edits/join-sources.ts';
import { joinedBy } from '../../../ui/edits/joined-by.ts';
import { addFirstTry, type FirstTry } from '../../../ui/edits/schemes.ts';
import { edited } from './random-edits.ts';

const foundIn = (name: DemoName) => demoEstimate(name).asFound.worked;

function tried(name: DemoName, which: FirstTry) {
  const { edit, schemeId } = addFirstTry(foundIn(name), which);
  return schemeOf(estimateOf(edited({ ...demoJob(name), schemes: [] }, edit)), schemeId);
}
const connectionsOf = (scheme: ReturnType<typeof tried>): readonly Connection[] =>
  scheme.worked.scheme?.connections ?? [];
const cableM = (scheme: ReturnType<typeof tried>): number =>
  scheme.runs.reduce((sum, { lengthMm }) => sum + (lengthMm ?? 0), 0) / 1000;

describe('points to join on at', () => {
  it('come by nearness, those at the back of the same wall as near as those in the same room', () => {
    // W1 is on the living room’s side of the wall that R1 is on in the hall, 0.3 m further along.
    const [nearest] = sourcePoints(foundIn('saltglass-row'), null, 'w1-living1');
    expect(nearest).toMatchObject({ pointId: 'r1-hallway', role: 'ring', taken: 0, hasSpur: false });
    expect(nearest?.awayMm).toBeLessThan(600);
  });

  it('come before those that are as near behind another wall', () => {
    // C2 is 1.7 m off in the bedroom, across the hall; C7 2 m off in W1’s own room.
    const ids = sourcePoints(foundIn('quarrel-court'), null, 'w1-livingr').map(({ pointId }) => pointId);
    expect(ids.indexOf('c7-livingr')).toBeLessThan(ids.indexOf('c2-bedroom'));
  });

  it('are no place for a spur where one starts already, as found or in the scheme', () => {
    const job = demoJob('saltglass-row');
    const scheme = job.schemes.find(({ id }) => id === 'spurs-rcbo') ?? null;
    const sources = sourcePoints(foundIn('saltglass-row'), scheme, 'w2-bedroom');
    const may = (id: string): boolean | undefined =>
      sources.filter(({ pointId }) => pointId === id).map(maySpurFrom)[0];
    // R9 has the spur to S1; R8 has W3's in this scheme; S1 is on a spur itself; R5 is free.
    expect(['r9-bedroom', 'r8-bedroom', 's1-bedroom', 'r5-kitchen'].map(may)).toEqual([
      false,
      false,
      false,
      true,
    ]);
  });
});

describe('a first try', () => {
  it('at a fused branch goes from A4 through B1, B2 and B3, its first run chased along two walls', () => {
    const scheme = tried('fernlow-close', 'fused-branch');
    expect(connectionsOf(scheme)).toMatchObject([
      { kind: 'fused-spur', from: { point: 'a4-kitchen' }, unit: { fuseA: 13 } },
    ]);
    expect(connectionsOf(scheme).flatMap(joinedBy)).toEqual(['b1-kitchen', 'b2-kitchen', 'b3-kitchen']);
    // By hand: 0.80 level to the corner, 0.65 up in it, 0.90 and the unit's place to the first outlet, three of 1.60 in all.
    expect(cableM(scheme)).toBeGreaterThan(7.85 * 0.95);
    expect(cableM(scheme)).toBeLessThan(7.85 * 1.05);
    expect(scheme.complies).toBe('yes');
  });

  it('at a radial begins at the point nearest to the board', () => {
    const scheme = tried('fernlow-close', 'radial');
    expect(connectionsOf(scheme).flatMap(joinedBy)).toEqual(['b3-kitchen', 'b2-kitchen', 'b1-kitchen']);
  });

  it('at spurs takes each from its own room, and no point twice', () => {
    const scheme = tried('quarrel-court', 'spurs');
    const from = connectionsOf(scheme).map((one) => ('from' in one ? one.from : null));
    expect(from).toEqual([{ point: 'c7-livingr' }, { point: 'c2-bedroom' }, { point: 'c3-bedroom' }]);
    expect(scheme.complies).toBe('yes');
    const terrace = connectionsOf(tried('saltglass-row', 'spurs')).map((one) =>
      'from' in one && 'point' in one.from ? one.from.point : '',
    );
    expect(new Set(terrace).size).toBe(terrace.length);
  });

  it('at the ring opens one leg of it and goes through all', () => {
    const [ring, ...others] = connectionsOf(tried('fernlow-close', 'ring'));
    expect(others).toEqual([]);
    expect(ring).toMatchObject({ kind: 'ring-extension', out: { how: 'joint' }, back: { how: 'joint' } });
    expect(ring === undefined ? [] : [...joinedBy(ring)].sort()).toEqual([
      'b1-kitchen',
      'b2-kitchen',
      'b3-kitchen',
    ]);
  });

  it('at the ring of a quoting visit guesses two neighbours, which the checks doubt and the scheme cannot comply by', () => {
    const scheme = tried('saltglass-row-quoting', 'ring');
    const [ring] = connectionsOf(scheme);
    const doubts = scheme.findings.filter(({ rule }) => rule === 'RG5');
    expect(doubts).toMatchObject([
      { outcome: 'not-proven', messageId: 'noLeg', subject: ring?.id, gates: true, origin: 'scheme' },
    ]);
    expect(scheme.complies).not.toBe('yes');
  });

  it('at the ring never takes a point in which one cable ends for a neighbour', () => {
    const whole = demoJob('saltglass-row-quoting');
    const between = (ends: ReturnType<typeof connectionsOf>): readonly string[] =>
      ends.flatMap((one) =>
        one.kind === 'ring-extension' ? one.between.map((end) => ('point' in end ? end.point : '')) : [],
      );
    const [first = ''] = between(connectionsOf(tried('saltglass-row-quoting', 'ring')));
    const points = whole.points.map((point) =>
      point.id === first ? { ...point, asFound: { ...point.asFound, cablesSeen: 1 } } : point,
    );
    const { edit, schemeId } = addFirstTry(
      estimateOf({ ...whole, points, schemes: [] }).asFound.worked,
      'ring',
    );
    const made = edited({ ...whole, points, schemes: [] }, edit).schemes.find(({ id }) => id === schemeId);
    expect(between(made?.connections ?? [])).toHaveLength(2);
    expect(between(made?.connections ?? [])).not.toContain(first);
  });
});

describe('where nothing has a place and the circuit’s shape is not known', () => {
  const whole = demoJob('saltglass-row-quoting');
  const { worked } = estimateOf({
    ...whole,
    schemes: [],
    legs: [],
    circuits: whole.circuits.map(({ shape: _, ...circuit }) => circuit),
    points: whole.points.map(({ place: _, ...point }) => ({ ...point, asFound: {} })),
  }).asFound;

  it('spurs begin each at a point of its own', () => {
    const { edit, schemeId } = addFirstTry(worked, 'spurs');
    const made = edited(worked.job, edit).schemes.find(({ id }) => id === schemeId);
    const from = (made?.connections ?? []).map((one) =>
      'from' in one && 'point' in one.from ? one.from.point : '',
    );
    expect(from.length).toBeGreaterThan(1);
    expect(new Set(from).size).toBe(from.length);
  });

  it('words do not say “nearest”', () => {
    expect(firstTryWords(worked, 'spurs')).not.toContain('nearest');
    expect(firstTryWords(foundIn('saltglass-row'), 'spurs')).toContain('nearest');
  });

  it('words say of fused units that each has a fused spur', () => {
    const points = worked.job.points.map((point) =>
      point.status === 'wanted' ? { ...point, kind: 'fused-unit' as const } : point,
    );
    const wanted = points.filter(({ status }) => status === 'wanted').map(({ label }) => label);
    const words = firstTryWords({ ...worked, job: { ...worked.job, points } }, 'ring');
    expect(words).toMatch(/ by a fused spur each$/);
    for (const label of wanted) expect(words).toContain(label);
  });
});
