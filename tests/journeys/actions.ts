import type { Locator, Page } from 'playwright-core';

/**
 * A person at work, and how often they act: a tap, a click, a choice and a typed field are one each, as is each key that does
 * something. Looking, scrolling, and bringing a place or a thing under the cursor by arrows are none: a finger aims as well.
 */
export class Actions {
  readonly #page: Page;
  readonly #isTouch: boolean;
  #count = 0;

  constructor(page: Page, isTouch: boolean) {
    this.#page = page;
    this.#isTouch = isTouch;
  }

  /** So far. */
  get count(): number {
    return this.#count;
  }

  /** Taps or clicks something. */
  async tap(what: Locator): Promise<void> {
    this.#count += 1;
    if (this.#isTouch) await what.tap();
    else await what.click();
  }

  /** Taps or clicks a place of the window, px. */
  async tapAt(x: number, y: number): Promise<void> {
    this.#count += 1;
    if (this.#isTouch) await this.#page.touchscreen.tap(x, y);
    else await this.#page.mouse.click(x, y);
  }

  /** Chooses from a list. */
  async choose(field: Locator, label: string): Promise<void> {
    this.#count += 1;
    await field.selectOption({ label });
  }

  /** Types into a field and leaves it. */
  async type(field: Locator, text: string): Promise<void> {
    this.#count += 1;
    await field.fill(text);
    await field.blur();
  }

  /** Presses a key that does something where the focus is. */
  async press(key: string): Promise<void> {
    this.#count += 1;
    await this.#page.keyboard.press(key);
  }
}
