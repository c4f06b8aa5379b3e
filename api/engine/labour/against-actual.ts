import type { Actuals, Job, Terms } from '#model/job.ts';
import type { Norms } from '#model/library.ts';
import type { TakeoffLine } from '../takeoff/line.ts';
import { chosenMultipliers, factorOn } from './multipliers.ts';
import { stageMinutes } from './stage-hours.ts';
import type { LabourTask, Stage } from './task.ts';

/** Minutes of a stage, reckoned and taken. */
export interface ActualStage {
  readonly stage: Stage;
  readonly estimatedMin: number;
  /** Null: not recorded. */
  readonly actualMin: number | null;
  /** What the minutes of its norms would be multiplied by to come to it; null where there is nothing to tell it from. */
  readonly ratio: number | null;
}

/** Minutes of a task, reckoned and taken. */
export interface ActualTask {
  readonly task: string;
  readonly description: string;
  readonly stage: Stage;
  readonly unit: LabourTask['unit'];
  readonly quantity: number;
  readonly estimatedMin: number;
  readonly actualMin: number | null;
  /** Minutes for one unit by this job alone, at what the job multiplies none by; null where there is nothing to tell it from, or no norm. */
  readonly normMin: number | null;
}

/** Metres of an item, reckoned and used. */
export interface ActualMetres {
  readonly item: string;
  readonly description: string;
  /** Without waste. */
  readonly measuredM: number;
  readonly estimatedM: number;
  readonly actualM: number | null;
  /** What was used beyond what was measured, percent of it; below nought where less was. */
  readonly wastePercent: number | null;
}

/** A job's own figures beside what was reckoned for a scheme. */
export interface AgainstActual {
  readonly stages: readonly ActualStage[];
  readonly tasks: readonly ActualTask[];
  readonly metres: readonly ActualMetres[];
}

/** What was reckoned. */
export interface Reckoned {
  readonly labour: readonly LabourTask[];
  readonly takeoff: readonly TakeoffLine[];
  readonly level: Terms['labour'];
  /** What the minutes of a stage were multiplied by. */
  readonly factorOf: (stage: Stage) => number;
}

/**
 * What a job took beside what was reckoned for one of its schemes, its minutes multiplied by what the job has chosen.
 *
 * @param norms that the scheme was worked out with.
 */
export function jobAgainstActual(
  { terms, actuals }: Pick<Job, 'terms' | 'actuals'>,
  norms: Pick<Norms, 'multipliers'>,
  reckoned: Omit<Reckoned, 'factorOf'>,
): AgainstActual {
  const chosen = chosenMultipliers(terms, norms);
  return againstActual(actuals, { ...reckoned, factorOf: (stage) => factorOn(stage, chosen) });
}

const levels = { low: 'lowMin', typical: 'typicalMin', high: 'highMin' } as const;
const hundredth = (value: number): number => Math.round(value * 100) / 100;
const tenth = (value: number): number => Math.round(value * 10) / 10;

/**
 * What the job took beside what was reckoned: by stage and by task at the level that it was priced at, and of all that
 * is sold by the metre. A norm that one job would give is told, never taken: one job is one job.
 */
export function againstActual(
  actuals: Actuals | undefined,
  { labour, takeoff, level, factorOf }: Reckoned,
): AgainstActual {
  const stageMin = new Map(actuals?.stages.map(({ stage, minutes }) => [stage, minutes]));
  const taskMin = new Map(actuals?.tasks.map(({ task, minutes }) => [task, minutes]));
  const used = new Map(actuals?.used.map(({ item, quantity }) => [item, quantity]));
  const key = levels[level];
  return {
    stages: stageMinutes(labour).map(({ stage, ...minutes }) => {
      const [estimatedMin, actualMin] = [minutes[key], stageMin.get(stage) ?? null];
      const ratio = actualMin === null || estimatedMin === 0 ? null : hundredth(actualMin / estimatedMin);
      return { stage, estimatedMin, actualMin, ratio };
    }),
    tasks: labour.map(({ task, description, stage, unit, quantity, own, ...minutes }) => {
      const actualMin = taskMin.get(task) ?? null;
      const normMin =
        actualMin === null || quantity === 0 || own !== undefined
          ? null
          : tenth(actualMin / quantity / factorOf(stage));
      return {
        task,
        description,
        stage,
        unit,
        quantity,
        estimatedMin: minutes[key] ?? 0,
        actualMin,
        normMin,
      };
    }),
    metres: takeoff
      .filter(({ unit }) => unit === 'm')
      .map(({ item, description, measured, quantity }) => {
        const actualM = used.get(item) ?? null;
        const wastePercent =
          actualM === null || measured === 0 ? null : tenth((100 * (actualM - measured)) / measured);
        return { item, description, measuredM: measured, estimatedM: quantity, actualM, wastePercent };
      }),
  };
}
