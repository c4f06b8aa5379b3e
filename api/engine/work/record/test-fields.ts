import type { Reading } from '#model/installation.ts';
import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { shownBy } from '../tests/answering-reading.ts';
import { judged } from '../tests/judged.ts';
import { sourceRead } from '../tests/measured-proof.ts';
import { ohmOf } from '../tests/read-tests.ts';
import type { SheetTest, TestGroup } from '../tests/sheet-test.ts';
import { insulationTestLimit } from '../tests/test-limits.ts';
import {
  type FieldHead,
  type FieldUnit,
  forPerson,
  notesOf,
  type RecordField,
  withUnit,
} from './record-field.ts';
import type { Recording } from './recording.ts';
import { highestLive, zsNote } from './zs-note.ts';

/** The tests of one circuit. */
interface Tested {
  readonly circuitId: string;
  readonly tests: readonly SheetTest[];
  /** What the surge device of its board shows. */
  readonly ofBoard: readonly SheetTest[];
  /** Of the job, those alone that count as tested. */
  readonly readings: readonly Reading[];
  /** Absent where the circuit is none that could be proved. */
  readonly proof: CircuitProof | undefined;
}

/**
 * The results of one circuit as the form asks for them. Only what was read after the work stands in a field; what a tester should show
 * stands beside it.
 *
 * Source: items of the minor works form, BS 7671 Appendix 6 (2008 layout seen; those of 2018 and 2022 from memory).
 */
export function testFields(recording: Recording, circuitId: string): readonly RecordField[] {
  const tested = testedOf(recording, circuitId);
  return [
    ...ringFields(tested),
    ...earthFields(tested),
    ...insulationFields(tested),
    rightField(
      tested,
      { id: 'polarity', label: 'Polarity' },
      { tests: ofKind(tested, 'polarity'), right: 'right', wrong: 'WRONG' },
    ),
    zsField(recording, tested),
    ...deviceFields(tested),
  ];
}

const testedOf = ({ worked, sheet, proof }: Recording, circuitId: string): Tested => ({
  circuitId,
  ofBoard: sheet.parts
    .filter(({ group }) => group === 'spd-indicator')
    .flatMap(({ tests }) => tests)
    .filter(({ subject }) => subject === boardOf(worked, circuitId)),
  tests: sheet.parts.filter((part) => part.circuitId === circuitId).flatMap(({ tests }) => tests),
  readings: worked.job.readings.filter(({ phase }) => phase === 'after'),
  proof: proof.find(({ circuit }) => circuit === circuitId),
});

const boardOf = ({ proposed }: Recording['worked'], circuitId: string): string | undefined =>
  proposed.circuits.find(({ id }) => id === circuitId)?.board?.id;

const ofGroups = ({ tests }: Tested, ...groups: readonly TestGroup[]): readonly SheetTest[] =>
  tests.filter(({ group }) => groups.includes(group));

/** By the kind of reading that answers them; kinds that the sheet does not ask for have none. */
const ofKind = ({ tests }: Tested, kind: string): readonly SheetTest[] =>
  tests.filter(({ asked }) => asked.kind === kind);

function ringFields(tested: Tested): readonly RecordField[] {
  const names = { r1: 'line', rn: 'neutral', r2: 'protective conductor' };
  return ofGroups(tested, 'ends').map((test) =>
    highestField(
      tested,
      {
        id: test.mark,
        label: `${test.mark}, ring end to end, ${names[test.mark as keyof typeof names] ?? ''}`,
        unit: 'Ω',
      },
      [test],
    ),
  );
}

function earthFields(tested: Tested): readonly RecordField[] {
  const alone = tested.readings
    .filter(
      (reading): reading is Extract<Reading, { kind: 'loop' }> =>
        reading.kind === 'loop' &&
        reading.loop === 'cpc' &&
        reading.from !== 'end-to-end' &&
        reading.circuit === tested.circuitId,
    )
    .map(({ ohm }) => ohm);
  const r2 = { id: 'r2-alone', label: 'R2, where R1 + R2 was not measured', unit: 'Ω' } as const;
  return [
    highestField(
      tested,
      { id: 'r1r2', label: 'R1 + R2, highest', unit: 'Ω' },
      ofGroups(tested, 'crossed-le', 'r1r2'),
    ),
    alone.length === 0 ? forPerson(r2) : measured(r2, Math.max(...alone)),
  ];
}

