import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { knownTasks } from '#engine/labour/known-tasks.ts';
import { libraryFor, multipliersOf, usualMultipliers } from '#engine/labour/multipliers.ts';
import { stageMinutes } from '#engine/labour/stage-hours.ts';
import { taskMinutes } from '#engine/labour/task-minutes.ts';
import { tariffFor } from '#engine/schemes/tariff.ts';
import type { Terms } from '#model/job.ts';
import { demoJob, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const library = demoLibrary();
const terms = (multipliers?: string[]): Terms => ({
  labour: 'typical',
  vat: 'standard',
  ...(multipliers === undefined ? {} : { multipliers }),
});
const stageOf = (task: string) => knownTasks.find(({ id }) => id === task)?.stage;

describe('multipliers of labour', () => {
  it('leave the very library where none is chosen, or none that the norms have', () => {
    expect(libraryFor({ terms: terms() }, library)).toBe(library);
    expect(libraryFor({ terms: terms(['unheard-of']) }, library)).toBe(library);
  });

  it('multiply the minutes of their stages, all three of them, and no other', () => {
    const { norms } = libraryFor({ terms: terms(['fragile-finishes']) }, library);
    for (const before of library.norms.tasks) {
      const after = norms.tasks.find(({ task }) => task === before.task);
      const factor = ['first-fix', 'after'].includes(stageOf(before.task) ?? '') ? 1.3 : 1;
      expect(after?.typicalMin, before.task).toBeCloseTo(before.typicalMin * factor, 9);
      expect(after?.lowMin, before.task).toBeCloseTo(before.lowMin * factor, 9);
      expect(after?.highMin, before.task).toBeCloseTo(before.highMin * factor, 9);
      expect(after?.mess).toBe(before.mess);
    }
  });

  it('multiply each other, once: a library that has them is not multiplied again', () => {
    const job = { terms: terms(['alone', 'fragile-finishes']) };
    const once = libraryFor(job, library);
    expect(taskMinutes('box-block-single', 1, once.norms).typicalMin).toBeCloseTo(31.2, 9);
    expect(libraryFor(job, once)).toBe(once);
    expect(libraryFor({ terms: terms(['fragile-finishes', 'alone']) }, library)).toBe(once);
  });

  it('are the firm’s own where it has some, none of the usual beside them', () => {
    const own = { id: 'loft', words: 'Work in a low loft', factor: 1.5, on: ['first-fix'] } as const;
    const norms = { ...library.norms, multipliers: [{ ...own, on: [...own.on] }] };
    expect(multipliersOf(norms)).toHaveLength(1);
    expect(multipliersOf({ ...norms, multipliers: [] })).toEqual([]);
    expect(multipliersOf(library.norms)).toBe(usualMultipliers);
    const { norms: slower } = libraryFor({ terms: terms(['loft', 'alone']) }, { ...library, norms });
    expect(taskMinutes('drill-joist', 10, slower).typicalMin).toBe(60);
  });

  it('are told to be from memory, each between the ends of the page that they are remembered by', () => {
    expect(usualMultipliers.map(({ id, factor, origin }) => [id, factor, origin])).toEqual([
      ['empty-house', 0.85, 'demo'],
      ['fragile-finishes', 1.3, 'demo'],
      ['alone', 1.2, 'demo'],
      ['repeated-points', 0.85, 'demo'],
    ]);
  });

  it('weigh ways by the same minutes', () => {
    const job = { terms: terms(['alone']) };
    const plain = tariffFor(job, library);
    const slower = tariffFor(job, libraryFor(job, library));
    expect(slower.thread.minutes).toBeCloseTo(plain.thread.minutes * 1.2, 9);
    expect(slower.thread.millipence).toBeCloseTo(plain.thread.millipence * 1.2, 6);
    expect(slower.thread.mess).toBe(plain.thread.mess);
  });

  it('make an empty house cheaper by the hours that they take off, in price and in range', () => {
    const job = demoJob('saltglass-row');
    const priced = (multipliers: string[]) =>
      estimateOf({ ...job, schemes: job.schemes.slice(0, 1), terms: { ...job.terms, multipliers } })
        .schemes[0];
    const [plain, empty] = [priced([]), priced(['empty-house'])];
    if (plain === undefined || empty === undefined) throw new Error('no scheme');
    const moved = plain.labour.reduce((sum, task) => {
      const share = ['first-fix', 'second-fix', 'after'].includes(task.stage) ? 0.15 : 0;
      return sum + (task.typicalMin ?? 0) * share;
    }, 0);
    expect(plain.price.labourMin - empty.price.labourMin).toBeCloseTo(moved, 1);
    expect(empty.range.lowPence).toBeLessThan(plain.range.lowPence);
    expect(empty.range.highPence).toBeLessThan(plain.range.highPence);
    expect(empty.messPoints).toBe(plain.messPoints);
    expect(empty.price.materialsCostPence).toBe(plain.price.materialsCostPence);
  });
});

describe('the minutes of the stages', () => {
  it('add up to all minutes, in the order of the work', () => {
    for (const { labour, price } of estimateOf(demoJob('fernlow-close')).schemes) {
      const stages = stageMinutes(labour);
      const sum = stages.reduce((all, { typicalMin }) => all + typicalMin, 0);
      expect(sum).toBeCloseTo(price.labourMin, 6);
      const order = ['before', 'first-fix', 'second-fix', 'test', 'after'];
      expect(stages.map(({ stage }) => stage)).toEqual(
        order.filter((stage) => labour.some((task) => task.stage === stage)),
      );
    }
  });

  it('are none of a scheme without work', () => {
    expect(stageMinutes([])).toEqual([]);
  });
});
