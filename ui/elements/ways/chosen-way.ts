import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { labelsOf } from '#drawing/label-of.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { setLock } from '../../edits/connections.ts';
import { connectionOf } from '../../edits/joined-by.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { controlsCss } from '../shared-styles.ts';

/** What can be done in Ways with the thing that is chosen on the plan: hold it fast for the search, or let it go. @fires job-edit */
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
    // A found scheme that is tried is not the job's: nothing of it can be locked before it is kept.
    const scheme = job.schemes.find(({ id }) => id === shown?.id);
    if (scheme === undefined || chosen === null) return nothing;
    const [base = ''] = chosen.split('/');
    const connection = scheme.connections.find(({ id }) => id === base) ?? connectionOf(scheme, chosen);
    return connection === null ? nothing : this.#lock(scheme, connection);
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
          ${isLocked ? 'Release the lock' : `Lock ${name}`}
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
