/** Money as the trade writes it: £486.40, and −£12.00 below nothing. */
export function pounds(pence: number): string {
  const sign = pence < 0 ? '−' : '';
  const whole = Math.abs(pence);
  return `${sign}£${Math.floor(whole / 100)}.${String(whole % 100).padStart(2, '0')}`;
}

/** What is added to a price, or saved: +£35.76. */
export const poundsMore = (pence: number): string => `${pence < 0 ? '' : '+'}${pounds(pence)}`;

/** Money to the nearest pound, for ranges and bars: £808. */
export const wholePounds = (pence: number): string =>
  `${pence < 0 ? '−' : ''}£${Math.round(Math.abs(pence) / 100)}`;

/** A length in text: 3.05 m. */
export const metres = (lengthMm: number): string => `${(lengthMm / 1000).toFixed(2)} m`;

/** A cable length on a card: 11.0 m. */
export const metresShort = (lengthMm: number): string => `${(lengthMm / 1000).toFixed(1)} m`;

/** Hours of work: 5.1 h. */
export const hoursWritten = (hours: number): string => `${hours.toFixed(1)} h`;

/** One of a thing or several: "1 joint", "2 joints". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** Things in a row: "name, address and contact". */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** Words in which no figure is parted from its unit at the end of a line: "26.5 A". */
export const unbroken = (words: string): string =>
  words.replace(/(\d) (?=(?:A|kW|W|m|mm|h|V)\b)/g, '$1\u00a0');

/** A number to a hundredth, without idle noughts. */
export const hundredths = (value: number): string => String(Math.round(value * 100) / 100);

/** The same as a percentage: "17.5 %". */
export const percent = (value: number): string => `${hundredths(value)} %`;
