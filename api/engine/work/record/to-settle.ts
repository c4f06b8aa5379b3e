import { counted } from '../../rules/counted.ts';
import type { SheetTest } from '../tests/sheet-test.ts';
import { isAssumed, type RecordField } from './record-field.ts';
import type { CircuitRecord } from './record-shape.ts';
import type { Recording } from './recording.ts';

/** What stands between the record and a signature: shut gates, failures, tests not made, facts that nobody saw. */
export function toSettle(
  recording: Recording,
  supply: readonly RecordField[],
  circuits: readonly CircuitRecord[],
): readonly string[] {
  const { findings } = recording;
  const gates = findings
    .filter(({ stopGate }) => stopGate)
    .map(({ title, message }) => `Stop gate, ${title.toLowerCase()}: ${message}`);
  const failures = findings
    .filter(({ outcome, origin, stopGate }) => outcome === 'fails' && origin === 'scheme' && !stopGate)
    .map(({ title, message }) => `By the check on ${title.toLowerCase()} the scheme fails: ${message}`);
  const fields = [...supply, ...circuits.flatMap((circuit) => circuit.particulars)];
  const assumed = [...new Set(fields.filter(isAssumed).map(({ label }) => label))];
  return [
    ...new Set([...gates, ...failures]),
    ...circuits.flatMap(({ circuitId, name }) => testsSaid(testsOf(recording, circuitId), name)),
    ...(assumed.length === 0 ? [] : [`Only assumed, to be looked at: ${assumed.join('; ')}.`]),
  ];
}

const testsOf = ({ sheet }: Recording, circuitId: string): readonly SheetTest[] =>
  sheet.parts.filter((part) => part.circuitId === circuitId).flatMap(({ tests }) => tests);

function testsSaid(tests: readonly SheetTest[], name: string): readonly string[] {
  const unread = tests.filter(({ reading, isKept }) => isKept && reading === null).length;
  const beyond = tests.filter(({ verdict }) => verdict === 'fails').length;
  const off = tests.filter(({ verdict }) => verdict === 'look').length;
  return [
    ...(unread === 0 ? [] : [`${name}: ${unread} of its ${counted(tests.length, 'test')} not read yet.`]),
    ...(beyond === 0
      ? []
      : [`${name}: ${counted(beyond, 'test')} beyond the limit or wrong. Put it right and test again.`]),
    ...(off === 0 ? [] : [`${name}: ${counted(off, 'reading')} off what was expected. Find out why.`]),
  ];
}
