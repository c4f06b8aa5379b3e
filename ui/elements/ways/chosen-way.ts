import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { labelsOf } from '#drawing/label-of.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { setLock } from '../../edits/connections.ts';
import { connectionOf } from '../../edits/joined-by.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { runOf, whyNotDrawn } from '../../way-drawing/way-draft.ts';
import { controlsCss } from '../shared-styles.ts';
import './run-way.ts';

/** What can be done in Ways with the thing that is chosen on the plan: hold it fast for the search, draw its way. @fires job-edit, way-drawn */
export class ChosenWay extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 6px;
        margin-top: 8px;
      }
      p {
        margin: 8px 0 0;
        font-size: 0.875rem;
      }
    `,
  ];
  declare view: JobView;

  constructor() {
    super();
    keepFocus(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { job, scheme: shown, chosen } = this.view;
    const leg = job.legs.find(({ id }) => id === chosen);
    if (leg !== undefined) return this.#leg(leg.id);
    // A found scheme that is tried is not the job's: nothing of it can be locked before it is kept.
    const scheme = job.schemes.find(({ id }) => id === shown?.id);
    if (scheme === undefined || shown === null || chosen === null) return nothing;
    const [base = ''] = chosen.split('/');
    const connection = scheme.connections.find(({ id }) => id === base) ?? connectionOf(scheme, chosen);
    if (connection === null) return nothing;
    const runs = shown.runs.filter(({ id, connectionId, from, to }) =>
      [id, connectionId, from.pointId, to.pointId].includes(chosen),
    );
    return html`${this.#lock(scheme, connection)} ${runs.map((run) => html`<run-way .worked=${shown.worked} .library=${this.view.library} .run=${run}></run-way>`)}`;
  }

  #leg(legId: string): TemplateResult | typeof nothing {
    const target = { what: 'leg', legId } as const;
    if (whyNotDrawn(runOf(this.view.estimate.asFound.worked, target)) !== null) return nothing;
    return html`<div class="tools">
      <button class="small" @click=${() => send(this, 'way-drawn', { do: 'begin', target })}>Draw where it runs</button>
    </div>`;
  }

  #lock(scheme: Scheme, connection: Connection): TemplateResult {
    const isLocked = scheme.locks.includes(connection.id);
    const name = labelsOf(this.view.scheme?.worked ?? this.view.estimate.asFound.worked)(connection.id);
    return html`${isLocked ? html`<p>${name} is held fast: a search leaves it as it is.</p>` : nothing}
      <div class="tools">
        <button
          class="small"
          @click=${() =>
            send(this, 'job-edit', setLock({ schemeId: scheme.id, connectionId: connection.id }, !isLocked))}
        >
          ${isLocked ? 'Release the lock' : `Lock ${name.charAt(0).toLowerCase()}${name.slice(1)}`}
        </button>
      </div>`;
  }
}
customElements.define('chosen-way', ChosenWay);
declare global {
  interface HTMLElementTagNameMap {
    'chosen-way': ChosenWay;
  }
}
