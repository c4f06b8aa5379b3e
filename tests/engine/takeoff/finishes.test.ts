import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { plateFinish } from '#engine/connections/finish.ts';
import { estimate } from '#engine/estimate.ts';
import { accessoryDemands, accessoryItem } from '#engine/takeoff/accessory-lines.ts';
import { earthDemands } from '#engine/takeoff/earth-lines.ts';
import { knownItems } from '#engine/takeoff/items.ts';
import { usualCounts } from '#engine/takeoff/kit-counts.ts';
import { finish } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { legEdge, newEdge, pointOf, wanted } from '#tests/engine/connections/wiring-builder.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { measuredByItem, workedOf } from './worked-builder.ts';

const known = new Set(knownItems.map(({ id }) => id));
const when = { date: '2026-11-26', revision: 1 };
const saltglass = demoJob('saltglass-row');

const inFinish = (jobFinish: Job['terms']['finish'], ofW2?: 'white' | 'black'): Job => ({
  ...saltglass,
  terms: { ...saltglass.terms, ...(jobFinish && { finish: jobFinish }) },
  points: saltglass.points.map((point) =>
    point.label === 'W2' && ofW2 ? { ...point, finish: ofW2 } : point,
  ),
});

function schemeIn(job: Job) {
  const [scheme] = estimate(job, demoLibrary(), when).schemes;
  return scheme ?? expect.fail('no scheme');
}
const accessoriesOf = (job: Job): Record<string, number> =>
  Object.fromEntries(
    schemeIn(job)
      .takeoff.filter(({ group, item }) => group === 'accessories' && !item.startsWith('fuse-'))
      .map(({ item, quantity }) => [item, quantity]),
  );

describe('the finish of a plate', () => {
  it('is the point’s own, else metal that was said of it, else the job’s, else the firm’s, else white', () => {
    const firm = { finish: 'polished' } as const;
    expect(plateFinish({ finish: 'black', features: ['metal'] }, { finish: 'brushed' }, firm)).toBe('black');
    expect(plateFinish({ features: ['metal'] }, { finish: 'brushed' }, firm)).toBe('metal');
    expect(plateFinish({ features: [] }, { finish: 'brushed' }, firm)).toBe('brushed');
    expect(plateFinish({ features: [] }, { finish: 'white' }, firm)).toBe('white');
    expect(plateFinish({ features: [] }, {}, firm)).toBe('polished');
    expect(plateFinish(null, {}, firm)).toBe('polished');
    expect(plateFinish({ features: [] }, {}, {})).toBe('white');
    expect(plateFinish({ features: [] }, {}, null)).toBe('white');
    expect(plateFinish(null, { finish: 'polished' }, null)).toBe('polished');
  });

  it('is plastic where it is weatherproof', () => {
    expect(plateFinish({ finish: 'black', features: ['ip66'] }, { finish: 'brushed' }, null)).toBe('white');
    expect(plateFinish({ features: ['ip66'] }, {}, { finish: 'brushed' })).toBe('white');
  });

  it('is asked for as an item of the list, for all that is fitted in any finish', () => {
    const kinds = [
      ['socket-single', ['metal']],
      ['socket-twin', ['metal']],
      ['socket-twin', ['metal', 'usb']],
      ['socket-twin', ['metal', 'rcd']],
      ['fused-unit', ['metal', 'switched']],
      ['fused-unit', ['metal', 'switched', 'neon', 'flex']],
      ['fused-unit', ['metal', 'rcd', 'flex']],
      ['flex-outlet', ['metal']],
      ['dp-switch', ['metal']],
      ['cooker-control', ['metal']],
      ['shaver', ['metal']],
      ['blank', ['metal']],
      ['blank', ['metal', 'twin']],
    ] as const;
    const metals = [undefined, ...finish.options.filter((one) => one !== 'white')];
    const items = metals.flatMap((look) =>
      kinds.map(([kind, features]) =>
        accessoryItem({ id: 'w', pointId: 'w', kind, features, ...(look && { finish: look }) }),
      ),
    );
    expect(items.filter((item) => !known.has(item))).toEqual([]);
    expect(new Set(items).size).toBe(items.length);
  });
});

