import { describe, expect, it } from 'vitest';
import { againstActual, jobAgainstActual } from '#engine/labour/against-actual.ts';
import type { LabourTask } from '#engine/labour/task.ts';
import { labourTask, smallLibrary, takeoffLine } from '#tests/engine/price/price-material.ts';

const library = smallLibrary([]);
/** Three circuits at 20 min; and a task of first fix without a norm. */
const labour: readonly LabourTask[] = [
  { ...labourTask('drill-joist', 2, library), stage: 'first-fix' },
  labourTask('test-circuit', 3, library),
];
const takeoff = [takeoffLine('cable', 12.6, { unit: 'm', measured: 12 }), takeoffLine('socket-twin', 2)];
const reckoned = { labour, takeoff, level: 'typical' as const, factorOf: () => 1 };
const nothing = { stages: [], tasks: [], used: [] };

describe('what a job took beside what was reckoned', () => {
  it('has every stage, task and metre with what was reckoned, and nothing recorded at first', () => {
    const { stages, tasks, metres } = againstActual(undefined, reckoned);
    expect(stages).toEqual([
      { stage: 'first-fix', estimatedMin: 0, actualMin: null, ratio: null },
      { stage: 'test', estimatedMin: 60, actualMin: null, ratio: null },
    ]);
    expect(
      tasks.map(({ task, estimatedMin, actualMin, normMin }) => [task, estimatedMin, actualMin, normMin]),
    ).toEqual([
      ['drill-joist', 0, null, null],
      ['test-circuit', 60, null, null],
    ]);
    expect(metres).toMatchObject([{ item: 'cable', measuredM: 12, estimatedM: 12.6, actualM: null }]);
  });

  it('tells what the norms of a stage would be multiplied by, none of a stage reckoned at nothing', () => {
    const stages = [
      { stage: 'test' as const, minutes: 75 },
      { stage: 'first-fix' as const, minutes: 30 },
    ];
    const told = againstActual({ ...nothing, stages }, reckoned).stages;
    expect(told.map(({ actualMin, ratio }) => [actualMin, ratio])).toEqual([
      [30, null],
      [75, 1.25],
    ]);
  });

  it('takes what the job multiplies by from the job and the norms', () => {
    const actuals = { ...nothing, tasks: [{ task: 'test-circuit', minutes: 90 }] };
    const slow = { id: 'slow', words: 'Slow', factor: 1.5, on: ['test' as const], origin: 'demo' as const };
    const told = (multipliers: readonly string[]) =>
      jobAgainstActual(
        { terms: { labour: 'typical', vat: 'standard', multipliers: [...multipliers] }, actuals },
        { multipliers: [slow] },
        reckoned,
      ).tasks[1]?.normMin;
    expect([told([]), told(['slow'])]).toEqual([30, 20]);
  });

  it('tells the minutes for one by this job, without what the job multiplies them by', () => {
    const actuals = { ...nothing, tasks: [{ task: 'test-circuit', minutes: 90 }] };
    expect(againstActual(actuals, reckoned).tasks[1]).toMatchObject({ actualMin: 90, normMin: 30 });
    const slower = { ...reckoned, factorOf: () => 1.5 };
    expect(againstActual(actuals, slower).tasks[1]?.normMin).toBe(20);
  });

  it('tells a norm for a task that had none', () => {
    const actuals = { ...nothing, tasks: [{ task: 'drill-joist', minutes: 9 }] };
    expect(againstActual(actuals, reckoned).tasks[0]).toMatchObject({ estimatedMin: 0, normMin: 4.5 });
  });

  it('tells the waste of what is sold by the metre, below nought where less was used than measured', () => {
    const wasteOf = (quantity: number) =>
      againstActual({ ...nothing, used: [{ item: 'cable', quantity }] }, reckoned).metres[0]?.wastePercent;
    expect([wasteOf(15), wasteOf(12), wasteOf(9)]).toEqual([25, 0, -25]);
  });

  it('reads the level that the job was priced at', () => {
    const high = { ...reckoned, level: 'high' as const };
    expect(againstActual(undefined, high).stages[1]?.estimatedMin).toBe(90);
  });
});
