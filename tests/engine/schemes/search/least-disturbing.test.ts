import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { findSchemes, searcher } from '#engine/find-schemes.ts';
import type { TaskId } from '#engine/labour/known-tasks.ts';
import { unitMess } from '#engine/labour/mess.ts';
import { byMess, byPence, weightOf } from '#engine/schemes/search/aim.ts';
import type { FoundScheme, SearchResult } from '#engine/schemes/search/found-schemes.ts';
import { pinnedRuns } from '#engine/schemes/search/pins.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { worksApart, worksOfScheme } from '#engine/schemes/search/works-of-scheme.ts';
import { tariffFor } from '#engine/schemes/tariff.ts';
import { workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import type { Connection, Remedy, Scheme, Tap } from '#model/scheme.ts';
import { houseOf } from '../../../houses/house-of.ts';
import { demoJob, demoNames } from '../../demo-jobs/demo-estimates.ts';
import { everyScheme } from './every-scheme.ts';
import { randomHouse } from './random-house.ts';

const library = demoLibrary();
const when = { date: '2026-11-25', revision: 1 };

const groundOf = (job: Job) => {
  const house = workHouse(job, tariffFor(job, library), defaultLengthAllowances);
  return searchGround(house, library, { ways: waysInHouse(house, library) });
};

const leastOf = ({ disturbance, schemes }: SearchResult): FoundScheme | undefined =>
  schemes.find(({ scheme }) => scheme.id === disturbance?.schemeId);

/** An id that the job file takes, and that nothing else has. */
const idInJob = ({ id }: Scheme): string => id.replace('/', '-scheme-');

const isPinned = ({ scheme }: FoundScheme): boolean =>
  scheme.connections.some(({ runs }) => runs !== undefined);

/** Houses of two storeys whose rings have no RCD, beside the demo jobs. */
const jobs: readonly (readonly [string, Job])[] = [
  ...demoNames.map((name) => [name, demoJob(name)] as const),
  ...[1, 2, 8].map(
    (seed) => [`a house, seed ${seed}`, houseOf({ seed, rooms: 8, wanted: 3, rcd: seed > 1 })] as const,
  ),
];

describe.each(jobs)('both ends for %s', (_, job) => {
  const found = findSchemes(job, library);
  const least = leastOf(found);

  it('are proved, and nothing that was found disturbs less than the one called least', () => {
    expect([found.optimal, found.disturbance?.optimal]).toEqual([true, true]);
    expect(least?.worksPoints).toBe(found.disturbance?.boundPoints);
    for (const { worksPoints } of found.schemes)
      expect(worksPoints).toBeGreaterThanOrEqual(least?.worksPoints ?? Number.POSITIVE_INFINITY);
    expect(Math.min(...found.schemes.map(({ worksPence }) => worksPence))).toBe(found.boundPence);
  });

  it('stand in one list without doubles, in the order of the full price', () => {
    const named = found.schemes.map(({ scheme }) => JSON.stringify([scheme.connections, scheme.remedies]));
    expect(new Set(named).size).toBe(named.length);
    expect(found.schemes.map(({ scheme }) => scheme.id)).toEqual(named.map((__, i) => `found/${i + 1}`));
    const gross = found.schemes.map(({ estimate: { totals } }) => totals.grossPence);
    expect(gross).toEqual(gross.toSorted((a, b) => a - b));
  });

  it('are read, pass every rule and come to the same, pinned ways and all, as schemes of the job', () => {
    const schemes = found.schemes
      .filter((one) => isPinned(one) || one === least)
      .map(({ scheme }) => ({ ...scheme, id: idInJob(scheme) }));
    const read = readJob(JSON.parse(JSON.stringify({ ...job, schemes })));
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    const again = estimate(read.job, library, when).schemes;
    expect(again).toHaveLength(schemes.length);
    for (const one of again) {
      const before = found.schemes.find(({ scheme }) => idInJob(scheme) === one.id)?.estimate;
      expect(one.complies, one.name).not.toBe('no');
      expect([one.totals, one.messPoints], one.name).toEqual([before?.totals, before?.messPoints]);
      expect(one.runs, one.name).toEqual(before?.runs);
    }
  });

  it('differ in disturbance as their estimates do, but for what a room takes once and what openings and chases share', () => {
    // A room set up for chasing and a covering rolled back count once in an estimate and in no column; a board that two
    // cables share counts once in the estimate and in both columns, and so does a chase of two connections. Quantities are rounded
    // to a tenth of a metre there.
    const messOf = (...tasks: readonly TaskId[]): number =>
      tasks.reduce((sum, task) => sum + unitMess(task, library.norms), 0);
    const BOARD = messOf('lift-board');
    const CHASE = messOf('chase-block', 'contain-chase', 'fill-chase');
    const onceARoom = ({ estimate: { labour } }: FoundScheme): number =>
      labour
        .filter(({ task }) => task === 'chase-set-up' || task === 'roll-covering')
        .reduce((sum, { task, quantity }) => sum + quantity * unitMess(task, library.norms), 0);
    const boards = ({ estimate: { labour } }: FoundScheme): number =>
      labour.reduce((sum, { task, quantity }) => sum + (task === 'lift-board' ? quantity : 0), 0);
    const sharedM = ({ estimate: { runs } }: FoundScheme): number =>
      runs
        .flatMap(({ segments }) => segments)
        .reduce((sum, { oneChase, lengthMm }) => sum + (oneChase === undefined ? 0 : lengthMm / 1000), 0);
    const offsets = found.schemes.map((one) => one.estimate.messPoints - onceARoom(one) - one.worksPoints);
    const most = Math.max(...found.schemes.map(boards));
    const mostM = Math.max(...found.schemes.map(sharedM));
    expect(Math.max(...offsets) - Math.min(...offsets)).toBeLessThan(2 + BOARD * most + CHASE * mostM);
  });

  it('are the same for a walk over the wiring, by the ways that are pinned', () => {
    const ground = groundOf(job);
    // A unit's box is weighed once a wall: where the wall is of two builds, plaster is filled round some boxes alone.
    const FILLED = unitMess('fill-box', library.norms);
    const offsets = found.schemes.map(
      ({ scheme, worksPoints }) => worksOfScheme(ground, scheme).mess - worksPoints,
    );
    expect(Math.max(...offsets) - Math.min(...offsets)).toBeLessThan(FILLED + 0.01);
  });
});

describe('schemes in between', () => {
  it.each([
    [1, 3],
    [6, 2],
  ])('are what weighs least where both ends weigh the same, in the house of seed %i', (seed, fewest) => {
    const job = houseOf({ seed, rooms: 8, wanted: 3 });
    const both = findSchemes(job, library, { most: 1, kinds: false }).schemes;
    const looked = (['pence', 'mess'] as const).flatMap(
      (aim) => findSchemes(job, library, { aim, kinds: false }).schemes,
    );
    const byMoney = both.toSorted((a, b) => a.worksPence - b.worksPence);
    const [cheap, calm] = [byMoney[0], both.toSorted((a, b) => a.worksPoints - b.worksPoints)[0]];
    if (cheap === undefined || calm === undefined) throw new Error('two ends are wanted');
    expect(both.length).toBeGreaterThanOrEqual(fewest);
    const pencePerPoint = (calm.worksPence - cheap.worksPence) / (cheap.worksPoints - calm.worksPoints);
    const weight = (one: FoundScheme): number => one.worksPence + pencePerPoint * one.worksPoints;
    // Pence are rounded, and the worth of a point to a millionth of a pound.
    const least = Math.min(...both.map(weight));
    for (const one of looked) expect(weight(one)).toBeGreaterThan(least - 2);
    const middle = both.filter((one) => one !== cheap && one !== calm);
    for (const one of middle) {
      expect(one.worksPence).toBeGreaterThanOrEqual(cheap.worksPence);
      expect(one.worksPoints).toBeGreaterThanOrEqual(calm.worksPoints);
    }
  });
});

describe.each([
  ['demo 1', demoJob('saltglass-row')],
  ['a house, seed 8', houseOf({ seed: 8, rooms: 8, wanted: 3 })],
] as const)('ways that are pinned in %s', (_, job) => {
  const { schemes } = findSchemes(job, library, { aim: 'mess' });
  const pinned = schemes.filter(isPinned);
  const ground = groundOf(job);

  it('are there, and disturb less for more money than the ways that are found without', () => {
    expect(pinned.length).toBeGreaterThan(0);
    const isInPartyWall = ({ wallId }: { readonly wallId: string | null }): boolean =>
      ground.house.plan.wallById.get(wallId ?? '')?.wall.party === true;
    for (const { scheme, estimate: told } of pinned) {
      const bare = scheme.connections.map(({ runs: __, ...each }) => each as Connection);
      const [by, without] = [scheme, { ...scheme, connections: bare }].map((one) =>
        worksOfScheme(ground, one),
      );
      expect(by?.mess).toBeLessThan(without?.mess ?? 0);
      // The cheapest way keeps out of party walls where it costs little to: a chase in one may be cheaper than it.
      if (told.runs.some((run) => run.pinned && run.segments.some(isInPartyWall))) continue;
      expect(by?.millipence).toBeGreaterThan(without?.millipence ?? 0);
    }
  });

  it('are those of the cables that the aim wants elsewhere, each laid corner by corner, and of no other', () => {
    for (const { scheme, estimate: told } of pinned)
      for (const { id, runs = [] } of scheme.connections) {
        const laid = told.runs.filter(({ connectionId, pinned: isSo }) => connectionId === id && isSo);
        const asked = runs.filter(({ via }) => via.length > 0);
        expect(laid).toHaveLength(asked.length);
        for (const { via } of asked) {
          const isBy = ({ segments }: (typeof laid)[number]): boolean =>
            via.every(({ at }, i) => segments[i]?.to.at[0] === at[0] && segments[i]?.to.at[1] === at[1]);
          expect(laid.filter(isBy), scheme.name).toHaveLength(1);
        }
      }
  });

  it('are all that the aim asks for: none is left out, and none stands where the cheapest way disturbs as little', () => {
    for (const { scheme } of schemes) {
      const own = scheme.connections.map(({ runs = [] }) => runs);
      expect(pinnedRuns({ ground, aim: byMess }, scheme), scheme.name).toEqual(own);
      expect(pinnedRuns({ ground, aim: byPence }, scheme).flat()).toEqual([]);
    }
  });
});

describe('the search by one aim alone', () => {
  const job = demoJob('fernlow-close');

  it('leaves the other out', () => {
    const money = findSchemes(job, library, { aim: 'pence', most: 3, kinds: false });
    expect([money.disturbance, money.schemes.length]).toEqual([null, 3]);
    const mess = findSchemes(job, library, { aim: 'mess', most: 3, kinds: false });
    expect([mess.optimal, mess.boundPence, mess.gap]).toEqual([false, 0, null]);
    expect(mess.disturbance).toMatchObject({ optimal: true, gap: 0 });
    expect(mess.schemes).toHaveLength(3);
  });

  it('says the least disturbing in a step of its own, after the cheapest and before any price', () => {
    const steps = searcher(library).steps(job, { most: 2, kinds: false });
    const said: string[] = [];
    for (let next = steps.next(); !next.done; next = steps.next()) {
      said.push(next.value.step);
      if (next.value.step === 'least')
        expect(next.value.least).toMatchObject({
          optimal: true,
          gap: 0,
          worksPoints: next.value.least.boundPoints,
        });
    }
    const places = ['first', 'least', 'priced'].map((step) => said.indexOf(step));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(said.filter((step) => step === 'least')).toHaveLength(1);
  });

  it('gives equal answers to equal questions', () => {
    const brief = () =>
      findSchemes(job, library, { most: 4, kinds: false }).schemes.map(({ scheme, worksPoints }) => [
        scheme,
        worksPoints,
      ]);
    expect(brief()).toEqual(brief());
  });
});

const tapOf = (from: Tap) => ('leg' in from ? from.leg : from);

/** What connections are for and where they start, whatever order, opening, tree or place of a unit they have. */
const kindOf = (connections: readonly Connection[]): string =>
  JSON.stringify(
    connections.map((connection) => {
      const { kind } = connection;
      const pointsOf = (feeds: readonly { readonly to: string }[]) => feeds.map(({ to }) => to).toSorted();
      if (kind === 'ring-extension') return [kind, connection.leg, connection.through.toSorted()];
      if (kind === 'radial') return [kind, connection.device.ratingA, pointsOf(connection.feeds)];
      if (kind === 'fused-spur')
        return [kind, tapOf(connection.from), typeof connection.unit, pointsOf(connection.feeds)];
      if (kind !== 'fuse-down') return connection;
      const fed = new Set(connection.feeds.map(({ to }) => to));
      const starts = [...new Set(connection.feeds.map(({ from }) => from))].filter((from) => !fed.has(from));
      return [kind, connection.leg, starts.toSorted(), [...fed].toSorted()];
    }),
  );

/** A fifth of a point: an addition that no scheme of these houses makes by accident. */
const SLIP_POINTS = 0.2;

describe('no scheme that anybody could write down disturbs less and passes', () => {
  it.each([1, 2, 3, 4, 5, 6])(
    'seed %i: 3 found, 2 wanted',
    (seed) => {
      const job = randomHouse(seed, { found: 3, wanted: 2 });
      const ground = groundOf(job);
      const found = findSchemes(job, library, { aim: 'mess', most: 1 });
      expect(found.disturbance?.optimal).toBe(true);
      const messOf = (scheme: Scheme): number => worksOfScheme(ground, scheme, byMess).mess;
      const best = leastOf(found);
      const least = best === undefined ? Number.POSITIVE_INFINITY : messOf(best.scheme);
      const schemeOf = (connections: readonly Connection[], remedies: readonly Remedy[] = []): Scheme => ({
        ...{ id: 'tried', name: '', connections: [...connections], remedies: [...remedies], locks: [] },
      });
      const pinned = (scheme: Scheme): Scheme => {
        const runs = pinnedRuns({ ground, aim: byMess }, scheme);
        return {
          ...scheme,
          connections: scheme.connections.map((each, i) => ({ ...each, runs: [...(runs[i] ?? [])] })),
        };
      };
      const passes = (scheme: Scheme): boolean => {
        const [one] = estimate({ ...job, schemes: [scheme] }, library, when, { depth: 'live' }).schemes;
        return (
          one?.findings.every(
            ({ outcome, origin, gates }) => !(outcome === 'fails' && origin === 'scheme' && gates),
          ) === true
        );
      };
      const every = everyScheme(job);
      const byKind = new Map<string, (readonly Connection[])[]>();
      for (const each of every) byKind.set(kindOf(each), [...(byKind.get(kindOf(each)) ?? []), each]);
      // Of those that are alike but for what goes by which cable, the search looks at the calmest with each cable by itself.
      const apart = new Map<readonly Connection[], number>();
      const apartOf = (each: readonly Connection[]): number => {
        const weight = apart.get(each) ?? weightOf(byMess, worksApart(ground, schemeOf(each), byMess));
        apart.set(each, weight);
        return weight;
      };
      const isLookedAt = (each: readonly Connection[]): boolean =>
        (byKind.get(kindOf(each)) ?? []).every((other) => apartOf(each) <= apartOf(other));
      const calmer = every.filter((each) => messOf(schemeOf(each)) < least - SLIP_POINTS && isLookedAt(each));
      const rcbo: readonly Remedy[] = [{ kind: 'rcbo', at: 'c' }];
      const passing = calmer.filter((each) =>
        [[], rcbo].some((remedies) => passes(pinned(schemeOf(each, remedies)))),
      );
      expect(passing, `seed ${seed}: ${best?.scheme.name}`).toEqual([]);
    },
    120_000,
  );
});
