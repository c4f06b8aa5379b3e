import { describe, expect, it } from 'vitest';
import { knownTasks } from '#engine/labour/known-tasks.ts';
import { labourTasks } from '#engine/labour/labour-tasks.ts';
import { takeOff } from '#engine/takeoff/take-off.ts';
import { box, demoJob, emptyWorked, labourOf, library, workedDemo, workedWith } from './labour-material.ts';

const cases = ['saltglass-row', 'saltglass-row-quoting', 'fernlow-close'].flatMap((name) => {
  const job = demoJob(name);
  return job.schemes.map(({ id }) => ({ name, id, worked: workedDemo(job, id) }));
});
const order = knownTasks.map(({ id }) => id);

describe('the labour of a scheme', () => {
  it('is nothing for the house as found', () => {
    expect(labourTasks(emptyWorked({ scheme: null }), [], library.norms)).toEqual([]);
  });

  it('is nothing for a scheme that changes nothing', () => {
    const worked = emptyWorked();
    const job = { ...worked.job, points: worked.job.points.filter(({ status }) => status === 'existing') };
    expect(labourTasks({ ...worked, job }, [], library.norms)).toEqual([]);
  });

  it('has no minutes for a task without a norm, and keeps the task', () => {
    const norms = { ...library.norms, tasks: [] };
    const tasks = labourTasks(workedWith({ boxes: [box('w1')] }), [], norms);
    expect(tasks.map(({ task }) => task)).toContain('box-block-single');
    expect(
      tasks.filter(({ lowMin, typicalMin, highMin }) => (lowMin ?? typicalMin ?? highMin) !== null),
    ).toEqual([]);
  });

  it('counts set-up, cleaning and a trip to the merchant once, and no trip when the van holds all', () => {
    const worked = workedWith({ boxes: [box('w1'), box('w2')] });
    const labour = labourOf({ ...worked, job: { ...worked.job, stock: [] } });
    expect(labour.get('set-up')?.quantity).toBe(1);
    expect(labour.get('clean-up')?.quantity).toBe(1);
    const takeoff = takeOff(cases[0]?.worked ?? worked, library.norms.waste);
    const trip = (stock: typeof worked.job.stock) =>
      labourTasks({ ...worked, job: { ...worked.job, stock } }, takeoff, library.norms).find(
        ({ task }) => task === 'merchant-trip',
      );
    expect(trip([])).toMatchObject({ quantity: 1, lowQuantity: 0, highQuantity: 1 });
    const full = takeoff.map(({ item, quantity }) => ({ item, quantity }));
    expect(trip(full)).toMatchObject({ quantity: 0, highQuantity: 1 });
  });

  describe.each(cases)('of $name, $id', ({ worked }) => {
    const takeoff = takeOff(worked, library.norms.waste);
    const tasks = labourTasks(worked, takeoff, library.norms);

    it('says for every task what causes it', () => {
      expect(tasks.length).toBeGreaterThan(5);
      expect(tasks.filter(({ causes }) => causes.length === 0)).toEqual([]);
      for (const { causes } of tasks) expect(causes).toEqual([...new Set(causes)].sort());
    });

    it('is in the order of the work, each task once', () => {
      const ids = tasks.map(({ task }) => task);
      expect(ids).toEqual(order.filter((id) => ids.includes(id)));
    });

    it('has quantities and minutes that rise from low to high', () => {
      for (const task of tasks) {
        expect(task.lowQuantity).toBeLessThanOrEqual(task.quantity);
        expect(task.quantity).toBeLessThanOrEqual(task.highQuantity);
        expect(task.lowMin ?? Number.NaN).toBeLessThanOrEqual(task.typicalMin ?? Number.NaN);
        expect(task.typicalMin ?? Number.NaN).toBeLessThanOrEqual(task.highMin ?? Number.NaN);
      }
    });

    it('opens as many floors as the take-off has screws for: four to a board that lifts, eight to a trap', () => {
      const screws = takeoff.find(({ item }) => item === 'screw-floor')?.measured ?? 0;
      const openedBy = (opening: string) => tasks.find(({ task }) => task === opening)?.quantity ?? 0;
      const traps = openedBy('chipboard-trap') + openedBy('open-fixed-floor');
      expect(4 * openedBy('lift-board') + 8 * traps).toBe(screws);
    });

    it('tests and certifies every circuit that it touches', () => {
      const tested = tasks.find(({ task }) => task === 'test-circuit');
      expect(tested?.causes).toEqual([...worked.circuitIds].sort());
    });
  });

  it('is wider for the quoting visit than for the survey of the same house', () => {
    const spread = (name: string) => {
      const tasks = labourTasks(workedDemo(demoJob(name), 'spurs-rcbo'), [], library.norms);
      return tasks.reduce((sum, { lowQuantity, highQuantity }) => sum + highQuantity - lowQuantity, 0);
    };
    expect(spread('saltglass-row-quoting')).toBeGreaterThan(spread('saltglass-row'));
  });
});
