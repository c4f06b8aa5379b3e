/** Takes who asked for a place by keyboard to the plan, and back to where they were. */
export class PlacingFocus {
  #before: HTMLElement | null = null;

  /** Called when the plan begins or ends to wait for a place; true where the plan took the focus. */
  follow(placing: boolean, plan: SVGElement | null): boolean {
    let focused = document.activeElement;
    while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
    if (placing && focused instanceof HTMLElement && focused.matches(':focus-visible')) {
      // From tool to tool the first who asked is gone back to.
      if (this.#before?.isConnected !== true) this.#before = focused;
      plan?.focus({ preventScroll: true });
      return true;
    }
    // What ended it may be gone with its tool, and the focus with it.
    const isLost = focused === plan || focused === document.body;
    if (!placing && this.#before?.isConnected && isLost) this.#before.focus();
    this.#before = null;
    return false;
  }
}