describe('a job in a finish', () => {
  it('buys all its plates in it, one with a finish of its own apart', () => {
    expect(accessoriesOf(saltglass)).toEqual({ 'fused-unit-switched-flex': 1, 'socket-twin': 3 });
    expect(accessoriesOf(inFinish('brushed'))).toEqual({
      'fused-unit-switched-flex-brushed': 1,
      'socket-twin-brushed': 3,
    });
    expect(accessoriesOf(inFinish('brushed', 'white'))).toEqual({
      'fused-unit-switched-flex-brushed': 1,
      'socket-twin-brushed': 2,
      'socket-twin': 1,
    });
    expect(accessoriesOf(inFinish(undefined, 'black'))).toMatchObject({
      'socket-twin-black': 1,
      'socket-twin': 2,
    });
  });

  it('is the firm’s where job and points say nothing, and the job’s where it says white', () => {
    const plain = demoLibrary();
    const black = { ...plain, terms: { ...plain.terms, finish: 'black' as const } };
    const items = (job: Job) =>
      estimate(job, black, when)
        .schemes[0]?.takeoff.filter(({ item }) => item.startsWith('socket-twin'))
        .map(({ item, quantity }) => [item, quantity]);
    expect(items(saltglass)).toEqual([['socket-twin-black', 3]]);
    expect(items(inFinish('white'))).toEqual([['socket-twin', 3]]);
    expect(items(inFinish(undefined, 'white'))).toEqual([
      ['socket-twin', 1],
      ['socket-twin-black', 2],
    ]);
  });

  it('has the heads of the longer screws of its metal plates in their metal', () => {
    const screws = (job: Job) =>
      schemeIn(job)
        .takeoff.filter(({ item }) => item.startsWith('screw-m3.5'))
        .map(({ item, measured, causes }) => [item, measured, causes.length]);
    expect(screws(saltglass)).toEqual([['screw-m3.5-50', 8, 4]]);
    // R8 is exchanged under the plate that it has.
    expect(screws(inFinish('polished'))).toEqual([
      ['screw-m3.5-50', 2, 1],
      ['screw-m3.5-50-polished', 6, 3],
    ]);
  });

  it('is priced from the list by what its plates and their screws cost there, and by nothing else', () => {
    const { items } = demoLibrary().prices;
    const penceOf = (item: string) => items.find((price) => price.item === item)?.pricePence ?? Number.NaN;
    const linePence = (job: Job, item: string) =>
      schemeIn(job).price.bill.find((line) => line.item === item)?.costPence ?? 0;
    const screws = (['screw-m3.5-50', 'screw-m3.5-50-black'] as const).reduce(
      (sum, item) => sum + linePence(inFinish('black'), item) - linePence(saltglass, item),
      0,
    );
    const dearer =
      screws +
      3 * (penceOf('socket-twin-black') - penceOf('socket-twin')) +
      penceOf('fused-unit-switched-flex-black') -
      penceOf('fused-unit-switched-flex');
    const cost = (job: Job) => schemeIn(job).price.materialsCostPence;
    expect(cost(inFinish('black')) - cost(saltglass)).toBe(dearer);
    expect(dearer).toBeGreaterThan(0);
  });

  it('says so where the list has no such plate', () => {
    const library = demoLibrary();
    library.prices.items = library.prices.items.filter(({ item }) => item !== 'socket-twin-black');
    const [scheme] = estimate(inFinish('black'), library, when).schemes;
    expect(scheme?.price.bill.find(({ item }) => item === 'socket-twin-black')?.priced).toBe(false);
    const words = scheme?.findings.map(({ message }) => message).join(' ') ?? '';
    expect(words).toContain('black metal plate');
  });

  it('wants 35 mm of a box for a metal plate, 25 mm for a white one', () => {
    const boxOf = (job: Job) => schemeIn(job).boxes.find(({ id }) => id === idOf('W2'))?.minimumDepthMm;
    expect([boxOf(saltglass), boxOf(inFinish('polished')), boxOf(inFinish('polished', 'white'))]).toEqual([
      25, 35, 25,
    ]);
  });
});

const idOf = (label: string): string => saltglass.points.find((point) => point.label === label)?.id ?? label;

describe('the earth of a metal plate', () => {
  /** A twin outlet in an old steel box, exchanged for a new one. */
  const exchanged = (rest: Parameters<typeof wanted>[1]) =>
    workedOf({
      points: [
        pointOf('a'),
        pointOf('old', { status: 'replaced', mount: 'flush' }),
        wanted('w', { replaces: 'old', ...rest }),
      ],
      foundEdges: [legEdge('l1', 'a', 'old')],
      newEdges: [newEdge('l1', 'a', 'w', { state: 'found', legId: 'l1' })],
    });

  it('is carried to the old steel box that it goes onto; a white plate needs none', () => {
    const tails = (rest: Parameters<typeof wanted>[1]) =>
      measuredByItem(earthDemands(exchanged(rest), usualCounts))['earth-single-2.5'];
    expect(tails({ finish: 'brushed' })).toBeCloseTo(0.15, 9);
    expect(exchanged({}).things.boxes.find(({ id }) => id === 'w')?.action).toBe('keep');
    expect(tails({})).toBeUndefined();
    expect(measuredByItem(accessoryDemands(exchanged({ finish: 'brushed' })))).toMatchObject({
      'socket-twin-brushed': 1,
    });
  });
});
