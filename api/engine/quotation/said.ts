/** Whole pounds in groups of three digits: 12,345. */
const grouped = (wholeNumber: number): string => String(wholeNumber).replace(/\B(?=(\d{3})+$)/g, ',');

/** Money as the trade writes it: £486.40, £1,137.91, and −£12.00 below nothing. */
export function pounds(pence: number): string {
  const sign = pence < 0 ? '−' : '';
  const whole = Math.abs(pence);
  return `${sign}£${grouped(Math.floor(whole / 100))}.${String(whole % 100).padStart(2, '0')}`;
}

/** What is added to a price, or saved: +£35.76. */
export const poundsMore = (pence: number): string => `${pence < 0 ? '' : '+'}${pounds(pence)}`;

/** Money to the nearest pound, for ranges and bars: £808, £1,138. */
export const wholePounds = (pence: number): string =>
  `${pence < 0 ? '−' : ''}£${grouped(Math.round(Math.abs(pence) / 100))}`;

/** A length in text: 3.05 m. */
export const metres = (lengthMm: number): string => `${(lengthMm / 1000).toFixed(2)} m`;

/** Things in a row: "name, address and contact". */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** A sentence's first letter as a capital. */
export const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;
/** Their names, January first. */
export const months =
  'January February March April May June July August September October November December'.split(' ');

/** A day as people write it: 26 November 2026; what is no ISO date comes back as it is. */
export function dayWords(isoDate: string): string {
  const parts = DATE.exec(isoDate);
  const month = months[Number(parts?.[2]) - 1];
  return parts === null || month === undefined ? isoDate : `${Number(parts[3])} ${month} ${parts[1]}`;
}
