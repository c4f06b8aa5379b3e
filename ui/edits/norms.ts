import { saysDemo } from '#engine/demo-marks.ts';
import type { KnownTask } from '#engine/labour/known-tasks.ts';
import { multipliersOf } from '#engine/labour/multipliers.ts';
import type { Counts, Multiplier, Norm, Norms, Overhead, OwnBoxDepths, SoldSizes } from '#model/library.ts';
import type { LibraryEdit } from '../library-events.ts';

/** Minutes of one unit of a task, from a good day to a bad one. */
export type NormMinutes = Pick<Norm, 'lowMin' | 'typicalMin' | 'highMin'>;

/** Minutes put in order: the one that was set counts, the others give way to it. */
function inOrder(minutes: NormMinutes, set: keyof NormMinutes): NormMinutes {
  const { lowMin, typicalMin, highMin } = minutes;
  if (set === 'lowMin') {
    const typical = Math.max(lowMin, typicalMin);
    return { lowMin, typicalMin: typical, highMin: Math.max(typical, highMin) };
  }
  if (set === 'highMin') {
    const typical = Math.min(typicalMin, highMin);
    return { lowMin: Math.min(lowMin, typical), typicalMin: typical, highMin };
  }
  return { lowMin: Math.min(lowMin, typicalMin), typicalMin, highMin: Math.max(typicalMin, highMin) };
}

/** Sets one of a task's minutes; null takes the task off the norms. Low, typical and high stay in order. */
export const setNormMinutes = (
  task: KnownTask,
  which: keyof NormMinutes,
  minutes: number | null,
): LibraryEdit => ({
  label: minutes === null ? `Take “${task.description}” off the norms` : `Minutes for “${task.description}”`,
  change: ({ norms }) => {
    const row = norms.tasks.find((norm) => norm.task === task.id);
    if (minutes === null) norms.tasks = norms.tasks.filter((norm) => norm.task !== task.id);
    else if (row === undefined)
      norms.tasks.push({
        task: task.id,
        unit: task.unit,
        lowMin: minutes,
        typicalMin: minutes,
        highMin: minutes,
      });
    else {
      Object.assign(row, inOrder({ ...row, [which]: minutes }, which));
      delete row.origin;
    }
  },
});

/**
 * Sets how much one unit of a task disturbs the house, in points; null leaves it out, which counts as none. A task without
 * a norm keeps none. Whose the minutes are is another matter: the price hangs on them alone, and the demo's mark stays.
 */
export const setNormMess = (task: KnownTask, points: number | null): LibraryEdit => ({
  label: `Disturbance by “${task.description}”`,
  change: ({ norms }) => {
    const row = norms.tasks.find((norm) => norm.task === task.id);
    if (row === undefined) return;
    if (points === null) delete row.mess;
    else row.mess = points;
  },
});

/** Sets what an hour is charged at, or costs the firm, in pence. */
export const setRate = (ratePencePerHour: number): LibraryEdit => ({
  label: 'Change the hourly rate',
  change: ({ norms }) => {
    norms.ratePencePerHour = ratePencePerHour;
    delete norms.rateOrigin;
  },
});

/** Says whether the hourly rate is what is charged for an hour, or what it costs the firm. */
export const setRateBasis = (basis: NonNullable<Norms['rateBasis']>): LibraryEdit => ({
  label: 'Change what the hourly rate is',
  change: ({ norms }) => {
    norms.rateBasis = basis;
  },
});

/** Sets the firm's overhead; null: none. */
export const setOverhead = (overhead: Overhead | null): LibraryEdit => ({
  label: overhead === null ? 'Reckon with no overhead' : 'Change the overhead',
  change: ({ norms }) => {
    if (overhead === null) delete norms.overhead;
    else norms.overhead = overhead;
  },
});

/** Sets where the norms are from. */
export const setNormsSource = (source: string): LibraryEdit => ({
  label: 'Change where the norms are from',
  change: ({ norms }) => {
    norms.source = source;
  },
});

