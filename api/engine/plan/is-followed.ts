import type { Leg } from '#model/installation.ts';
import { isGuess } from './is-guess.ts';

/**
 * Whether somebody has followed the way of a leg, so that it may be cut where it is drawn: it has waypoints, and what is
 * said of them (as its route, or else as its waypoints) is no guess. Waypoints without a word count as seen.
 */
export function isFollowed(leg: Pick<Leg, 'via' | 'certainty'> | undefined): boolean {
  if (leg?.via === undefined || leg.via.length === 0) return false;
  return !isGuess(leg.certainty?.route ?? leg.certainty?.via);
}
