import type { LitElement, ReactiveController } from 'lit';

/** How large an element is on the screen, CSS px; it is drawn anew when that changes. What is not shown keeps the size it had. */
export class SeenSize implements ReactiveController {
  /** 0 until it is shown for the first time, as the height is. */
  width = 0;
  height = 0;
  readonly #host: LitElement;
  readonly #watch = new ResizeObserver(([entry]) => {
    const { width = 0, height = 0 } = entry?.contentRect ?? {};
    if (width === 0 || (width === this.width && height === this.height)) return;
    [this.width, this.height] = [width, height];
    this.#host.requestUpdate();
  });

  constructor(host: LitElement) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    this.#watch.observe(this.#host);
  }

  hostDisconnected(): void {
    this.#watch.disconnect();
  }
}
