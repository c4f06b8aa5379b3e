import type { FoundComment } from '#engine/work/record/found-comments.ts';
import type { RecordCable } from '#engine/work/record/record-cables.ts';
import type { FieldFrom, RecordField } from '#engine/work/record/record-field.ts';
import type { WorkRecord } from '#engine/work/record/record-shape.ts';
import { expectedSaid, limitSaid } from './test-sheet-words.ts';

const fromWords: Readonly<Record<FieldFrom, string>> = {
  survey: 'Survey',
  scheme: 'As designed: confirm',
  table: 'Worked out',
  measured: 'Measured after the work',
  expected: '',
  person: '',
};

/** Where what stands in a field is from and how sure it is; empty for an empty field. */
export function fromSaid({
  from,
  certainty,
  value,
}: Pick<RecordField, 'from' | 'certainty' | 'value'>): string {
  if (value === null) return '';
  const origin = fromWords[from];
  if (from === 'scheme' || from === 'measured') return origin;
  if (certainty === 'assumed') return `${origin}, ASSUMED: look first`;
  return from === 'survey' ? `${origin}, ${certainty === 'measured' ? 'measured before' : 'seen'}` : origin;
}

/** What a tester should show, said so that nobody takes it for a reading; empty where nothing is expected. */
export const fieldExpected = ({ expected }: Pick<RecordField, 'expected'>): string =>
  expectedSaid({ expected, unit: 'Ω' });

/** What a reading is held to; what is right or wrong has no figure and says nothing. */
export const fieldLimit = ({ limit, unit, id }: Pick<RecordField, 'limit' | 'unit' | 'id'>): string =>
  limit === null || limit.bound === 'right'
    ? ''
    : limitSaid({ limit, unit: unitOf(unit, id), asked: { kind: 'zs' } });

/** The unit of a limit, where the field is still empty. */
function unitOf(unit: RecordField['unit'], id: string): 'Ω' | 'MΩ' | 'ms' {
  if (unit === 'Ω' || unit === 'MΩ' || unit === 'ms') return unit;
  if (id.startsWith('ir-')) return 'MΩ';
  return id.startsWith('rcd') ? 'ms' : 'Ω';
}

const cableTypes: Readonly<Record<NonNullable<RecordCable['type']>, string>> = {
  'flat-twin': 'Flat twin and earth',
  'flat-single': 'Single, sheathed',
  'steel-wire-armoured': 'Steel wire armoured',
  flex: 'Flex',
  imperial: 'Imperial flat twin',
};

/** A row of the table of cables: which, type, reference method, live and protective conductors, how sure. */
export function cableCells(cable: RecordCable): readonly string[] {
  const { state, marks, type, liveMm2, cpcMm2, methods, isMethodOpen, certainty } = cable;
  const mm2 = (area: number | null): string => (area === null ? '' : `${area}\u00a0mm²`);
  const told = methods.join(', ');
  return [
    `${state === 'new' ? 'New' : 'Found'}: ${marks.join(', ')}`,
    type === null ? '' : cableTypes[type],
    told === '' ? '' : isMethodOpen ? `${told}, by the likeliest way` : told,
    mm2(liveMm2),
    cpcMm2 === 0 ? 'none' : mm2(cpcMm2),
    type === null ? '' : fromSaid({ from: state === 'new' ? 'scheme' : 'survey', certainty, value: type }),
  ];
}

/** How a comment is headed by what was found of it. */
export const commentWords: Readonly<Record<FoundComment['outcome'], string>> = {
  fails: 'Not as the standard asks',
  decide: 'To be judged',
  advice: 'Worth noting',
  'not-proven': 'Not looked at, or not to be told',
};

const stateWords: Readonly<Record<WorkRecord['buildingControl']['state'], string>> = {
  due: 'Notifiable: it has to be notified, or certified by a registered person.',
  ask: 'Whether it has to be notified has to be asked.',
  none: 'It need not be notified.',
  'not-told': 'Whether it has to be notified cannot be said yet.',
};

/** Whether building control is told, why, how that can be met and what the firm does, a sentence each. */
export function controlSaid({ buildingControl }: Pick<WorkRecord, 'buildingControl'>): readonly string[] {
  const { state, reason, ways, firmsWay, source } = buildingControl;
  return [
    `${stateWords[state]} ${reason}`,
    ...(ways.length === 0 ? [] : [`Ways to comply, one of them: ${ways.join(' ')}`]),
    ...(firmsWay === null ? [] : [firmsWay]),
    ...(source === '' ? [] : [`Source: ${source}.`]),
  ];
}
