import { type Entry, entered } from '#engine/work/tests/answering-reading.ts';
import type { SheetTest } from '#engine/work/tests/sheet-test.ts';
import type { JobEdit } from '../job-events.ts';
import { putReading, removeReading } from './readings.ts';

/**
 * Keeps what a test of the sheet showed as a reading after the work; null takes it away.
 *
 * @param name what the test is called, for undo.
 * @returns null where there is nothing to change: no reading, and none to take away.
 */
export function answerTest(
  test: SheetTest,
  entry: Omit<Entry, 'value'> & { readonly value: Entry['value'] | null },
  name: string,
): JobEdit | null {
  const { value } = entry;
  if (value !== null) return putReading(entered(test, { ...entry, value }), name);
  return test.reading === null ? null : removeReading(test.reading.id, name);
}
