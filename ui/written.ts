// One wording of money and of lists, on the screen and on the customer's paper.
export { dayWords, listed, metres, pounds, poundsMore, wholePounds } from '#engine/quotation/said.ts';
export { counted } from '#engine/rules/counted.ts';

/** A cable length on a card: 11.0 m. */
export const metresShort = (lengthMm: number): string => `${(lengthMm / 1000).toFixed(1)} m`;

/** Hours of work: 5.1 h. */
export const hoursWritten = (hours: number): string => `${hours.toFixed(1)} h`;

/** Words in which no figure is parted from its unit at the end of a line: "26.5 A". */
export const unbroken = (words: string): string =>
  words.replace(/(\d) (?=(?:A|kW|W|m|mm|h|V)\b)/g, '$1\u00a0');

/** A number to a hundredth, without idle noughts. */
export const hundredths = (value: number): string => String(Math.round(value * 100) / 100);

/** The same as a percentage: "17.5 %". */
export const percent = (value: number): string => `${hundredths(value)} %`;
