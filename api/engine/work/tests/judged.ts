import type { Reading } from '#model/installation.ts';
import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { ohmAtTest } from '../../proof/compared-readings.ts';
import { type ExpectedBand, fitsBand, offBy } from '../../proof/reading-band.ts';
import { shownBy } from './answering-reading.ts';
import type { SheetTest, TestLimit, TestVerdict } from './sheet-test.ts';

/** With less the insulation of a 230 V circuit is not tested, V. Source: BS 7671 Table 64 and 643.3.3, from memory. */
const LEAST_TEST_V = 250;

/** What a test is held to, and what was read. */
type Held = Pick<SheetTest, 'expected' | 'limit' | 'reading'>;

/** A reading judged twice: by the band, which is ours, at the temperature of the test; by the limit as it was read. */
export function judged(
  { expected, limit, reading }: Held,
  proof: CircuitProof,
): Pick<SheetTest, 'offOhm' | 'fitsBand' | 'keepsLimit' | 'verdict'> {
  const off = reading === null ? null : offOf(expected, reading, proof);
  const fits = off === null || expected === null ? null : fitsBand(expected, off.measuredOhm);
  const keepsLimit = reading === null ? null : keeps(limit, reading);
  return {
    offOhm: off?.ohm ?? null,
    fitsBand: fits,
    keepsLimit,
    verdict: verdictOf(reading, fits, keepsLimit),
  };
}

function offOf(
  expected: ExpectedBand | null,
  reading: Reading,
  proof: CircuitProof,
): { readonly ohm: number; readonly measuredOhm: number } | null {
  if (expected === null || (reading.kind !== 'loop' && reading.kind !== 'zs')) return null;
  const measuredOhm = ohmAtTest(reading, proof);
  return { ohm: offBy(expected, measuredOhm), measuredOhm };
}

function keeps(limit: TestLimit | null, reading: Reading): boolean | null {
  if (limit === null) return null;
  const shown = shownBy(reading);
  if (limit.bound === 'right') return shown === true;
  if (typeof shown !== 'number') return null;
  if (reading.kind === 'insulation' && reading.testV < LEAST_TEST_V) return null;
  return limit.bound === 'most' ? shown <= limit.value : shown >= limit.value;
}

function verdictOf(reading: Reading | null, fits: boolean | null, keepsLimit: boolean | null): TestVerdict {
  if (reading === null) return 'not-read';
  if (keepsLimit === false) return 'fails';
  if (fits === false) return 'look';
  return fits === null && keepsLimit === null ? 'read' : 'fits';
}
