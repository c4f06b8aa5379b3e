import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { connectionsTold, connectionWords } from '#drawing/connection-words.ts';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { setLock } from '../../edits/connections.ts';
import { keepFound, lockFound } from '../../edits/keep-found.ts';
import type { Candidate } from '../../found-ways/candidate.ts';
import { madeOf } from '../../found-ways/made-of.ts';
import { isSameConnection, keptAs } from '../../found-ways/same-ways.ts';
import { restsWords } from '../../found-ways/search-words.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { controlsCss } from '../shared-styles.ts';
import { toldOf } from './candidate-words.ts';
import './found-card.ts';
import './run-steps.ts';

/** How many cards are drawn before all are asked for. */
const SHOWN = 6;

/**
 * Found schemes as cards, of which one is shown on the plan: by touch, by Tab, by the arrow keys. Under the shown one, what
 * can be done with it.
 *
 * @fires ways-asked, job-edit, scheme-shown
 */
export class FoundList extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    candidates: { attribute: false },
    all: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      [role='radiogroup'] {
        display: grid;
        gap: 8px;
      }
      .way {
        background: var(--sheet);
        border: 1px solid var(--line);
        border-radius: var(--corner);
      }
      .way.on {
        border-color: var(--copper);
        box-shadow: inset 0 0 0 1px var(--copper);
      }
      [role='radio'] {
        display: block;
        width: 100%;
        min-height: 44px;
        padding: 8px 12px;
        font-weight: 400;
        text-align: left;
        background: none;
        border: 0;
      }
      .doing {
        padding: 0 12px 10px;
      }
      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 6px;
      }
      ul {
        margin: 8px 0 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: flex;
        gap: 4px 10px;
        align-items: center;
        justify-content: space-between;
        padding: 6px 0;
        font-size: 0.875rem;
        border-top: 1px solid var(--rule);
      }
      li button {
        flex: none;
        max-width: 55%;
      }
      .more {
        margin-top: 8px;
      }
    `,
  ];
  declare view: JobView;
  declare candidates: readonly Candidate[];
  declare private all: boolean;

  constructor() {
    super();
    this.candidates = [];
    this.all = false;
    keepFocus(this);
  }

  get #tried(): string | null {
    return this.view.ways.tried?.id ?? null;
  }

  get #scheme(): Scheme | null {
    return this.view.job.schemes.find(({ id }) => id === this.view.scheme?.id) ?? null;
  }

  /** Cards that are drawn: the first few; the least disturbing and the shown one are among them in any case. */
  get #drawn(): readonly Candidate[] {
    const tried = this.#tried;
    return this.all
      ? this.candidates
      : this.candidates.filter(({ scheme, calmest }, i) => i < SHOWN || calmest || scheme.id === tried);
  }

  override render(): TemplateResult {
    const labelOf = labelsOf({ ...this.view.estimate.asFound.worked, job: this.view.job });
    const drawn = this.#drawn;
    const left = this.candidates.length - drawn.length;
    return html`<div role="radiogroup" aria-label="Found ways: the marked one is on the plan">
        ${repeat(
          drawn,
          ({ scheme }) => scheme.id,
          (candidate) => this.#way(candidate, labelOf),
        )}
      </div>
      ${
        left > 0
          ? html`<button
              class="more"
              @click=${() => {
                this.all = true;
              }}
            >
              Show all ${this.candidates.length}
            </button>`
          : nothing
      }`;
  }

  #way(candidate: Candidate, labelOf: LabelOf): TemplateResult {
    const { scheme } = candidate;
    const isOn = scheme.id === this.#tried;
    const isReached = isOn || (this.#tried === null && candidate === this.candidates[0]);
    const number = this.candidates.indexOf(candidate) + 1;
    const rests = restsWords(candidate, labelOf);
    const held = scheme.connections.filter((one) => this.#isLocked(one));
    return html`<div class=${isOn ? 'way on' : 'way'}>
      <button
        role="radio"
        aria-checked=${isOn}
        aria-label=${[toldOf(candidate, number), madeOf(scheme, labelOf), rests ?? []].flat().join('. ')}
        tabindex=${isReached ? 0 : -1}
        data-id=${scheme.id}
        @click=${() => this.#try(candidate)}
        @focus=${(event: FocusEvent) => this.#focused(event, candidate)}
        @keydown=${(event: KeyboardEvent) => this.#keyed(event, candidate)}
      >
        <found-card
          .candidate=${candidate}
          .number=${number}
          .made=${madeOf(scheme, labelOf)}
          .keptAs=${keptAs(this.view.job.schemes, scheme)?.name ?? null}
          .rests=${rests}
          .locked=${held.map((one) => connectionWords(one, labelOf))}
        ></found-card>
      </button>
      ${isOn ? this.#doing(candidate, labelOf) : nothing}
    </div>`;
  }

  #try({ scheme }: Candidate): void {
    send(this, 'ways-asked', { do: 'try', scheme });
  }

  /** Come to by keyboard, a card is shown at once; a finger's tap shows it by itself. */
  #focused({ target }: FocusEvent, candidate: Candidate): void {
    if (
      target instanceof HTMLElement &&
      target.matches(':focus-visible') &&
      candidate.scheme.id !== this.#tried
    )
      this.#try(candidate);
  }

  #keyed(event: KeyboardEvent, candidate: Candidate): void {
    const drawn = this.#drawn;
    const at = drawn.indexOf(candidate);
    const to = {
      ArrowDown: at + 1,
      ArrowRight: at + 1,
      ArrowUp: at - 1,
      ArrowLeft: at - 1,
      Home: 0,
      End: -1,
    }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const next = drawn.at(to % drawn.length);
    if (next === undefined) return;
    this.#try(next);
    void this.updateComplete.then(() => this.focusOn(next.scheme.id));
  }

  /** Brings a card into sight and gives it the focus. */
  focusOn(schemeId: string): void {
    const card = this.renderRoot.querySelector<HTMLElement>(
      `[role=radio][data-id="${CSS.escape(schemeId)}"]`,
    );
    card?.focus({ preventScroll: true });
    card?.scrollIntoView({ block: 'nearest' });
  }

  #doing({ scheme }: Candidate, labelOf: LabelOf): TemplateResult {
    const { job, ways } = this.view;
    const kept = keptAs(job.schemes, scheme);
    return html`<div class="doing">
      <div class="tools">
        ${
          kept === null
            ? html`<button class="main" @click=${() => send(this, 'job-edit', keepFound(job, scheme, ways.locked))}>
                Keep this way
              </button>`
            : html`<button @click=${() => send(this, 'scheme-shown', { schemeId: kept.id })}>Work on it</button>`
        }
        <button @click=${() => send(this, 'ways-asked', { do: 'try', scheme: null })}>
          ${this.#scheme === null ? 'Take it off the plan' : 'Back to the shown scheme'}
        </button>
      </div>
      <ul aria-label="What it is made of">
        ${connectionsTold(scheme.connections, labelOf).map(({ connection, words }) => this.#connection(connection, words))}
      </ul>
      ${
        ways.tried === null
          ? nothing
          : html`<run-steps
              .worked=${ways.tried.worked}
              .runs=${ways.tried.runs.filter(({ connectionId }) => connectionId !== null)}
            ></run-steps>`
      }
    </div>`;
  }

  #isLocked(connection: Connection): boolean {
    return this.view.ways.locked.some((one) => isSameConnection(one, connection));
  }

  #connection(connection: Connection, name: string): TemplateResult {
    const button = this.#isLocked(connection)
      ? html`<button class="small" aria-label=${`Let it go: ${name}`} @click=${() => this.#letGo(connection)}>
          Let it go
        </button>`
      : html`<button
          class="small"
          aria-label=${`Keep this, search the rest: ${name}`}
          @click=${() => this.#lock(connection, name)}
        >
          Keep this, search the rest
        </button>`;
    return html`<li><span>${name}</span>${button}</li>`;
  }

  #lock(connection: Connection, name: string): void {
    send(this, 'job-edit', lockFound(this.view.job, this.#scheme?.id ?? null, { connection, name }));
  }

  #letGo(connection: Connection): void {
    const scheme = this.#scheme;
    const own = scheme?.connections.find(
      (one) => scheme.locks.includes(one.id) && isSameConnection(one, connection),
    );
    if (scheme === null || own === undefined) return;
    send(this, 'job-edit', setLock({ schemeId: scheme.id, connectionId: own.id }, false));
  }
}
customElements.define('found-list', FoundList);
declare global {
  interface HTMLElementTagNameMap {
    'found-list': FoundList;
  }
}
