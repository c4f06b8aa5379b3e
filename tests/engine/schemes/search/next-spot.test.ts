import { describe, expect, it } from 'vitest';
import { allRules } from '#engine/all-rules.ts';
import { rule } from '#engine/rules/rule.ts';
import { factsOf } from '#engine/schemes/facts-of.ts';
import type { SchemeColumn } from '#engine/schemes/search/scheme-column.ts';
import { searchSchemes } from '#engine/schemes/search/search.ts';
import { spotsInTurn } from '#engine/schemes/search/spots-in-turn.ts';
import { noWorks } from '#engine/schemes/search/works.ts';
import { workScheme } from '#engine/schemes/work-scheme.ts';
import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { fourWalls, room, storey, timberFloor } from '../../plan/small-house.ts';
import { boardOf, circuitOf, jobOf, legOf, pointOf } from '../../rules/facts-builder.ts';
import { bruteTrial, leastFound, library, passingBelow, SLIP } from './brute-trial.ts';
import { variedHouse } from './varied-house.ts';

/** A room of 12 m by 12 m with a radial of one leg along its front, so many mm of cable; an outlet is wanted far behind it. */
function longRadial(lengthMm: number): Job {
  const { walls, sides } = fourWalls(12_000, 12_000);
  const device = {
    standard: 'BS-EN-61009',
    curve: 'B',
    ratingA: 20,
    rcd: { type: 'A', mA: 30 },
  } as const;
  const via = [550, 11_500].map((x) => ({
    storey: 'gf',
    at: [x, 0] as [number, number],
    heightMm: -110,
  }));
  return jobOf({
    storeys: [storey('gf', { floor: timberFloor, walls, rooms: [room('room', sides)] })],
    boards: [
      boardOf('b1', { place: { wall: 's', side: 'left', alongMm: 500, heightMm: 1500 }, spareWays: 0 }),
    ],
    circuits: [circuitOf('c', { shape: 'radial', device, certainty: { order: 'measured' } })],
    points: [
      pointOf('p1', {
        circuit: 'c',
        kind: 'socket-single',
        place: { wall: 's', side: 'left', alongMm: 11_500, heightMm: 450 },
        // It is full, so nothing is joined on there.
        asFound: { boxDepthMm: 35, cablesSeen: 3 },
      }),
      pointOf('w1', {
        status: 'wanted',
        place: { wall: 'n', side: 'left', alongMm: 1200, heightMm: 450 },
      }),
    ],
    legs: [{ ...legOf('l1', 'c', 'p1'), lengthMm, via, certainty: { length: 'measured', route: 'seen' } }],
  });
}

describe('the next spot of a leg, where a rule bars the first', () => {
  const spotIn = (connections: readonly Connection[] | undefined): number | null => {
    const [one] = connections ?? [];
    return one?.kind === 'spur' && 'leg' in one.from ? one.from.alongMm : null;
  };

  it('is found where the volt drop bars the nearest: before, the far dearer way from the board was called the cheapest', () => {
    const near = bruteTrial({ job: longRadial(22_000), allowAssumedLegs: [] }, { most: 2 });
    const far = bruteTrial({ job: longRadial(24_000), allowAssumedLegs: [] }, { most: 2 });
    const [nearest, further] = [near, far].map(({ found }) => found.schemes.toSorted(byWorks)[0]);
    // As shares of the leg: at 24 m the joint is nearer to the board than at 22 m, and its spur longer.
    const [one, other] = [spotIn(nearest?.scheme.connections), spotIn(further?.scheme.connections)];
    expect((one ?? 0) / 22_000).toBeGreaterThan((other ?? 1) / 24_000 + 0.1);
    expect(further?.worksPence).toBeGreaterThan(nearest?.worksPence ?? Number.POSITIVE_INFINITY);
    const origin = far.found.schemes.find(({ scheme }) => spotIn(scheme.connections) === null);
    expect(origin?.worksPence).toBeGreaterThan((further?.worksPence ?? 0) + 5000);
    for (const trial of [near, far]) {
      expect(trial.found.optimal).toBe(true);
      const best = leastFound(trial);
      expect(passingBelow(trial, (best?.millipence ?? 0) - SLIP)).toEqual([]);
    }
  });

  it.each([18, 24])(
    'is the best of all that can be written down but for what is barred: house %i',
    (seed) => {
      const varied = variedHouse(seed, 1);
      const trial = bruteTrial(varied);
      const { house } = trial.force.trial;
      const first = leastFound(trial)?.scheme.connections;
      const barred = /"alongMm":\d+/.exec(JSON.stringify(first))?.[0];
      if (barred === undefined) throw new Error(`seed ${seed}: no joint in the cheapest`);
      const notThere = rule({
        ...{ id: 'T4', title: 'Joints', source: 'this test', couldFail: true },
        messages: { there: 'A joint there.' },
        check: ({ scheme }) =>
          JSON.stringify(scheme?.connections ?? []).includes(barred)
            ? [{ outcome: 'fails', origin: 'scheme', messageId: 'there', subjectId: 'way-1' }]
            : [],
      });
      const { proofs: proofsFound } = factsOf(workScheme(house, null), library, null);
      const again = searchSchemes(
        { house, library, rules: [...allRules, notThere], proofsFound },
        { aim: 'pence', most: 1, kinds: false, allowAssumedLegs: varied.allowAssumedLegs },
      );
      const best = again.schemes.toSorted(byWorks)[0];
      if (best === undefined) throw new Error(`seed ${seed}: nothing else found`);
      expect(again.optimal).toBe(true);
      expect(JSON.stringify(best.scheme.connections)).not.toContain(barred);
      const cheaper = passingBelow(trial, trial.priceOf(best.scheme) - SLIP).filter(
        ({ connections }) => !JSON.stringify(connections).includes(barred),
      );
      expect(cheaper).toEqual([]);
    },
  );
});

