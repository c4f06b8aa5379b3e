import { months } from '#engine/quotation/said.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

const twoDigits = (value: number): string => String(value).padStart(2, '0');
const clock = (at: Date): string => `${twoDigits(at.getHours())}:${twoDigits(at.getMinutes())}`;

/** Midnights between two moments, by the calendar of this device. */
function daysBetween(from: Date, to: Date): number {
  const dayOf = (at: Date): number => Date.UTC(at.getFullYear(), at.getMonth(), at.getDate());
  return Math.round((dayOf(to) - dayOf(from)) / (24 * HOUR_MS));
}

/**
 * When something happened, in words: "just now", "12 minutes ago", "today, 11:48", "yesterday, 17:02", "3 November".
 * A moment that has not come yet (clocks differ) counts as just now; what is no date comes back as it is.
 */
export function whenWords(iso: string, now: Date): string {
  const at = new Date(iso);
  if (Number.isNaN(at.getTime())) return iso;
  const agoMs = now.getTime() - at.getTime();
  if (agoMs < MINUTE_MS) return 'just now';
  const minutes = Math.floor(agoMs / MINUTE_MS);
  if (agoMs < HOUR_MS) return minutes === 1 ? 'a minute ago' : `${minutes} minutes ago`;
  const days = daysBetween(at, now);
  if (days === 0) return `today, ${clock(at)}`;
  if (days === 1) return `yesterday, ${clock(at)}`;
  const day = `${at.getDate()} ${months[at.getMonth()]}`;
  return at.getFullYear() === now.getFullYear() ? day : `${day} ${at.getFullYear()}`;
}
