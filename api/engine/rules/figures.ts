/** The numbers of a finding, as a check hands them back. */
export interface Figures {
  readonly actual: number;
  readonly limit: number;
  readonly unit: string;
  readonly values: Readonly<Record<string, string | number>>;
}

/**
 * What was found against its limit, rounded for reading to one decimal: nearer than a tape is read would pretend.
 *
 * @param values what else the message names.
 */
export function figures(
  actual: number,
  limit: number,
  unit: string,
  values: Readonly<Record<string, string | number>> = {},
): Figures {
  return { actual: roundedTo1(actual), limit: roundedTo1(limit), unit, values };
}

function roundedTo1(value: number): number {
  return Math.round(value * 10) / 10;
}
