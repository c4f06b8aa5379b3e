/** Four decimals, which is what metres, pieces and hundredths of minutes mostly have. */
const SCALE = 1e4;
/** Below this a number with four decimals has twelve digits at most. */
const GREATEST = 1e8;
/** Less than half of the twelfth digit of any number, as a share of the number. */
const DUST_RATIO = 1e-13;

/**
 * A number without the dust of binary fractions: rounded to twelve significant digits, so that sums of
 * decimals do not come out as 10.979999999999999.
 */
export function twelveDigits(value: number): number {
  // What is a hair off a number of four decimals rounds to it; most numbers are, and need not be written out.
  // Adding nought turns −0 into 0.
  const near = Math.round(value * SCALE) / SCALE;
  if (Math.abs(value) < GREATEST && Math.abs(value - near) <= DUST_RATIO * Math.abs(value)) return near + 0;
  return Number(value.toPrecision(12));
}
