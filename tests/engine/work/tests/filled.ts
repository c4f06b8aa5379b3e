import { demoLibrary } from '#data/catalogue/demo-library.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { estimate } from '#engine/estimate.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { entered, type ReadingValue } from '#engine/work/tests/answering-reading.ts';
import type { SheetTest, TestSheet } from '#engine/work/tests/sheet-test.ts';
import { faultKA } from '#engine/work/tests/supply-tests.ts';
import { testSheet } from '#engine/work/tests/test-sheet.ts';
import type { Reading } from '#model/installation.ts';

/** What a test is answered with; null leaves it open. */
export type Answer = (test: SheetTest) => ReadingValue | null;

export const testsIn = (sheet: TestSheet): readonly SheetTest[] => sheet.parts.flatMap(({ tests }) => tests);

/** A figure right in the middle of what is asked for: what is expected, else well within the limit. */
export const asExpected: Answer = ({ expected, limit, unit }) => {
  if (expected !== null) {
    const ohm = (expected.fromOhm + expected.toOhm) / 2;
    return unit === 'kA' ? faultKA(ohm) : ohm;
  }
  if (limit === null) return 0.5;
  return limit.bound === 'right' ? true : limit.bound === 'most' ? limit.value / 2 : limit.value * 100;
};

/** The readings of a sheet answered in its order, as the screen would keep them. */
export const readingsFor = (sheet: TestSheet, answer: Answer = asExpected): readonly Reading[] =>
  testsIn(sheet).flatMap((test, i) => {
    const value = test.isKept ? answer(test) : null;
    if (value === null) return [];
    return [
      entered(test, { id: `after-${String(i).padStart(3, '0')}`, value, takenOn: '2026-11-27', testV: 500 }),
    ];
  });

/** A worked scheme of the same job with more readings. */
export const withReadings = (worked: Worked, readings: readonly Reading[]): Worked => ({
  ...worked,
  job: { ...worked.job, readings: [...worked.job.readings, ...readings] },
});

/** The sheet of a scheme once it is answered. */
export const filled = (
  { worked, proof }: Pick<SchemeEstimate, 'worked' | 'proof'>,
  answer: Answer = asExpected,
): TestSheet => {
  const readings = readingsFor(testSheet({ worked, proof }), answer);
  return testSheet({ worked: withReadings(worked, readings), proof });
};

/** The whole estimate of a job with more readings. */
export const estimatedWith = ({ job }: Worked, readings: readonly Reading[]) =>
  estimate({ ...job, readings: [...job.readings, ...readings] }, demoLibrary(), {
    date: '2026-11-27',
    revision: 1,
  });
