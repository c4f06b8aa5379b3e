const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;

/**
 * Days from 1 March of the year 0 to a day, by the calendar alone: engines have no clock and no time zones.
 * Source: the Gregorian rule of leap years, counted in years that begin in March.
 *
 * @returns null for what is no day of the calendar, written 2025-03-31.
 */
export function dayCount(isoDate: string): number | null {
  const parts = DATE.exec(isoDate);
  if (parts === null) return null;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return null;
  const shifted = (month + 9) % 12;
  const years = month <= 2 ? year - 1 : year;
  const leapDays = Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400);
  return 365 * years + leapDays + Math.floor((153 * shifted + 2) / 5) + day - 1;
}

function daysIn(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** Days from one day to another, below nought when that lies before; null where either is no day. */
export function daysBetween(from: string, to: string): number | null {
  const [start, end] = [dayCount(from), dayCount(to)];
  return start === null || end === null ? null : end - start;
}

const pad = (value: number, digits: number): string => String(value).padStart(digits, '0');

/**
 * The day so many days after another, ISO; null where that is no day.
 * Source: the same count turned round, by the mean length of a Gregorian year (365.2425 days).
 */
export function dayAfter(isoDate: string, days: number): string | null {
  const start = dayCount(isoDate);
  if (start === null) return null;
  const count = start + days;
  const before = (year: number): number =>
    365 * year + Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
  let year = Math.floor(count / 365.2425);
  if (before(year) > count) year--;
  if (before(year + 1) <= count) year++;
  const left = count - before(year);
  const month = Math.floor((5 * left + 2) / 153);
  const day = left - Math.floor((153 * month + 2) / 5) + 1;
  return `${pad(month >= 10 ? year + 1 : year, 4)}-${pad(((month + 2) % 12) + 1, 2)}-${pad(day, 2)}`;
}
