import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Extra } from '#model/extra.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { removeExtra, renameExtra, setExtra } from '../../edits/extras.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { hundredths, pounds } from '../../written.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/text-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { extraFields } from './extra-fields.ts';
import type { ExtraAdded } from './extra-form.ts';
import './extra-form.ts';

/** What extra work takes: "75 min, £18.49 of materials". */
function takesWords({ typicalMin, materialsPence }: Extra): string {
  const parts = [
    ...(typicalMin === undefined ? [] : [`${hundredths(typicalMin)} min`]),
    ...(materialsPence === undefined ? [] : [`${pounds(materialsPence)} of materials`]),
  ];
  return parts.length === 0 ? 'nothing said yet: it costs nothing' : parts.join(', ');
}

/**
 * Work that no drawing brings: what of it the job has, each to be changed or removed, and a form for more.
 *
 * @fires job-edit
 * @fires extra-added - detail: { words }
 */
export class ExtraWork extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    suggested: { type: String },
    adding: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      details {
        padding: 4px 0;
        border-top: 1px solid var(--rule);
      }
      summary {
        min-height: 44px;
        padding: 8px 0;
        cursor: pointer;
        overflow-wrap: anywhere;
      }
      summary small {
        display: block;
        color: var(--ink-soft);
        font-size: 0.875rem;
        font-weight: 400;
      }
      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(190px, 1fr));
        gap: 12px;
        padding: 4px 0 12px;
      }
      .wide {
        grid-column: 1 / -1;
      }
      .add {
        margin: 8px 0;
      }
    `,
  ];
  declare view: JobView;
  /** Words that stand for those that nobody types of what is added. */
  declare suggested: string;
  declare private adding: boolean;

  constructor() {
    super();
    keepFocus(this);
    this.suggested = '';
    this.adding = false;
  }

  override render(): TemplateResult {
    return html`${(this.view.job.extras ?? []).map((extra) => this.#extra(extra))}
      ${
        this.adding
          ? html`<extra-form
              .view=${this.view}
              .suggested=${this.suggested}
              @extra-added=${(event: CustomEvent<ExtraAdded>) => this.#added(event.detail)}
              @extra-dropped=${() => {
                this.adding = false;
              }}
            ></extra-form>`
          : html`<button
              class="add"
              @click=${() => {
                this.adding = true;
              }}
            >
              Add work not on the drawing
            </button>`
      }`;
  }

  #extra(extra: Extra): TemplateResult {
    const { job, library } = this.view;
    return html`<details>
      <summary>${extra.words}<small>${takesWords(extra)}</small></summary>
      <div class="fields">
        <text-field
          class="wide"
          label="What is done, in words for the customer"
          .value=${extra.words}
          @field-change=${(event: CustomEvent<FieldChange<string>>) => {
            event.stopPropagation();
            send(this, 'job-edit', renameExtra(extra.id, event.detail.value));
            // Emptied words were not taken: shown again from the job.
            this.requestUpdate();
          }}
        ></text-field>
        ${extraFields({ extra, job, library, set: (facts) => send(this, 'job-edit', setExtra(extra.id, facts)) })}
        <div class="wide">
          <button @click=${() => send(this, 'job-edit', removeExtra(extra))}>
            Remove<span class="visually-hidden">: ${extra.words}</span>
          </button>
        </div>
      </div>
    </details>`;
  }

  #added(detail: ExtraAdded): void {
    this.adding = false;
    this.dispatchEvent(new CustomEvent('extra-added', { detail }));
  }
}
customElements.define('extra-work', ExtraWork);
declare global {
  interface HTMLElementTagNameMap {
    'extra-work': ExtraWork;
  }
}
