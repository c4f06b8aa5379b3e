import type { LitElement, ReactiveController } from 'lit';

const stops = 'button, a[href], input, select, textarea, summary, [tabindex]';

/** The control of an element that takes the focus first, in whatever shadow root; null where it has none. */
function firstStop(element: HTMLElement): HTMLElement | null {
  if (element.matches(stops)) return element.matches(':disabled') ? null : element;
  const inside = element.shadowRoot?.querySelectorAll<HTMLElement>('*') ?? [];
  for (const one of inside) {
    const found = firstStop(one);
    if (found !== null) return found;
  }
  return null;
}

/** What in an element can take the focus, in order: controls, and elements with controls of their own. */
const focusables = (root: ParentNode): readonly HTMLElement[] =>
  [...root.querySelectorAll<HTMLElement>('*')].filter((one) => firstStop(one) !== null);

/**
 * Keeps the focus from falling to the page where an element draws itself anew without the control that had it: a row that was
 * taken out, a button that has done its work. It goes to what stands in the same place, or to the last before it.
 */
class KeepFocus implements ReactiveController {
  readonly #host: LitElement;
  #had: { readonly element: Element; readonly place: number } | null = null;

  constructor(host: LitElement) {
    this.#host = host;
  }

  hostUpdate(): void {
    const root = this.#host.shadowRoot;
    const element = root?.activeElement ?? null;
    this.#had =
      root === null || element === null
        ? null
        : { element, place: (focusables(root) as readonly Element[]).indexOf(element) };
  }

  hostUpdated(): void {
    const root = this.#host.shadowRoot;
    const had = this.#had;
    this.#had = null;
    if (root === null || had === null || (had.element.isConnected && !had.element.matches(':disabled')))
      return;
    const left = focusables(root);
    const next = left[Math.min(Math.max(had.place, 0), left.length - 1)];
    if (next !== undefined) firstStop(next)?.focus();
  }
}

/** Has an element keep the focus when what had it is no longer drawn. */
export const keepFocus = (host: LitElement): void => host.addController(new KeepFocus(host));