/** Says that minutes, sums and rate are the firm's own, the demo's among them. */
export const ownNorms = (): LibraryEdit => ({
  label: 'Take rate and minutes over as the firm’s own',
  change: ({ norms }) => {
    delete norms.rateOrigin;
    for (const row of [...norms.tasks, ...norms.sums, ...(norms.multipliers ?? [])]) delete row.origin;
    if (saysDemo.norms(norms)) norms.source = 'Own norms';
  },
});

/** Sets a sum that is neither material nor labour. */
export const setSum = (sum: string, pence: number): LibraryEdit => ({
  label: `Change the sum for ${sum}`,
  change: ({ norms }) => {
    const row = norms.sums.find((known) => known.sum === sum);
    if (row === undefined) norms.sums.push({ sum, pence });
    else {
      row.pence = pence;
      delete row.origin;
    }
  },
});

/** Sets how much is wasted of a group of items, percent on top. */
export const setWaste = (group: keyof Norms['waste'], percent: number): LibraryEdit => ({
  label: `Change the waste on ${group}`,
  change: ({ norms }) => {
    norms.waste[group] = percent;
  },
});

/** Sets a length or a count by the firm's habit; null leaves it to the usual one. */
export const setCount = (count: keyof Counts, value: number | null): LibraryEdit => ({
  label:
    value === null ? 'Leave a length or count to the usual one' : 'Set a length or count of the firm’s own',
  change: ({ norms }) => {
    const counts = { ...norms.counts };
    if (value === null) delete counts[count];
    else Object.assign(counts, { [count]: value });
    if (Object.keys(counts).length === 0) delete norms.counts;
    else norms.counts = counts;
  },
});

/** Sets which sizes of a family the firm buys; null: all that merchants sell. */
export const setSold = (family: keyof SoldSizes, sizes: readonly number[] | null): LibraryEdit => ({
  label: sizes === null ? 'Buy every size of a thing' : 'Set the sizes that the firm buys',
  change: ({ norms }) => {
    const sold = { ...norms.sold };
    if (sizes === null) delete sold[family];
    else Object.assign(sold, { [family]: sizes });
    if (Object.keys(sold).length === 0) delete norms.sold;
    else norms.sold = sold;
  },
});

/** Sets the least depth of box that something wants by the firm's own makers' sheets, mm; null leaves it to the usual one. */
export const setBoxDepth = (what: keyof OwnBoxDepths, depthMm: number | null): LibraryEdit => ({
  label: depthMm === null ? 'Leave a depth of box to the usual one' : 'Set a depth of box of the firm’s own',
  change: ({ norms }) => {
    const depths = { ...norms.boxDepths };
    if (depthMm === null) delete depths[what];
    else depths[what] = depthMm;
    if (Object.keys(depths).length === 0) delete norms.boxDepths;
    else norms.boxDepths = depths;
  },
});

/** The firm's own figures of a multiplier; the usual ones are copied before one of them is changed. */
export const setMultiplierOf = (
  id: string,
  change: Partial<Pick<Multiplier, 'words' | 'factor' | 'on'>>,
): LibraryEdit => ({
  label: 'Change what makes work slower or faster',
  change: ({ norms }) => {
    norms.multipliers ??= multipliersOf(norms).map((one) => ({ ...one, on: [...one.on] }));
    const row = norms.multipliers.find((one) => one.id === id);
    if (row === undefined) return;
    Object.assign(row, change);
    delete row.origin;
  },
});

/** Adds a multiplier of the firm's own, with an id that is made at the edge. */
export const addMultiplier = (id: string): LibraryEdit => ({
  label: 'Add what makes work slower or faster',
  change: ({ norms }) => {
    norms.multipliers ??= multipliersOf(norms).map((one) => ({ ...one, on: [...one.on] }));
    norms.multipliers.push({ id, words: '', factor: 1, on: ['first-fix', 'second-fix'] });
  },
});

/** Takes a multiplier off the list; jobs that chose it go on without it. */
export const removeMultiplier = (id: string): LibraryEdit => ({
  label: 'Take off what makes work slower or faster',
  change: ({ norms }) => {
    norms.multipliers = multipliersOf(norms)
      .filter((one) => one.id !== id)
      .map((one) => ({ ...one, on: [...one.on] }));
  },
});
