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

/**
 * The day that comes so many whole days after another, before it where they are below nought; both written 2025-03-31.
 *
 * @returns null for what is no day of the calendar, and where the year would not be written in four digits.
 */
export function dayAfter(isoDate: string, days: number): string | null {
  const start = dayCount(isoDate);
  return start === null ? null : isoDay(start + days);
}

const DAYS_IN_400_YEARS = 146_097;

/** The inverse of `dayCount`: the year that begins in March first, then its month and day. */
function isoDay(count: number): string | null {
  const era = Math.floor(count / DAYS_IN_400_YEARS);
  const ofEra = count - era * DAYS_IN_400_YEARS;
  // Leap days before it in the era: one in 1,461 days, less one in 36,524, but for the era's last day.
  const leapDays = Math.floor(ofEra / 1460) - Math.floor(ofEra / 36_524) + Math.floor(ofEra / 146_096);
  const years = Math.floor((ofEra - leapDays) / 365);
  const ofYear = ofEra - (365 * years + Math.floor(years / 4) - Math.floor(years / 100));
  const shifted = Math.floor((5 * ofYear + 2) / 153);
  const day = ofYear - Math.floor((153 * shifted + 2) / 5) + 1;
  const month = shifted < 10 ? shifted + 3 : shifted - 9;
  const year = years + era * 400 + (month <= 2 ? 1 : 0);
  if (year < 0 || year > 9999) return null;
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}
