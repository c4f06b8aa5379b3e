import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { labelsOf } from '#drawing/label-of.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { Run } from '#engine/ways/run.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { removeConnection } from '../../edits/connections.ts';
import { firstTryWords } from '../../edits/first-try-words.ts';
import { openLegFor } from '../../edits/join-point.ts';
import { mayBeOpened } from '../../edits/join-sources.ts';
import { joinedBy } from '../../edits/joined-by.ts';
import { foundSpurs, mendingOf } from '../../edits/mend-spur.ts';
import { remedyNames } from '../../edits/remedies.ts';
import { remediesOffered } from '../../edits/remedies-offered.ts';
import { freeName, plainSchemeName, tellsAll } from '../../edits/scheme-names.ts';
import {
  addFirstTry,
  addScheme,
  copyScheme,
  type FirstTry,
  firstTries,
  moveScheme,
  removeScheme,
  renameScheme,
  whyNotTry,
} from '../../edits/schemes.ts';
import { type JobEdit, send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { poundsMore } from '../../written.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/text-field.ts';
import '../outcome-mark.ts';
import { controlsCss, stepCss } from '../shared-styles.ts';
import './box-ways.ts';
import './connection-form.ts';
import './draw-way.ts';
import './find-ways.ts';
import './join-row.ts';
import { madeWords } from './made-words.ts';
import './rcd-ways.ts';
import './remedy-list.ts';
import './spur-list.ts';

/** The step Ways: schemes, each one complete way to join the wanted points; how each point is joined, and remedies. */
export class WaysStep extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    made: { state: true },
  };
  static override styles = [
    controlsCss,
    stepCss,
    css`
      h3 {
        margin: 20px 0 6px;
      }
      .tools,
      .tries {
        display: flex;
        flex-wrap: wrap;
        gap: 6px;
        margin: 8px 0;
      }
      .tries button {
        text-align: left;
      }
      a.small {
        min-height: 30px;
        padding: 2px 9px;
        font-size: 0.875rem;
      }
      .rows {
        display: grid;
        gap: 8px;
        margin: 0;
        padding: 0;
        list-style: none;
      }
      .asked {
        display: flex;
        flex-wrap: wrap;
        gap: 6px 8px;
        align-items: center;
      }
      .made {
        display: flex;
        flex-wrap: wrap;
        gap: 6px 10px;
        align-items: center;
        padding: 6px 10px;
        margin: 8px 0;
        background: var(--copper-wash);
        border-left: 4px solid var(--copper);
        border-radius: var(--corner);
      }
      h2 {
        scroll-margin-top: 12px;
      }
      .open-leg {
        padding: 10px 12px;
        margin: 10px 0;
        background: var(--copper-wash);
        border: 1px solid var(--copper);
        border-radius: var(--corner);
      }
      @media (max-width: 700px) {
        a.small {
          min-height: 44px;
        }
      }
    `,
  ];
  declare view: JobView;
  /** The scheme that was made here last; null for none. */
  declare private made: string | null;
  /** The scheme that was made this moment and is not shown yet. */
  #coming: string | null = null;

  constructor() {
    super();
    this.made = null;
    keepFocus(this);
  }

  override willUpdate(): void {
    const shown = this.view.scheme?.id ?? null;
    if (shown !== null && shown === this.#coming) this.made = shown;
    else if (shown !== this.made) this.made = null;
  }

  /** Brings the row of a point that was chosen elsewhere into sight. */
  override updated(changed: PropertyValues<this>): void {
    if (this.made !== null && this.made === this.#coming) this.#comeToMade();
    const { chosen } = this.view;
    if (changed.get('view')?.chosen === chosen || chosen === null) return;
    const rows = [...this.renderRoot.querySelectorAll('join-row')];
    const row = rows.find(({ point }) => point.id === chosen);
    if (row === undefined || row.matches(':focus-within')) return;
    // Rows have their heights once they are drawn themselves.
    void Promise.all(rows.map(({ updateComplete }) => updateComplete)).then(() =>
      row.scrollIntoView({ block: 'nearest' }),
    );
  }

  override render(): TemplateResult {
    const { job } = this.view;
    const scheme = job.schemes.find(({ id }) => id === this.view.scheme?.id) ?? null;
    return html`<h2 tabindex="-1">Ways</h2>
      ${this.#madeLine(scheme)}
      ${this.view.drawing === null ? nothing : html`<draw-way .view=${this.view}></draw-way>`}
      <find-ways .view=${this.view}></find-ways>
      ${scheme === null ? this.#begin() : this.#shown(scheme)} ${this.#more(scheme)}`;
  }

  #begin(): TemplateResult {
    return html`<p>
      A scheme is one complete way to join all wanted points. Begin with a first try, see what the checks say of it, and
      change it; or begin with an empty one and join point by point.
    </p>`;
  }

  #shown(scheme: Scheme): TemplateResult {
    const wanted = this.view.job.points.filter(({ status }) => status === 'wanted');
    return html`<text-field
        label="The shown scheme"
        .value=${scheme.name}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => {
          event.stopPropagation();
          send(this, 'job-edit', renameScheme(scheme.id, event.detail.value));
        }}
      ></text-field>
      ${this.#plainName(scheme)}
      <div class="tools">
        <button class="small" @click=${() => this.#addAndShow(copyScheme(scheme))}>Copy it</button>
        <button class="small" @click=${() => send(this, 'job-edit', removeScheme(scheme))}>Remove it</button>
        ${this.#moveButton(scheme, -1)} ${this.#moveButton(scheme, 1)}
        ${
          this.view.job.schemes.length > 1
            ? html`<a class="button small" href=${`/jobs/${encodeURIComponent(this.view.job.id)}/ways/compare`}>Compare two schemes</a>`
            : nothing
        }
      </div>
      ${this.#asked(scheme)} ${this.#openLeg(scheme)}
      <h3>How each point is joined</h3>
      ${
        wanted.length === 0
          ? html`<p class="hint">No point is wanted yet: add them in <em>Wanted</em>.</p>`
          : html`<ul class="rows">
            ${repeat(
              wanted,
              ({ id }) => id,
              (point) =>
                html`<li><join-row .view=${this.view} .point=${point} .scheme=${scheme}></join-row></li>`,
            )}
          </ul>`
      }
      <spur-list .view=${this.view} .scheme=${scheme}></spur-list>
      ${this.#others(scheme)}
      <h3 id="remedies">Remedies</h3>
      <remedy-list .view=${this.view} .scheme=${scheme}></remedy-list>
      <box-ways .view=${this.view} .scheme=${scheme}></box-ways>
      <rcd-ways .view=${this.view} .scheme=${scheme}></rcd-ways>`;
  }

  /** A name of one's own stays whatever the scheme becomes; what it is now is offered beside it. */
  #plainName(scheme: Scheme): TemplateResult | typeof nothing {
    const { schemes } = this.view.job;
    if (tellsAll(scheme)) return nothing;
    const plain = plainSchemeName(scheme);
    const others = schemes.filter(({ id }) => id !== scheme.id).map(({ name }) => name);
    const free = freeName(plain, others);
    return html`<p class="hint by-what">
      What it does: ${plain.charAt(0).toLowerCase()}${plain.slice(1)}.
      <button class="small" @click=${() => send(this, 'job-edit', renameScheme(scheme.id, free))}>Name it so</button>
    </p>`;
  }

  /** Puts the scheme earlier or later among the others. */
  #moveButton(scheme: Scheme, by: -1 | 1): TemplateResult | typeof nothing {
    const { schemes } = this.view.job;
    if (schemes.length < 2) return nothing;
    const at = schemes.findIndex(({ id }) => id === scheme.id);
    return html`<button
      class="small"
      aria-label=${by < 0 ? 'Move left: put its card earlier among the schemes' : 'Move right: put its card later among the schemes'}
      ?disabled=${schemes[at + by] === undefined}
      @click=${() => send(this, 'job-edit', moveScheme(scheme, by))}
    >
      ${by < 0 ? '← Move left' : 'Move right →'}
    </button>`;
  }

  /** What would cure what fails, told where a new scheme is looked at first. */
  #asked(scheme: Scheme): TemplateResult | typeof nothing {
    const failing = (this.view.scheme?.findings ?? []).filter(({ outcome }) => outcome === 'fails');
    const offered = remediesOffered(scheme, failing);
    if (offered.length === 0) return nothing;
    const names = offered.map(({ remedy, pence }) => {
      const price = pence === null ? '' : ` (${poundsMore(pence)})`;
      return `${remedyNames[remedy.kind]}${price}`;
    });
    return html`<p class="asked">
      <outcome-mark .outcome=${'fails'}></outcome-mark>
      <span>What fails asks for: ${[...new Set(names)].join(', ')}.</span>
      <button
        class="small"
        @click=${() => this.renderRoot.querySelector('#remedies')?.scrollIntoView({ block: 'start' })}
      >
        Look at the remedies
      </button>
    </p>`;
  }

  /** A leg chosen on the plan can be opened for a point there and then. */
  #openLeg(scheme: Scheme): TemplateResult | typeof nothing {
    const leg = this.view.job.legs.find(({ id }) => id === this.view.chosen);
    if (leg === undefined) return nothing;
    const worked = { ...this.view.estimate.asFound.worked, job: this.view.job };
    const isOpened = mayBeOpened(worked, leg);
    const wanted = this.view.job.points.filter(({ status }) => status === 'wanted');
    return html`<section class="open-leg" aria-label="The chosen leg">
      <strong>${labelsOf(worked)(leg.id)}</strong>
      ${isOpened ? nothing : html`<p class="hint">It is no leg of a ring or a radial, so it is not opened to carry one on.</p>`}
      <div class="tools">
        ${
          isOpened
            ? wanted.map(
                (point) =>
                  html`<button
                    class="small"
                    @click=${() => send(this, 'job-edit', openLegFor({ worked, scheme }, point.id, leg.id))}
                  >
                    Open this leg for ${point.label}
                  </button>`,
              )
            : nothing
        }
      </div>
    </section>`;
  }

  /** Connections that join no wanted point and mend no spur that is there: what the survey has changed under them. */
  #others(scheme: Scheme): TemplateResult | typeof nothing {
    const wanted = new Set(
      this.view.job.points.filter(({ status }) => status === 'wanted').map(({ id }) => id),
    );
    const mended = new Set(
      foundSpurs(this.view.estimate.asFound.worked).map((spur) => mendingOf(scheme, spur)?.id),
    );
    const others = scheme.connections.filter(
      (one) => !mended.has(one.id) && !joinedBy(one).some((id) => wanted.has(id)),
    );
    if (others.length === 0) return nothing;
    const labelOf = labelsOf(this.view.scheme?.worked ?? this.view.estimate.asFound.worked);
    return html`<h3>Also in this scheme</h3>
      <ul class="rows">
        ${others.map((connection) => this.#other(scheme, connection, labelOf(connection.id)))}
      </ul>`;
  }

  #other(scheme: Scheme, connection: Connection, name: string): TemplateResult {
    const at = { schemeId: scheme.id, connectionId: connection.id };
    return html`<li>
      <details>
        <summary>${name}</summary>
        <connection-form .view=${this.view} .connection=${connection}></connection-form>
        <button class="small" @click=${() => send(this, 'job-edit', removeConnection(at, name))}>Take out</button>
      </details>
    </li>`;
  }

  #more(scheme: Scheme | null): TemplateResult {
    const worked = { ...this.view.estimate.asFound.worked, job: this.view.job };
    return html`<h3>${scheme === null ? 'Begin a scheme' : 'Another scheme'}</h3>
      <p class="hint">
        A first try is a starting point, made plainly and not searched for: check it, then change it.
      </p>
      <div class="tries">
        ${firstTries.map((which) => this.#tryButton(worked, which))}
        <button @click=${() => this.#addAndShow(addScheme(this.view.job))}>An empty one</button>
      </div>`;
  }

  #tryButton(worked: Worked, which: FirstTry): TemplateResult {
    const why = whyNotTry(worked, which);
    return html`<button ?disabled=${why !== null} @click=${() => this.#addAndShow(addFirstTry(worked, which))}>
      <span>${firstTryWords(worked, which)}${why === null ? nothing : html`<span class="hint">: ${why}</span>`}</span>
    </button>`;
  }

  /** What was made is shown at the top of the step; the buttons that make one lie far below it on a phone. */
  #addAndShow({ edit, schemeId }: { readonly edit: JobEdit; readonly schemeId: string }): void {
    this.#coming = schemeId;
    send(this, 'job-edit', edit);
    send(this, 'scheme-shown', { schemeId });
  }

  /** The new cables of a scheme, where they are worked out already. */
  #runsOf({ id }: Scheme): readonly Run[] | null {
    return this.view.estimate.schemes.find((one) => one.id === id)?.runs ?? null;
  }

  #comeToMade(): void {
    this.#coming = null;
    const heading = this.renderRoot.querySelector<HTMLElement>('h2');
    heading?.scrollIntoView({ block: 'start' });
    heading?.focus({ preventScroll: true });
  }

  /** Tells of a scheme that was just made, with the way back; gone when another is looked at. */
  #madeLine(scheme: Scheme | null): TemplateResult {
    const isMade = scheme !== null && scheme.id === this.made;
    return html`<div role="status">
      ${
        isMade
          ? html`<p class="made">
              <span>“${scheme.name}” is made${madeWords(this.#runsOf(scheme))}</span>
              <button class="small" @click=${() => send(this, 'job-edit', removeScheme(scheme))}>Take it back</button>
            </p>`
          : nothing
      }
    </div>`;
  }
}

customElements.define('ways-step', WaysStep);
declare global {
  interface HTMLElementTagNameMap {
    'ways-step': WaysStep;
  }
}
