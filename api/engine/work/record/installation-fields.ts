import type { Supply } from '#model/installation.ts';
import type { Answer, Job } from '#model/job.ts';
import { leastBondMm2 } from '../../connections/least-bond.ts';
import { bondCertainty, type Service } from '../../rules/bonds.ts';
import type { QuestionId } from '../../rules/checklist.ts';
import { renewsBond, serviceWords } from '../../rules/fitted-devices.ts';
import {
  type FieldHead,
  forPerson,
  notesOf,
  type RecordField,
  type Told,
  toldField,
  withUnit,
} from './record-field.ts';
import { findingOf, type Recording, saidUnlessPassed } from './recording.ts';

/** An answer of the checklist, with how sure it is; null where nobody answered. */
export const answerOf = ({ answers }: Pick<Job, 'answers'>, question: QuestionId): Answer | null =>
  answers.find((each) => each.question === question) ?? null;

const earthingWords: Readonly<Record<NonNullable<Supply['earthing']>, string>> = {
  'TN-S': 'TN-S',
  'TN-C-S': 'TN-C-S',
  TT: 'TT, earth electrode',
};

function earthingField(recording: Recording): RecordField {
  const { job } = recording.worked;
  const { earthing, certainty } = job.supply;
  const head = {
    id: 'earthing',
    label: 'System earthing',
    note: saidUnlessPassed(findingOf(recording, 'ST1')),
  };
  if (answerOf(job, 'means-of-earthing')?.value === 'absent') return forPerson(head);
  return toldField(head, {
    value: earthing === undefined ? null : earthingWords[earthing],
    certainty: certainty?.earthing,
  });
}

/** What such a reading after the work shows, of several the last in the list; null: none. */
function readAfter(
  { readings }: Pick<Job, 'readings'>,
  is: (reading: Job['readings'][number]) => boolean,
): number | null {
  const reading = readings.findLast((each) => each.phase === 'after' && is(each));
  if (reading?.kind === 'ze' || reading?.kind === 'zs') return reading.ohm;
  return reading?.kind === 'pfc' ? reading.kA : null;
}

/** A value measured after the work, else as the survey has it. */
function measuredOr(head: FieldHead, measured: number | null, told: Told): RecordField {
  const field = toldField(head, measured === null ? told : { value: measured, certainty: 'measured' });
  return measured === null ? field : { ...field, from: 'measured' };
}

/** The loop before the board of a circuit: Zdb. */
export function zdbField({ worked }: Recording, boardId: string | null): RecordField {
  const { job } = worked;
  const board = job.boards.find(({ id }) => id === boardId);
  return measuredOr(
    { id: 'zdb', label: 'Zdb, loop impedance at the board', unit: 'Ω' },
    readAfter(
      job,
      (reading) =>
        (reading.kind === 'zs' || reading.kind === 'ze') && boardId !== null && reading.at === boardId,
    ),
    { value: board?.zdbOhm, certainty: board?.certainty?.zdbOhm },
  );
}

function bondValue(recording: Recording, service: Service): Told {
  const { supply } = recording.worked.job;
  const bond = supply.bonding.find((each) => each.service === service);
  const certainty = bondCertainty(supply, service);
  if (renewsBond(recording.worked, service) && (bond !== undefined || isNamed(recording, service))) {
    const leastMm2 = leastBondMm2(supply);
    const size = leastMm2 === null ? 'size to be written' : `${withUnit(leastMm2, 'mm²')} or more`;
    return { value: `fitted by this work, ${size}`, certainty, from: 'scheme' };
  }
  if (bond?.seen === true)
    return {
      value: bond.mm2 === undefined ? 'fitted, size not seen' : `fitted, ${withUnit(bond.mm2, 'mm²')}`,
      certainty,
    };
  if (bond !== undefined) return { value: 'none found', certainty };
  const isAbsent = supply.absentServices?.includes(service) === true;
  return { value: isAbsent ? 'none of metal in the house: no bond' : null, certainty };
}

const isNamed = ({ worked }: Recording, service: Service): boolean =>
  worked.scheme?.remedies.some(({ kind, at }) => kind === 'bond-upgrade' && at === service) === true;

/** The services that the form asks after. Source: minor works certificate, main bonding; oil, steel and other from memory. */
const SERVICES: readonly Service[] = ['water', 'gas', 'oil', 'steel', 'other'];

const bondField = (recording: Recording, service: Service): RecordField =>
  toldField(
    {
      id: `bond-${service}`,
      label: `Main bonding to ${serviceWords(service)}: there, and adequate`,
      note: notesOf(
        saidUnlessPassed(findingOf(recording, 'ST2', `supply/bond-${service}`)),
        findingOf(recording, 'SU3', `supply/bond-${service}`)?.message,
      ),
    },
    bondValue(recording, service),
  );

function earthingConductor(recording: Recording): RecordField {
  const { earthing, earthingMm2, certainty } = recording.worked.job.supply;
  return toldField(
    {
      id: 'earthing-conductor',
      label: 'Earthing conductor: size, and adequate',
      unit: 'mm²',
      note:
        earthing === 'TT'
          ? 'At an electrode its size goes by how it lies in the ground.'
          : (findingOf(recording, 'SU4')?.message ?? null),
    },
    { value: earthingMm2, certainty: certainty?.earthingMm2 },
  );
}

const sourceWords = { pv: 'solar panels', battery: 'battery', ev: 'vehicle charger' } as const;

function otherSources({ supply }: Job): RecordField {
  const words = supply.otherSources.map((source) => sourceWords[source]).join(', ');
  return toldField(
    { id: 'other-sources', label: 'Other sources of supply' },
    { value: words === '' ? 'none' : words, certainty: supply.certainty?.otherSources },
  );
}

/**
 * Supply, earthing and bonding, as a minor works certificate and the first page of an installation certificate ask for them.
 *
 * Source: BS 7671 Appendix 6 as the public copies of its forms have it (2008 layout seen; items of 2018 from memory).
 */
export function supplyFields(recording: Recording): readonly RecordField[] {
  const { job } = recording.worked;
  const { supply } = job;
  const { certainty } = supply;
  return [
    toldField(
      { id: 'nature', label: 'Nature of the supply' },
      { value: `single-phase, ${withUnit(supply.nominalV, 'V')} nominal`, certainty: undefined },
    ),
    earthingField(recording),
    measuredOr(
      { id: 'ze', label: 'Ze, external loop impedance', unit: 'Ω' },
      readAfter(job, (reading) => reading.kind === 'ze' && reading.at === undefined) ??
        readAfter(job, (reading) => reading.kind === 'ze'),
      { value: supply.zeOhm, certainty: certainty?.zeOhm },
    ),
    measuredOr(
      { id: 'pfc', label: 'Prospective fault current', unit: 'kA' },
      readAfter(job, (reading) => reading.kind === 'pfc'),
      { value: supply.pfcKA, certainty: certainty?.pfcKA },
    ),
    toldField(
      { id: 'main-fuse', label: 'Main fuse', unit: 'A' },
      { value: supply.mainFuseA, certainty: certainty?.mainFuseA },
    ),
    toldField(
      { id: 'tails', label: 'Tails', unit: 'mm²' },
      { value: supply.tailsMm2, certainty: certainty?.tailsMm2 },
    ),
    otherSources(job),
    earthingConductor(recording),
    ...SERVICES.map((service) => bondField(recording, service)),
    toldField(
      { id: 'protective-measure', label: 'Protective measure against electric shock' },
      {
        value: 'automatic disconnection of supply (BS 7671 411)',
        certainty: undefined,
        from: 'scheme',
      },
    ),
  ];
}
