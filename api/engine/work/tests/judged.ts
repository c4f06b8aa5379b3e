import type { Reading } from '#model/installation.ts';
import { fitsBand, offBy } from '../../proof/reading-band.ts';
import { shownBy } from './answering-reading.ts';
import type { SheetTest, TestLimit, TestVerdict } from './sheet-test.ts';

/** With less the insulation of a 230 V circuit is not tested, V. Source: BS 7671 Table 64 and 643.3.3, from memory. */
const LEAST_TEST_V = 250;

/** What a test is held to, and what was read. */
type Held = Pick<SheetTest, 'expected' | 'limit' | 'reading'>;

/**
 * A reading judged twice: by the band, which is ours, and by the limit as it was read.
 *
 * @param ohmOf what the reading is as a resistance, Ω at the temperature of the test; null for what is none.
 */
export function judged(
  { expected, limit, reading }: Held,
  ohmOf: (reading: Reading) => number | null,
): Pick<SheetTest, 'offOhm' | 'fitsBand' | 'keepsLimit' | 'verdict'> {
  const measuredOhm = reading === null ? null : ohmOf(reading);
  const isHeld = measuredOhm !== null && expected !== null;
  const fits = isHeld ? fitsBand(expected, measuredOhm) : null;
  const keepsLimit = reading === null ? null : keeps(limit, reading);
  return {
    offOhm: isHeld ? offBy(expected, measuredOhm) : null,
    fitsBand: fits,
    keepsLimit,
    verdict: verdictOf(reading, fits, keepsLimit),
  };
}

function keeps(limit: TestLimit | null, reading: Reading): boolean | null {
  if (limit === null) return null;
  const shown = shownBy(reading);
  if (limit.bound === 'right') return shown === true;
  if (typeof shown !== 'number') return null;
  if (reading.kind === 'insulation' && reading.testV < LEAST_TEST_V) return null;
  if (limit.bound === 'between') return shown >= limit.least && shown <= limit.value;
  return limit.bound === 'most' ? shown <= limit.value : shown >= limit.value;
}

function verdictOf(reading: Reading | null, fits: boolean | null, keepsLimit: boolean | null): TestVerdict {
  if (reading === null) return 'not-read';
  if (keepsLimit === false) return 'fails';
  if (fits === false) return 'look';
  return fits === null && keepsLimit === null ? 'read' : 'fits';
}
