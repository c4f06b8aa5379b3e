import type { Worked } from '#engine/connections/worked.ts';
import { planPoint } from '#engine/plan/plane.ts';
import type { Place } from '#model/installation.ts';
import { type Moving, MovingHand, type TellPlace } from './moving-hand.ts';
import { movedByKey, placeAt, placeInWords, placeName } from './point-movement.ts';

/** The plan on which points are moved, as it is at each moment, and whom the mover tells. */
export interface MoverPlan {
  readonly worked: () => Worked;
  readonly storeyId: () => string;
  readonly movable: () => ReadonlySet<string>;
  readonly mmPerPx: () => number;
  /** A point was taken: what is in sight stays as it is. */
  readonly took: () => void;
  readonly tell: TellPlace;
  /** A point came to rest. */
  readonly rested: (pointId: string) => void;
  /** What a screen reader is told of a movement. */
  readonly said: (words: string) => void;
}

/** Moves the points that may be moved, by hand along and between walls, and by keys. */
export class PointMover {
  readonly #plan: MoverPlan;
  readonly #hand: MovingHand;

  constructor(plan: MoverPlan) {
    this.#plan = plan;
    this.#hand = new MovingHand(plan.tell);
  }

  get moving(): Moving | null {
    return this.#hand.moving;
  }

  /** Where the point under the hand is: "W1, Living room, 450 mm above floor"; the distances to the corners are drawn. Null for none. */
  get telling(): string | null {
    const { moving } = this;
    if (moving === null) return null;
    return `${placeName(this.#plan.worked(), moving.place, moving.pointId)}, ${moving.place.heightMm} mm above floor`;
  }

  /** The hand pulls a point by so many px from where it took it. */
  dragged(pointId: string, [dx, dy]: readonly [number, number], phase: 'begin' | 'move' | 'end'): void {
    if (phase === 'begin') this.#take(pointId);
    const { moving } = this;
    if (moving === null || phase === 'begin') return;
    if (phase === 'end' && dx === 0 && dy === 0 && moving.place === this.#placeOf(pointId)) {
      // Lifted and put down where it was.
      this.letGo();
      return;
    }
    const mmPerPx = this.#plan.mmPerPx();
    const at = planPoint(moving.from[0] + dx * mmPerPx, moving.from[1] - dy * mmPerPx);
    this.#hand.bring(placeAt(this.#plan.worked().plan, this.#plan.storeyId(), at, moving.place.heightMm));
    if (phase === 'end') this.letGo();
  }

  /** Whether a key moved the point. */
  byKey(pointId: string, key: string, isFine: boolean): boolean {
    const before = this.#plan.movable().has(pointId)
      ? (this.moving?.place ?? this.#placeOf(pointId))
      : undefined;
    const place = before && movedByKey(this.#plan.worked().plan, before, key, isFine);
    if (place === undefined || place === null || !this.#take(pointId)) return false;
    this.#hand.bring(place);
    this.#say(place, pointId);
    return true;
  }

  /** What was moved has come to rest; nothing where nothing was. */
  letGo(): void {
    const { moving } = this;
    if (moving === null) return;
    this.#hand.letGo();
    this.#plan.rested(moving.pointId);
    this.#say(moving.place, moving.pointId);
  }

  /** The plan goes out of sight: what was moved stays where it is. */
  stop(): void {
    this.#hand.letGo();
  }

  #placeOf(pointId: string): Place | undefined {
    return this.#plan.worked().job.points.find(({ id }) => id === pointId)?.place;
  }

  /** Takes a point that has a place; false where it has none. */
  #take(pointId: string): boolean {
    if (this.moving?.pointId === pointId) return true;
    const from = this.#plan.worked().plan.positionOfPoint.get(pointId)?.at;
    const place = this.#placeOf(pointId);
    if (from === undefined || place === undefined) return false;
    this.#plan.took();
    this.#hand.take({ pointId, from, place });
    return true;
  }

  /** "W1, Living room, 1080 mm from the left corner, …". */
  #say(place: Place, pointId: string): void {
    const worked = this.#plan.worked();
    this.#plan.said(`${placeName(worked, place, pointId)}, ${placeInWords(worked.plan, place)}`);
  }
}
