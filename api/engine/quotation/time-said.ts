import { dryingWords } from '../labour/drying.ts';
import type { LabourTask } from '../labour/task.ts';
import { counted } from '../rules/counted.ts';
import type { SchemeEstimate } from '../schemes/estimate-result.ts';
import { listed } from './said.ts';
import { thingsSaid } from './thing-said.ts';

const boardTasks: readonly string[] = [
  'connect-at-board',
  'fit-rcbo',
  'fit-new-way',
  'exchange-device',
  'fit-rcd-enclosure',
  'fit-board',
  'move-circuit',
];

const minutesOf = (labour: readonly LabourTask[], tasks: readonly string[]): number =>
  labour.reduce((sum, { task, typicalMin }) => sum + (tasks.includes(task) ? (typicalMin ?? 0) : 0), 0);

/** Minutes as a customer plans by: to the next quarter of an hour. */
function roughly(minutes: number): string {
  const quarters = Math.ceil(minutes / 15);
  const [hours, rest] = [Math.floor(quarters / 4), (quarters % 4) * 15];
  const parts = [...(hours > 0 ? [counted(hours, 'hour')] : []), ...(rest > 0 ? [`${rest} minutes`] : [])];
  return listed(parts);
}

function powerSaid({ labour, worked }: SchemeEstimate): readonly string[] {
  const { circuit } = thingsSaid(worked);
  const circuits = listed(
    worked.circuitIds
      .filter((id) => worked.job.circuits.some((one) => one.id === id))
      .map((id) => `“${circuit(id)}”`),
  );
  const board = minutesOf(labour, boardTasks);
  return [
    ...(circuits === ''
      ? []
      : [
          `The sockets of ${circuits} are off while we work on them. Tell us beforehand what has to stay on, such as a freezer or medical equipment.`,
        ]),
    ...(board > 0
      ? [`The power of the whole house is off while we work at the fuse box: about ${roughly(board)}.`]
      : []),
  ];
}

/** How long a scheme takes, on how many days and further visits, and for how long the power is off. */
export function timeSaid(scheme: SchemeEstimate): readonly string[] {
  const { totals, price, labour, worked } = scheme;
  if (totals.hours === 0) return [];
  const { days, dayHours, returns } = price.visits;
  const hours = Math.max(1, Math.round(totals.hours));
  const drying = dryingWords(worked.job.terms, labour);
  return [
    `About ${counted(hours, 'hour')} of work: ${counted(days, 'day')} for one electrician, reckoned at ${dayHours} hours a day${returns > 0 ? ', and a further visit when the plaster has set' : ''}.`,
    ...powerSaid(scheme),
    ...(drying !== null && returns === 0 ? [plasterSaid(worked.job.terms.drying)] : []),
  ];
}

const plasterSaid = (drying: 'wait' | 'second-visit' | undefined): string =>
  drying === 'wait'
    ? 'Fresh plaster takes up to two hours to set; we wait for it, which is not charged.'
    : 'Fresh plaster takes up to two hours to set; a short further visit may be needed to finish it.';