/** Zs as a tester read it live; what it comes to out of other readings, and where it is expected highest, stand beside it. */
function zsField({ worked, sheet }: Recording, tested: Tested): RecordField {
  const { proof, circuitId } = tested;
  const tests = ofGroups(tested, 'zs');
  const field = highestField(tested, { id: 'zs', label: 'Zs, highest, as read live', unit: 'Ω' }, tests);
  const read = proof === undefined ? null : { proof, worked, tests: tested.tests };
  const note = zsNote(
    {
      zs: tests,
      r1r2Read: ofGroups(tested, 'crossed-le', 'r1r2').flatMap((test) => {
        const ohm = read === null ? null : ohmOf(read, test);
        return ohm === null ? [] : [{ mark: test.mark, ohm }];
      }),
      sourceOhm: sourceRead(sheet, boardOf(worked, circuitId)),
    },
    field.value !== null,
  );
  if (field.value !== null) return { ...field, note: notesOf(field.note, note) };
  return { ...field, expected: highestLive(tests)?.expected ?? field.expected, note };
}

const measured = (head: FieldHead & { readonly unit: FieldUnit }, figure: number): RecordField => ({
  ...forPerson(head),
  value: withUnit(figure, head.unit),
  figure,
  unit: head.unit,
  from: 'measured',
  certainty: 'measured',
});

function insulationFields(tested: Tested): readonly RecordField[] {
  const asked = ofKind(tested, 'insulation');
  const by = (between: string): readonly SheetTest[] =>
    asked.filter((test) => test.asked.kind === 'insulation' && test.asked.between === between);
  const apart = (between: 'L-cpc' | 'N-cpc', head: FieldHead & { readonly unit: 'MΩ' }): RecordField => {
    const reading = tested.readings.findLast(
      (each) => each.kind === 'insulation' && each.between === between && each.circuit === tested.circuitId,
    );
    if (reading?.kind !== 'insulation') return forPerson(head);
    const { proof } = tested;
    const limit = proof === undefined ? null : insulationTestLimit(proof);
    const { keepsLimit } = judged({ expected: null, limit, reading }, () => null);
    return { ...measured(head, reading.megohm), limit, keepsLimit };
  };
  return [
    voltageField(tested),
    highestField(tested, { id: 'ir-ln', label: 'Insulation, line to neutral', unit: 'MΩ' }, by('L-N')),
    highestField(
      tested,
      { id: 'ir-lne', label: 'Insulation, line and neutral together to earth', unit: 'MΩ' },
      by('LN-cpc'),
    ),
    apart('L-cpc', { id: 'ir-le', label: 'Insulation, line to earth, if apart', unit: 'MΩ' }),
    apart('N-cpc', { id: 'ir-ne', label: 'Insulation, neutral to earth, if apart', unit: 'MΩ' }),
  ];
}

/** The test voltages that were used. */
function voltageField({ circuitId, tests, readings }: Tested): RecordField {
  const head = { id: 'ir-voltage', label: 'Insulation, test voltage', unit: 'V' } as const;
  const answering = tests.flatMap(({ reading }) => reading ?? []);
  const used = [...answering, ...readings.filter(({ circuit }) => circuit === circuitId)].flatMap(
    (reading) => (reading.kind === 'insulation' ? [reading.testV] : []),
  );
  const volts = [...new Set(used)].toSorted((a, b) => b - a);
  const [first] = volts;
  if (first === undefined) return forPerson(head);
  if (volts.length === 1) return measured(head, first);
  return { ...measured(head, first), value: `${volts.join(', ')}\u00a0V`, figure: null };
}

/** The reading of a test as a figure; null where it was not read, or is none. */
function figureOf({ reading }: SheetTest): number | null {
  const shown = reading === null ? null : shownBy(reading);
  return typeof shown === 'number' ? shown : null;
}

const readOf = (tests: readonly SheetTest[]): string | null => {
  const read = tests.filter(({ reading }) => reading !== null).length;
  return read === tests.length ? null : `${read} of ${tests.length} read.`;
};

/** The reading that a form asks for of several: one beyond its limit, else the highest. Not read: what is expected there. */
function highestField(
  tested: Tested,
  head: FieldHead & { readonly unit: FieldUnit },
  tests: readonly SheetTest[],
): RecordField {
  const [worst] = tests
    .filter((test) => figureOf(test) !== null)
    .toSorted(
      (a, b) =>
        Number(a.keepsLimit !== false) - Number(b.keepsLimit !== false) ||
        (figureOf(b) ?? 0) - (figureOf(a) ?? 0),
    );
  if (worst === undefined) return unread(tested, head, tests);
  const isOff = tests.some(({ verdict }) => verdict === 'look');
  const field = measured(head, figureOf(worst) ?? 0);
  return {
    ...field,
    value: `${field.value}${placeOf(tested, worst)}`,
    expected: worst.expected,
    limit: worst.limit,
    keepsLimit: worst.keepsLimit,
    note: notesOf(readOf(tests), isOff ? 'Off what was expected: look into it.' : null),
  };
}

