import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Place } from '#model/installation.ts';
import { send } from '../job-events.ts';
import { type AskOf, isAskOf, type PlanAnswer, type PlanAsk, type PlanAsks } from '../plan-asks.ts';
import { askPlan } from './plan-given-up.ts';

/** An element that asks for tools. */
export type ToolHost = Pick<ReactiveControllerHost, 'addController' | 'requestUpdate'> & EventTarget;

/** What is heard of a tool while it is in hand. */
export interface ToolHears {
  readonly placed?: (place: Place) => void;
  readonly answered?: (answer: PlanAnswer) => void;
  /** It was put away, by whomever. */
  readonly ended?: () => void;
}

/**
 * An element's hold on one tool of the plan. The plan stands beside the element, not around it: what comes of the tool is heard
 * where events end up.
 */
export class ToolHold<K extends keyof PlanAsks> implements ReactiveController {
  readonly #host: ToolHost;
  readonly #tool: K;
  readonly #hears: ToolHears;
  readonly #heardAt: EventTarget | null;
  #isHeld = false;

  /** @param heardAt where events end up; null for the document. */
  constructor(host: ToolHost, tool: K, hears: ToolHears, heardAt: EventTarget | null = null) {
    this.#host = host;
    this.#tool = tool;
    this.#hears = hears;
    this.#heardAt = heardAt;
    host.addController(this);
  }

  get isHeld(): boolean {
    return this.#isHeld;
  }

  /** Takes the tool up, or says what is asked of it now. */
  ask(ask: AskOf<K> & PlanAsk): void {
    this.#isHeld = true;
    askPlan(this.#host, ask);
    this.#host.requestUpdate();
  }

  /** Puts the tool away; nothing where it is not in hand. */
  letGo(): void {
    if (this.#isHeld) askPlan(this.#host, null);
  }

  get #at(): EventTarget {
    return this.#heardAt ?? document;
  }

  hostConnected(): void {
    this.#at.addEventListener('plan-asked', this.#asked);
    this.#at.addEventListener('place-tapped', this.#placed);
    this.#at.addEventListener('plan-answered', this.#answered);
  }

  hostDisconnected(): void {
    this.#at.removeEventListener('plan-asked', this.#asked);
    this.#at.removeEventListener('place-tapped', this.#placed);
    this.#at.removeEventListener('plan-answered', this.#answered);
    this.#end();
  }

  readonly #asked = (event: Event): void => {
    const { ask } = (event as HTMLElementEventMap['plan-asked']).detail;
    if (!isAskOf(ask, this.#tool)) this.#end();
  };

  readonly #placed = (event: Event): void => {
    if (this.#isHeld) this.#hears.placed?.((event as HTMLElementEventMap['place-tapped']).detail.place);
  };

  readonly #answered = (event: Event): void => {
    if (this.#isHeld) this.#hears.answered?.((event as HTMLElementEventMap['plan-answered']).detail);
  };

  #end(): void {
    if (!this.#isHeld) return;
    this.#isHeld = false;
    this.#hears.ended?.();
    this.#host.requestUpdate();
  }
}

/** Tells whoever holds a tool what came of it. */
export const answerPlan = (from: EventTarget, answer: PlanAnswer): void =>
  send(from, 'plan-answered', answer);
