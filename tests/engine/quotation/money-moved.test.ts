import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { type MoneyMoved, type MoveRequest, moneyMoved, movingMoney } from '#engine/quotation/money-moved.ts';
import { jobSteps } from '#engine/quotation/moved/job-steps.ts';
import { schemeState } from '#engine/quotation/moved/priced-state.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { afterEdits, editSequence } from '#tests/ui/edits/any-edits.ts';
import { afterWayEdits, houses, wayEditSequence } from '#tests/ui/edits/any-way-edits.ts';
import { faultsOf } from '#tests/ui/edits/random-edits.ts';

const when = { date: '2026-11-26', revision: 1 };

/** What the front door says that the scheme costs. */
function quoted(job: Job, library: Library, schemeId: string): number | undefined {
  const result = estimate(job, library, when, { schemeIds: [schemeId], depth: 'live' });
  return result.schemes[0]?.totals.grossPence;
}

const grossOf = ({ parts }: MoneyMoved): number =>
  parts.reduce((sum, { figures }) => sum + figures.grossPence, 0);

/** The parts of a part: materials, labour, other sums, contingency, tax. */
const madeUp = ({ figures }: MoneyMoved['parts'][number]): number =>
  figures.materialsPence +
  figures.labourPence +
  figures.otherPence +
  figures.contingencyPence +
  figures.vatPence;

function movedOf(request: MoveRequest): MoneyMoved {
  const moved = moneyMoved(request);
  if (moved === null) throw new Error(`Scheme ${request.schemeId} is not in both jobs.`);
  return moved;
}

/** A firm that prices otherwise, by numbers. */
function otherLibrary(library: Library, [a, b, c]: readonly [number, number, number]): Library {
  const { prices, norms, terms } = library;
  const every = (index: number, number: number): boolean => (index + number) % 7 === 0;
  const { items, ...list } = prices;
  return {
    ...library,
    prices: {
      ...list,
      vat: c % 5 === 0 ? 'included' : prices.vat,
      items: items
        .filter((_, index) => a % 4 !== 0 || index % 11 !== 3)
        .map((price, index) => (every(index, a) ? { ...price, pricePence: price.pricePence + a } : price)),
    },
    norms: {
      ...norms,
      ratePencePerHour: norms.ratePencePerHour + (b % 3) * 100,
      ...(b % 4 === 0 ? { rateBasis: 'cost' as const, overhead: { percent: b } } : {}),
      tasks: norms.tasks.map((norm, index) =>
        every(index, b) ? { ...norm, typicalMin: norm.typicalMin + (b % 9) } : norm,
      ),
      sums: norms.sums.map((sum) => ({ ...sum, pence: sum.pence + c })),
      waste: { ...norms.waste, cable: c % 20 },
    },
    terms: { ...terms, ...(c % 2 === 0 ? { contingencyPercent: c % 20, travelMin: c } : {}) },
  };
}

const numbers = fc.tuple(fc.nat(60), fc.nat(60), fc.nat(60));

describe('what a price has moved by', () => {
  it.each(houses)(
    'adds up to the difference of the two estimates of $name, whatever has changed',
    (house) => {
      fc.assert(
        fc.property(wayEditSequence, editSequence, numbers, (ways, edits, more) => {
          const [before, library] = [house.job, demoLibrary()];
          const after = afterEdits(afterWayEdits(house, ways), edits);
          const other = otherLibrary(library, more);
          const schemeId = before.schemes[more[0] % before.schemes.length]?.id ?? '';
          const moved = moneyMoved({
            schemeId,
            before: { job: before, library },
            after: { job: after, library: other },
          });
          const [was, is] = [quoted(before, library, schemeId), quoted(after, other, schemeId)];
          const isThere = was !== undefined && is !== undefined;
          expect(moved === null ? null : [moved.beforePence, moved.afterPence]).toEqual(
            isThere ? [was, is] : null,
          );
          expect(moved === null ? null : grossOf(moved)).toBe(isThere ? is - was : null);
          for (const part of moved?.parts ?? []) expect(madeUp(part)).toBe(part.figures.grossPence);
        }),
        { numRuns: 6 },
      );
    },
    120_000,
  );

  it.each(houses)(
    'goes over jobs that can be read at every step of $name, and back again',
    (house) => {
      fc.assert(
        fc.property(wayEditSequence, editSequence, (ways, edits) => {
          const after = afterEdits(afterWayEdits(house, ways), edits);
          const schemeId = house.job.schemes[0]?.id ?? '';
          const library = demoLibrary();
          const states = [house.job, after].map((job) => schemeState({ job, library }, schemeId));
          const [one, other] = states;
          if (one == null || other == null) return;
          for (const [from, to] of [
            [one, other],
            [other, one],
          ] as const) {
            let state = from;
            for (const step of jobSteps(from.job, to.job)) {
              state = step.apply(state);
              const { quoting: _, ...job } = state.job as Job & { quoting?: unknown };
              expect([step.words, faultsOf({ ...job, schemes: [state.scheme] } as Job)]).toEqual([
                step.words,
                [],
              ]);
            }
          }
        }),
        { numRuns: 30 },
      );
    },
    120_000,
  );
});

