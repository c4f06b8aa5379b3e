import { LitElement } from 'lit';

/** The control that has the focus, inside whatever shadow roots. */
function deepestFocus(): Element | null {
  let focused = document.activeElement;
  while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
  return focused;
}

/** Moves the focus to the first heading of an element that can take it, once the element is drawn. */
export async function focusHeadingOf(element: LitElement): Promise<void> {
  await element.updateComplete;
  const heading = element.renderRoot.querySelector<HTMLElement>('h1[tabindex], h2[tabindex]');
  heading?.focus({ preventScroll: true });
}

const typedIn = new Set(['text', 'number', 'date', 'search', 'email', 'tel', 'url', 'password']);

/** True when keys go into a text at the moment, which has an undo of its own. */
export function isTyping(event: KeyboardEvent): boolean {
  const [target] = event.composedPath();
  if (target instanceof HTMLInputElement) return typedIn.has(target.type);
  return target instanceof HTMLTextAreaElement;
}

/** Has the field that is being typed in send what it holds, as if it were left for a moment. */
export function sendTyped(): void {
  const field = deepestFocus();
  if (!(field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement)) return;
  field.blur();
  field.focus({ preventScroll: true });
}

/** Gives the focus to the heading of what a page shows; where that is still on its way, once it is there. */
export class HeadingFocus {
  #isDue = false;

  /** The heading of what is shown from now on is to have the focus. */
  ask(): void {
    this.#isDue = true;
  }

  /** To be called whenever the page has been drawn, with what it shows. */
  settle(shown: Element | null): void {
    if (!this.#isDue || !(shown instanceof LitElement) || shown.localName === 'part-coming') return;
    this.#isDue = false;
    void focusHeadingOf(shown);
  }
}
