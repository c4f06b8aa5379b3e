import type { Locator, Page } from 'playwright-core';

/** A hand that counts what it does: a tap, a click, a choice from a list and a typed field are one action each. */
export class Hand {
  #actions = 0;
  readonly #page: Page;
  readonly #isTouch: boolean;

  constructor(page: Page, size: 'phone' | 'desk') {
    this.#page = page;
    this.#isTouch = size === 'phone';
  }

  /** How many actions so far. */
  get actions(): number {
    return this.#actions;
  }

  async press(target: Locator): Promise<void> {
    this.#actions += 1;
    await (this.#isTouch ? target.tap() : target.click());
  }

  /** Types into a field, in place of what is there. */
  async type(label: string | RegExp, text: string): Promise<void> {
    this.#actions += 1;
    const field = this.#page.getByLabel(label, { exact: typeof label === 'string' }).first();
    await field.fill(text);
    await field.blur();
  }

  async choose(label: string, option: string): Promise<void> {
    this.#actions += 1;
    await this.#page.getByLabel(label, { exact: true }).first().selectOption({ label: option });
  }

  /** Taps a place of the page. */
  async tapAt(x: number, y: number): Promise<void> {
    this.#actions += 1;
    await (this.#isTouch ? this.#page.touchscreen.tap(x, y) : this.#page.mouse.click(x, y));
  }
}
