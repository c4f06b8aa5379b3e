import type { PlanPoint } from '#engine/plan/plane.ts';
import type { Place } from '#model/installation.ts';

/** A point under the hand or the keys: where it began, and where it has got to. */
export interface Moving {
  readonly pointId: string;
  readonly from: PlanPoint;
  readonly place: Place;
}

/** Told of every place a point comes to; one `end` closes what its `move`s began. */
export type TellPlace = (pointId: string, place: Place, phase: 'move' | 'end') => void;

/** Holds the point that is being moved; tells its newest place no more than once a picture. */
export class MovingHand {
  #moving: Moving | null = null;
  #frame: number | null = null;
  readonly #tell: TellPlace;

  constructor(tell: TellPlace) {
    this.#tell = tell;
  }

  get moving(): Moving | null {
    return this.#moving;
  }

  take(moving: Moving): void {
    this.#moving = moving;
  }

  /** Brings the held point on; a hand moves more often than a screen is drawn. */
  bring(place: Place): void {
    if (this.#moving === null) return;
    this.#moving = { ...this.#moving, place };
    this.#frame ??= requestAnimationFrame(() => {
      this.#frame = null;
      if (this.#moving !== null) this.#tell(this.#moving.pointId, this.#moving.place, 'move');
    });
  }

  /** Lets the point go where it is; nothing where none is held. */
  letGo(): void {
    const moving = this.#moving;
    this.#forgetFrame();
    this.#moving = null;
    if (moving !== null) this.#tell(moving.pointId, moving.place, 'end');
  }

  #forgetFrame(): void {
    if (this.#frame !== null) cancelAnimationFrame(this.#frame);
    this.#frame = null;
  }
}
