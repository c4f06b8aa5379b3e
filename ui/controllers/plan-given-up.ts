import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { PlanAsk } from '../plan-asks.ts';

/** Hears, while its element is shown, that the plan waits for no place any more, whoever gave it up. */
class PlanGivenUp implements ReactiveController {
  readonly #then: () => void;
  readonly #heardAt: EventTarget | null;

  constructor(then: () => void, heardAt: EventTarget | null) {
    this.#then = then;
    this.#heardAt = heardAt;
  }

  get #at(): EventTarget {
    return this.#heardAt ?? document;
  }

  hostConnected(): void {
    this.#at.addEventListener('plan-asked', this.#heard);
  }

  hostDisconnected(): void {
    this.#at.removeEventListener('plan-asked', this.#heard);
  }

  readonly #heard = (event: Event): void => {
    if ((event as HTMLElementEventMap['plan-asked']).detail.ask === null) this.#then();
  };
}

/**
 * Has an element that asked the plan for a place told when the place is given up: by Escape, on the plan or anywhere else, or by
 * the element itself.
 *
 * @param heardAt where the event ends up; null for the document.
 */
export function whenPlanGivenUp(
  host: Pick<ReactiveControllerHost, 'addController'>,
  then: () => void,
  heardAt: EventTarget | null = null,
): void {
  host.addController(new PlanGivenUp(then, heardAt));
}

/** Has the plan take a tool in hand; null: it puts away the one it has. */
export function askPlan(from: EventTarget, ask: PlanAsk | null): void {
  from.dispatchEvent(new CustomEvent('plan-asked', { detail: { ask }, bubbles: true, composed: true }));
}

declare global {
  interface HTMLElementEventMap {
    'plan-asked': CustomEvent<{ readonly ask: PlanAsk | null }>;
  }
}