describe('the next place of a fused unit, where a rule bars the first', () => {
  it.each([6, 8, 16, 34])(
    'is the best of all that can be written down but for what is barred: house %i',
    (seed) => {
      const varied = variedHouse(seed, 2);
      const trial = bruteTrial(varied);
      const { house } = trial.force.trial;
      const { proofs: proofsFound } = factsOf(workScheme(house, null), library, null);
      const barring = (barred: readonly string[]) =>
        rule({
          ...{ id: 'T5', title: 'Places', source: 'this test', couldFail: true },
          messages: { there: 'A unit there.' },
          check: ({ scheme }) =>
            isBarred(scheme?.connections ?? [], barred)
              ? [{ outcome: 'fails', origin: 'scheme', messageId: 'there', subjectId: 'way-1' }]
              : [],
        });
      const search = (barred: readonly string[]) =>
        searchSchemes(
          { house, library, rules: [...allRules, barring(barred)], proofsFound },
          { aim: 'pence', most: 1, kinds: false, allowAssumedLegs: varied.allowAssumedLegs },
        );
      const first = search([]).schemes.toSorted(byWorks)[0];
      const places = unitPlaces(first?.scheme.connections ?? []);
      expect(places.length).toBeGreaterThan(0);
      const again = search(places);
      const best = again.schemes.toSorted(byWorks)[0];
      if (best === undefined) throw new Error(`seed ${seed}: nothing else found`);
      expect(again.optimal).toBe(true);
      expect(isBarred(best.scheme.connections, places)).toBe(false);
      const cheaper = passingBelow(trial, trial.priceOf(best.scheme) - SLIP).filter(
        ({ connections }) => !isBarred(connections, places),
      );
      expect(cheaper).toEqual([]);
    },
  );
});

/** Where fused units are brought along. */
const unitPlaces = (connections: readonly Connection[]): readonly string[] =>
  connections.flatMap((each) => {
    if (each.kind !== 'fused-spur' || typeof each.unit === 'string') return [];
    const { place } = each.unit;
    if (place === undefined || !('wall' in place)) return [];
    const { wall, side, alongMm, heightMm } = place;
    return [`${wall} ${side} ${alongMm} ${heightMm}`];
  });

/** Anything but fused branches, so that it hangs on where units stand; and those with a unit at a place that is barred. */
const isBarred = (connections: readonly Connection[], places: readonly string[]): boolean =>
  connections.some((each) => unitPlaces([each]).length === 0) ||
  unitPlaces(connections).some((place) => places.includes(place));

const byWorks = (a: { readonly worksPence: number }, b: { readonly worksPence: number }): number =>
  a.worksPence - b.worksPence;

describe('columns of one leg in turn', () => {
  const column = (key: string, cost: number, mask = 1): SchemeColumn => ({
    ...{ key, cost, mask, kind: 'spurs', circuitIds: ['c'] },
    works: () => noWorks,
    parts: () => [],
  });

  it('are the least of each set, then by cost and key; made again only where they are asked for, and once', () => {
    const columns = [column('b', 5), column('a', 5), column('c', 3), column('d', 9, 2)];
    let made = 0;
    const all = () => {
      made += 1;
      return columns;
    };
    const [first, alone] = spotsInTurn(columns, all);
    expect([first?.key, alone?.key, made]).toEqual(['c', 'd', 0]);
    const second = first?.next?.() ?? null;
    expect(first?.next?.()).toBe(second);
    expect([second?.key, second?.next?.()?.key, second?.next?.()?.next?.()]).toEqual(['a', 'b', null]);
    expect(alone?.next?.()).toBeNull();
    expect(made).toBe(1);
  });
});
