import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Tells whoever draws the house that a floor is being told of, or no longer; where events end up, since who tells may be gone by then. */
export function tellFloorShown(id: string, isShown: boolean): void {
  document.dispatchEvent(new CustomEvent('floor-shown', { detail: { id, isShown } }));
}

/** Knows, while its element is shown, whether somebody is telling of a floor: of a storey's or of a room's. */
export class FloorShown implements ReactiveController {
  readonly #host: Pick<ReactiveControllerHost, 'addController' | 'requestUpdate'>;
  readonly #shown = new Set<string>();

  constructor(host: Pick<ReactiveControllerHost, 'addController' | 'requestUpdate'>) {
    this.#host = host;
    host.addController(this);
  }

  get isShown(): boolean {
    return this.#shown.size > 0;
  }

  hostConnected(): void {
    document.addEventListener('floor-shown', this.#heard);
  }

  hostDisconnected(): void {
    document.removeEventListener('floor-shown', this.#heard);
    this.#shown.clear();
  }

  readonly #heard = (event: Event): void => {
    const { id, isShown } = (event as CustomEvent<{ readonly id: string; readonly isShown: boolean }>).detail;
    if (isShown) this.#shown.add(id);
    else this.#shown.delete(id);
    this.#host.requestUpdate();
  };
}
