import type { WayAim } from '../../ways/way-cost.ts';
import type { Works } from './works.ts';

/** What a search makes as little as may be. */
export interface Aim {
  /** The ways that a cable is offered; it takes the one that weighs least, of two that weigh alike the first. */
  readonly ways: readonly WayAim[];
  /** What a thousandth of a point of disturbance weighs beside money, thousandths of a penny; whole. */
  readonly perMilliPoint: number;
}

/** The least money, whatever is disturbed. */
export const byPence: Aim = { ways: ['pence'], perMilliPoint: 0 };

/**
 * A thousandth of a point outweighs every difference in money (it is set at £10,000), so that money breaks ties alone. Up to
 * 9,000 points weights are whole numbers that a double holds, and add up exactly.
 */
export const byMess: Aim = { ways: ['pence', 'mess'], perMilliPoint: 1e9 };

/**
 * So much money for a point: between the two. What weighs least then is on the edge of cost against disturbance, where
 * nothing has less of both.
 *
 * @param millipence for a point.
 */
export const atPerPoint = (millipence: number): Aim => ({
  ways: ['pence', 'mess'],
  perMilliPoint: Math.max(0, Math.round(millipence / 1000)),
});

/** What some work weighs; of whole works a whole number, and of several their sum. */
export const weightOf = ({ perMilliPoint }: Aim, { millipence, mess }: Works): number =>
  perMilliPoint === 0 ? millipence : millipence + Math.round(mess * 1000) * perMilliPoint;
