import type { StoredSession } from '../../db/people-stores.ts';

const HOUR_MS = 60 * 60_000;
export const DAY_MS = 24 * HOUR_MS;

/** A session that was not used for so long is over, ms. */
const IDLE_MS = 14 * DAY_MS;
/** However much it is used, it is over after so long, ms. */
export const SESSION_MOST_MS = 60 * DAY_MS;
/** A use is noted no more often than this, ms. */
const NOTED_EVERY_MS = 10 * 60_000;
/** How long an invitation may be used, ms. */
export const INVITATION_MS = 7 * DAY_MS;
/** How long a link for a customer goes at most, and where the quotation names no day, days. */
export const LINK_DAYS = { most: 90, unnamed: 30 } as const;
/** Clocks are put right by so much without anybody noticing, ms. What began later than that was begun by another clock. */
const SLACK_MS = 5 * 60_000;

/** Whether a moment lies between two, ISO 8601: what begins in the future was made before a clock was set back, and does not count. */
export function isWithin(fromAt: string, untilAt: string, now: Date): boolean {
  const at = now.getTime();
  return Date.parse(fromAt) <= at + SLACK_MS && at < Date.parse(untilAt);
}

/** Whether a session still goes. */
export function isAlive({ beganAt, seenAt }: Pick<StoredSession, 'beganAt' | 'seenAt'>, now: Date): boolean {
  const end = Math.min(Date.parse(beganAt) + SESSION_MOST_MS, Date.parse(seenAt) + IDLE_MS);
  return (
    isWithin(beganAt, new Date(end).toISOString(), now) && isWithin(seenAt, new Date(end).toISOString(), now)
  );
}

/** Whether this use of it is to be noted. */
export const isToBeNoted = ({ seenAt }: Pick<StoredSession, 'seenAt'>, now: Date): boolean =>
  now.getTime() - Date.parse(seenAt) >= NOTED_EVERY_MS;

/** When something ends that begins now. */
export const after = (now: Date, spanMs: number): string => new Date(now.getTime() + spanMs).toISOString();
