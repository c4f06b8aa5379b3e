import { between, type PlanWindow } from './plan-window.ts';

const GLIDE_MS = 220;

/** Moves a window over to another one, picture by picture; at once for who asks for less motion. */
export class Glide {
  #frame: number | null = null;
  readonly #show: (window: PlanWindow) => void;

  constructor(show: (window: PlanWindow) => void) {
    this.#show = show;
  }

  to(from: PlanWindow, target: PlanWindow): void {
    this.stop();
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
      this.#show(target);
      return;
    }
    const began = performance.now();
    const step = (now: number): void => {
      const part = Math.min(1, Math.max(0, (now - began) / GLIDE_MS));
      this.#frame = part < 1 ? requestAnimationFrame(step) : null;
      // Soft at the end, so that the eye can follow.
      this.#show(between(from, target, 1 - (1 - part) ** 3));
    };
    this.#frame = requestAnimationFrame(step);
  }

  stop(): void {
    if (this.#frame !== null) cancelAnimationFrame(this.#frame);
    this.#frame = null;
  }
}
