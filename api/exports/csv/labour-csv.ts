import { type ActualTask, jobAgainstActual } from '#engine/labour/against-actual.ts';
import { chosenMultipliers, factorOn } from '#engine/labour/multipliers.ts';
import { normOf } from '#engine/labour/norm-of.ts';
import type { LabourTask } from '#engine/labour/task.ts';
import type { LineContext } from '../line-context.ts';
import { stageWords, taskNote } from '../line-notes.ts';
import { type CsvColumn, type CsvRequest, csvContext, csvOf } from './csv-request.ts';

/** A task with what it took, where that was written down. */
interface TaskLine extends LabourTask {
  readonly actual: ActualTask | null;
  readonly factor: number;
}

/** Tenths of a thousandth: what is left of dividing and multiplying decimals goes. */
const tidy = (value: number): number => Math.round(value * 1e4) / 1e4;

const columnsFor = ({ library, labelOf }: LineContext): readonly CsvColumn<TaskLine>[] => {
  const each = ({ task, own }: TaskLine) => own ?? normOf(task, library.norms);
  return [
    { header: 'Stage', of: ({ stage }) => stageWords[stage] },
    { header: 'Task', of: ({ task }) => task },
    { header: 'Description', of: ({ description }) => description },
    { header: 'Unit', of: ({ unit }) => unit },
    { header: 'Quantity', of: ({ quantity }) => tidy(quantity) },
    { header: 'At least', of: ({ lowQuantity }) => tidy(lowQuantity) },
    { header: 'At most', of: ({ highQuantity }) => tidy(highQuantity) },
    { header: 'Low, min each', of: (line) => each(line)?.lowMin ?? '' },
    { header: 'Typical, min each', of: (line) => each(line)?.typicalMin ?? '' },
    { header: 'High, min each', of: (line) => each(line)?.highMin ?? '' },
    { header: 'Times', of: ({ factor }) => tidy(factor) },
    { header: 'Minutes', of: ({ actual }) => (actual === null ? '' : tidy(actual.estimatedMin)) },
    { header: 'Taken, min', of: ({ actual }) => actual?.actualMin ?? '' },
    { header: 'Caused by', of: ({ causes }) => causes.map(labelOf).join(', ') },
    { header: 'Note', of: (line) => taskNote(line) ?? '' },
  ];
};

function taskLines({ scheme, library }: LineContext): readonly TaskLine[] {
  const chosen = chosenMultipliers(scheme.worked.job.terms, library.norms);
  const { labour, takeoff, price, worked } = scheme;
  const { tasks } = jobAgainstActual(worked.job, library.norms, {
    labour,
    takeoff,
    level: price.labourLevel,
  });
  return labour.map((task, index) => ({
    ...task,
    actual: task.typicalMin === null ? null : (tasks[index] ?? null),
    factor: task.own === undefined ? factorOn(task.stage, chosen) : 1,
  }));
}

/**
 * The labour of one scheme as CSV, a row a task in the order of the work: how much, the firm's own minutes for one, what
 * the job multiplies them by, the minutes at the level that it is priced at, and what it took where that was written down.
 */
export function labourCsv(request: CsvRequest): string {
  const context = csvContext(request);
  return csvOf(request, context, { columns: columnsFor(context), lines: taskLines(context) });
}
