/** Takes who asked for a place by keyboard to the plan, and back to where they were. */
export class PlacingFocus {
  #before: HTMLElement | null = null;

  /** Called when the plan begins or ends to wait for a place. */
  follow(placing: boolean, plan: SVGElement | null): void {
    let focused = document.activeElement;
    while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
    if (placing && focused instanceof HTMLElement && focused.matches(':focus-visible')) {
      this.#before = focused;
      plan?.focus({ preventScroll: true });
      return;
    }
    if (!placing && this.#before?.isConnected && focused === plan) this.#before.focus();
    this.#before = null;
  }
}