describe('what a price has moved by, told', () => {
  const job = demoJob('saltglass-row');
  const library = demoLibrary();
  const [scheme] = job.schemes;
  const schemeId = scheme?.id ?? '';
  const before = { job, library };
  const result = estimate(job, library, when).schemes.find(({ id }) => id === schemeId);

  it('is nothing where nothing has changed', () => {
    expect(movedOf({ schemeId, before, after: before })).toEqual({
      beforePence: result?.totals.grossPence,
      afterPence: result?.totals.grossPence,
      parts: [],
      idle: [],
    });
  });

  it('is a price by what the bill charges of it, with mark-up, contingency and tax', () => {
    const line = result?.price.bill.find(({ item }) => item === 'socket-twin');
    if (line === undefined || result === undefined)
      throw new Error('The demo job wants a twin socket-outlet.');
    const dearer = (more: number): Library => ({
      ...library,
      prices: {
        ...library.prices,
        items: library.prices.items.map((price) =>
          price.item === line.item ? { ...price, pricePence: price.pricePence + more } : price,
        ),
      },
    });
    const moved = movedOf({ schemeId, before, after: { job, library: dearer(100) } });
    expect(moved.parts.map(({ cause, words }) => [cause, words])).toEqual([
      ['price', `Price of ${line.description}`],
    ]);
    // By hand: so many more pounds at the quantity charged, marked up, the contingency on that, then the tax.
    const costPence = (line.chargedQuantity / line.perQuantity) * 100;
    const soldPence = costPence * (1 + result.price.markupPercent / 100);
    const netPence = soldPence * (1 + result.price.contingencyPercent / 100);
    const grossPence = netPence * (1 + result.price.vatPercent / 100);
    expect(Math.abs((moved.parts[0]?.figures.grossPence ?? 0) - grossPence)).toBeLessThan(3);
    expect(moved.parts[0]?.detail).toMatch(/^£[\d,]+\.\d\d.*, was £[\d,]+\.\d\d/);
  });

  it('names the point that moved, and by how much cable', () => {
    const wanted = job.points.find(
      ({ status, place }) => status === 'wanted' && place !== undefined && 'wall' in place,
    );
    if (wanted?.place === undefined || !('wall' in wanted.place))
      throw new Error('No wanted point on a wall.');
    const place = { ...wanted.place, alongMm: wanted.place.alongMm + 300 };
    const after = { ...job, points: job.points.map((one) => (one === wanted ? { ...one, place } : one)) };
    const moved = movedOf({ schemeId, before, after: { job: after, library } });
    expect(moved.parts.map(({ words, subjects }) => [words, subjects])).toEqual([
      [`${wanted.label}: moved`, [wanted.id]],
    ]);
    expect(moved.parts[0]?.figures.cableMm).not.toBe(0);
  });

  it('takes a window that a new part of a wall has along from the wall it was in', () => {
    const walls = job.storeys.flatMap((storey) => storey.walls);
    const wall = walls.find(({ openings }) => openings.length > 0);
    if (wall === undefined) throw new Error('The demo house has a window.');
    const part = { ...wall, id: 'part-of-it' };
    const after: Job = {
      ...job,
      storeys: job.storeys.map((storey) => ({
        ...storey,
        walls: storey.walls.flatMap((one) => (one === wall ? [{ ...wall, openings: [] }, part] : [one])),
      })),
    };
    const [from, to] = [job, after].map((one) => schemeState({ job: one, library }, schemeId));
    if (from == null || to == null) throw new Error('The demo job has a scheme.');
    const [added] = jobSteps(from.job, to.job);
    const between = added?.apply(from).job.storeys.flatMap((storey) => storey.walls) ?? [];
    const carriers = between.filter(({ openings }) => openings.some(({ id }) => id === wall.openings[0]?.id));
    expect(carriers.map(({ id }) => id)).toEqual([part.id]);
  });

  it('begins with what another version of the program makes of it', () => {
    const now = result?.totals.grossPence ?? 0;
    const moved = movedOf({ schemeId, before, after: before, quotedPence: now - 250 });
    expect([moved.beforePence, moved.afterPence]).toEqual([now - 250, now]);
    expect(moved.parts.map(({ cause, figures }) => [cause, figures.grossPence])).toEqual([['engine', 250]]);
  });

  it('puts the firm before the job and says which changes move no money', () => {
    const after = {
      job: { ...job, terms: { ...job.terms, validDays: 7, travelMin: 55 }, stock: [] },
      library: {
        ...library,
        norms: { ...library.norms, ratePencePerHour: library.norms.ratePencePerHour + 500 },
      },
    };
    const moved = movedOf({ schemeId, before, after });
    expect(moved.parts.map(({ words }) => words).slice(0, 2)).toEqual(['Hourly rate', 'Travel']);
    expect(moved.idle).toContain('Days the price holds');
  });

  it('is nothing where only the van holds otherwise', () => {
    const stock = [
      { item: 'socket-twin', quantity: 3 },
      { item: 'cable-flat-2.5-1.5', quantity: 12 },
    ];
    const moved = movedOf({ schemeId, before, after: { job: { ...job, stock }, library } });
    expect(moved).toMatchObject({ parts: [], idle: [] });
    expect(moved.afterPence).toBe(moved.beforePence);
  });

  it('is the same twice over, and is worked out with a pause after each change', () => {
    const request = {
      schemeId,
      before,
      after: { job: { ...job, terms: { ...job.terms, travelMin: 99 } }, library },
    };
    const moving = movingMoney(request);
    let pauses = 0;
    let step = moving.next();
    for (; step.done !== true; step = moving.next()) pauses++;
    expect(pauses).toBeGreaterThanOrEqual(2);
    expect(step.value).toEqual(moneyMoved(request));
  });

  it('is not to be had where a scheme is gone', () => {
    const after = { job: { ...job, schemes: [] }, library };
    expect(moneyMoved({ schemeId, before, after })).toBeNull();
  });
});