/** " at S1"; nothing for a test of the whole circuit. */
const placeOf = ({ circuitId }: Tested, { subject, mark }: SheetTest): string =>
  subject === circuitId ? '' : ` at ${mark}`;

function unread(tested: Tested, head: FieldHead, tests: readonly SheetTest[]): RecordField {
  const [most] = tests.toSorted((a, b) => (b.expected?.toOhm ?? -1) - (a.expected?.toOhm ?? -1));
  const field = forPerson(head);
  if (most === undefined) return field;
  const { expected, limit } = most;
  if (expected === null) return { ...field, limit };
  const where = placeOf(tested, most);
  return {
    ...field,
    from: 'expected',
    expected,
    limit,
    note: where === '' ? null : `The highest is expected${where}.`,
  };
}

/** What is right or wrong of several tests: only where all were made is it said to be right. */
function rightField(
  { circuitId }: Tested,
  head: FieldHead,
  {
    tests,
    right,
    wrong,
  }: { readonly tests: readonly SheetTest[]; readonly right: string; readonly wrong: string },
): RecordField {
  const field = forPerson(head);
  const failing = tests.filter(({ verdict }) => verdict === 'fails');
  const [limit = null] = tests.map((test) => test.limit);
  const said = { ...field, from: 'measured', certainty: 'measured', limit } as const;
  if (failing.length > 0) {
    const places = failing.flatMap(({ subject, mark }) => (subject === circuitId ? [] : [mark]));
    const where = places.length === 0 ? '' : ` at ${places.join(', ')}`;
    return { ...said, value: `${wrong}${where}`, keepsLimit: false, note: readOf(tests) };
  }
  const isWhole = tests.length > 0 && tests.every(({ reading }) => reading !== null);
  if (isWhole) return { ...said, value: right, keepsLimit: true };
  const isBegun = tests.some(({ reading }) => reading !== null);
  return { ...field, limit, note: isBegun ? `${readOf(tests)} Right so far.` : null };
}

function deviceFields(tested: Tested): readonly RecordField[] {
  const rcd = ofKind(tested, 'rcd');
  const none = rcd.length === 0 ? 'No RCD is known of here.' : null;
  const opens = { right: 'opened', wrong: 'DID NOT OPEN' };
  const button = (id: string, label: string, kind: string): RecordField =>
    rightField(tested, { id, label }, { tests: ofKind(tested, kind), ...opens });
  const time = highestField(
    tested,
    { id: 'rcd-time', label: 'RCD, time to open at IΔn', unit: 'ms', note: none },
    rcd,
  );
  return [
    time,
    button('rcd-button', 'RCD, its test button', 'rcd-button'),
    button('afdd-button', 'AFDD, its test button', 'afdd-button'),
    rightField(
      tested,
      { id: 'spd-indicator', label: 'SPD, its indicator' },
      { tests: tested.ofBoard, right: 'shows that it works', wrong: 'SHOWS A FAULT' },
    ),
  ];
}

/** With what a circuit was tested, and what could not be: as the job names it, and as its readings do. */
export function meansFields(recording: Recording, circuitId: string): readonly RecordField[] {
  const { tests, readings } = testedOf(recording, circuitId);
  const { instruments = [], notTested } = recording.worked.job.testing ?? {};
  const used = [
    ...tests.flatMap(({ reading }) => reading ?? []),
    ...readings.filter(({ circuit }) => circuit === circuitId),
  ].flatMap(({ instrument }) => instrument?.trim() || []);
  const named = [...new Set([...instruments.map(({ what }) => what.trim()), ...used])].filter(
    (one) => one !== '',
  );
  const serials = instruments.flatMap(({ what, serial }) =>
    serial === undefined || serial.trim() === '' ? [] : [`${what.trim()}: ${serial.trim()}`],
  );
  return [
    told({ id: 'instruments', label: 'Instruments used' }, named.toSorted().join('; ')),
    told({ id: 'serials', label: 'Their serial numbers' }, serials.join('; ')),
    told({ id: 'limitations', label: 'Limitations: what could not be tested, and why' }, notTested ?? ''),
  ];
}

/** What somebody wrote down; with nothing room to write. */
const told = (head: FieldHead, value: string): RecordField =>
  value === '' ? forPerson(head) : { ...forPerson(head), value, from: 'survey', certainty: 'seen' };
