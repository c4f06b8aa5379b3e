import { knownTasks } from '#engine/labour/known-tasks.ts';
import { normOf } from '#engine/labour/norm-of.ts';
import type { Extra } from '#model/extra.ts';
import type { Job } from '#model/job.ts';
import type { Library, Norms } from '#model/library.ts';
import { hundredths } from '../../written.ts';
import type { Choice } from '../fields/choice-field.ts';
import { workStages } from './work-stages.ts';

/** What a fault is called on the customer's paper, where it is found and mended at a price. */
const FAULT_WORDS = 'Find the fault that the tests show, and mend it';

const stageWords = new Map(workStages);

/** What extra work may begin from: the firm's own tasks with their minutes, fault-finding before all others. */
export function taskChoices({ norms }: Library): readonly Choice[] {
  const choices = knownTasks.flatMap(({ id, description, stage, unit }): readonly Choice[] => {
    const norm = normOf(id, norms);
    if (norm === null) return [];
    const per = unit === 'm' ? ' a metre' : '';
    const label = `${id === 'fault-finding' ? 'Find and mend a fault' : description}: ${hundredths(norm.typicalMin)} min${per}`;
    return [
      { value: id, label, group: id === 'fault-finding' ? 'A fault' : (stageWords.get(stage) ?? stage) },
    ];
  });
  const isFault = ({ value }: Choice): boolean => value === 'fault-finding';
  return [...choices.filter(isFault), ...choices.filter((one) => !isFault(one))];
}

/** What extra work is called that begins from a task. */
export const wordsOfTask = (task: string): string =>
  task === 'fault-finding' ? FAULT_WORDS : (knownTasks.find(({ id }) => id === task)?.description ?? '');

/** The minutes of a task by the firm's norms, for one of it; what one figure says is said once. */
export function minutesOfTask(task: string, norms: Norms): Pick<Extra, 'lowMin' | 'typicalMin' | 'highMin'> {
  const norm = normOf(task, norms);
  if (norm === null) return {};
  const { lowMin, typicalMin, highMin } = norm;
  return lowMin === typicalMin && highMin === typicalMin ? { typicalMin } : { lowMin, typicalMin, highMin };
}

/** Where extra work can be: storeys, rooms, points, circuits, boards, by their names. */
export function placeChoices({ storeys, points, circuits, boards }: Job): readonly Choice[] {
  const of = (group: string, things: readonly { readonly id: string; readonly name: string }[]) =>
    things.map(({ id, name }): Choice => ({ value: id, label: name, group }));
  const labelled = (things: readonly { readonly id: string; readonly label: string }[]) =>
    things.map(({ id, label }) => ({ id, name: label }));
  return [
    ...of('Storeys', storeys),
    ...of(
      'Rooms',
      storeys.flatMap(({ rooms }) => rooms),
    ),
    ...of('Points', labelled(points)),
    ...of('Circuits', circuits),
    ...of('Boards', labelled(boards)),
  ];
}

/** How a sum for materials is to be typed, by how the firm's price list is kept. */
export function materialsHelp({ prices, terms }: Library): string {
  if (prices.vat === 'included') return 'All together, as paid, with VAT';
  return terms.vat === 'not-registered'
    ? 'All together, without VAT; it is added, since you do not get it back'
    : 'All together, without VAT; mark-up and VAT come on top';
}
