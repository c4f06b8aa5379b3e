import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import type { Remedy, Scheme } from '#model/scheme.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { addRemedy } from '../../edits/add-remedy.ts';
import { remedyNames, removeRemedy } from '../../edits/remedies.ts';
import { remediesOffered } from '../../edits/remedies-offered.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { poundsMore } from '../../written.ts';
import type { Choice } from '../fields/choice-field.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss } from '../shared-styles.ts';

/** Whether a kind of remedy is done to a circuit, a board, a point or a bond. */
const doneTo: Readonly<Record<Remedy['kind'], 'circuit' | 'board' | 'point' | 'service'>> = {
  rcbo: 'circuit',
  'rcd-enclosure': 'circuit',
  'lower-device': 'circuit',
  'new-board': 'board',
  'rcd-unit': 'point',
  'rcd-outlet': 'point',
  're-box': 'point',
  'single-to-twin': 'point',
  'bond-upgrade': 'service',
};

/** Changes to what is there that the scheme brings along: an RCBO, a deeper box, a bond. */
export class RemedyList extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    scheme: { attribute: false },
    kind: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      ul {
        margin: 4px 0 10px;
        padding: 0;
        list-style: none;
      }
      li {
        display: flex;
        gap: 8px;
        align-items: center;
        justify-content: space-between;
        padding: 4px 0;
        border-top: 1px solid var(--rule);
      }
      li button {
        flex: none;
      }
      h4 {
        margin: 8px 0 0;
        font: 500 0.875rem/1.35 var(--text-font);
        color: var(--ink-soft);
      }
      strong {
        font-weight: 600;
        white-space: nowrap;
      }
      .why {
        display: block;
      }
      .add {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 10px;
      }
    `,
  ];
  declare view: JobView;
  declare scheme: Scheme;
  declare private kind: Remedy['kind'] | null;

  constructor() {
    super();
    keepFocus(this);
    this.kind = null;
  }

  override render(): TemplateResult {
    const labelOf = labelsOf(this.view.scheme?.worked ?? this.view.estimate.asFound.worked);
    const { remedies } = this.scheme;
    return html`${
      remedies.length === 0
        ? html`<p class="hint">None yet.</p>`
        : html`<ul>
            ${remedies.map(
              (remedy) =>
                html`<li>
                  <span
                    >${remedyWords(remedy, labelOf)}${
                      remedy.device === undefined ? '' : `, ${remedy.device.ratingA} A`
                    }</span
                  >
                  <button
                    class="small"
                    aria-label=${`Take out: ${remedyNames[remedy.kind]}`}
                    @click=${() => send(this, 'job-edit', removeRemedy(this.scheme.id, remedy))}
                  >
                    Take out
                  </button>
                </li>`,
            )}
          </ul>`
    }
      ${this.#offers(labelOf)}
      <div class="add">
        <choice-field
          .label=${remedies.length === 0 ? 'Add a remedy' : 'Add another remedy'}
          .empty=${'Choose…'}
          .value=${this.kind}
          .options=${Object.entries(remedyNames).map(([value, label]) => ({ value, label }))}
          @field-change=${(event: CustomEvent<FieldChange<Remedy['kind'] | null>>) => {
            event.stopPropagation();
            this.kind = event.detail.value;
          }}
        ></choice-field>
        ${this.kind === null ? '' : this.#places(this.kind)}
      </div>`;
  }

  /** What the checks ask for, with what it would add to the price. */
  #offers(labelOf: LabelOf): TemplateResult | typeof nothing {
    const offered = remediesOffered(this.scheme, this.view.scheme?.findings ?? []);
    if (offered.length === 0) return nothing;
    return html`<h4>The checks ask for</h4>
      <ul class="offers">
        ${offered.map(({ remedy, pence, titles }) => {
          const words = remedyWords(remedy, labelOf);
          return html`<li>
            <span>
              ${words}${pence === null ? nothing : html` <strong>${poundsMore(pence)}</strong>`}
              <span class="hint why">${titles.join('; ')}</span>
            </span>
            <button
              class="small"
              aria-label=${`Add: ${words}`}
              @click=${() => send(this, 'job-edit', addRemedy(this.scheme.id, remedy, remedyNames[remedy.kind]))}
            >
              Add
            </button>
          </li>`;
        })}
      </ul>`;
  }

  #places(kind: Remedy['kind']): TemplateResult {
    return html`<choice-field
      label="Done to"
      .empty=${'Choose…'}
      .value=${null}
      .options=${this.#choices(kind)}
      @field-change=${(event: CustomEvent<FieldChange<string | null>>) => {
        event.stopPropagation();
        const at = event.detail.value;
        if (at === null) return;
        send(this, 'job-edit', addRemedy(this.scheme.id, { kind, at }, remedyNames[kind]));
        this.kind = null;
      }}
    ></choice-field>`;
  }

  #choices(kind: Remedy['kind']): readonly Choice[] {
    const { circuits, boards, points } = this.view.job;
    switch (doneTo[kind]) {
      case 'circuit':
        return circuits.map(({ id, name }) => ({ value: id, label: name }));
      case 'board':
        return boards.map(({ id, label }) => ({ value: id, label }));
      case 'point':
        return points.map(({ id, label }) => ({ value: id, label }));
      case 'service':
        return ['water', 'gas', 'oil', 'steel', 'other'].map((value) => ({ value, label: value }));
    }
  }
}
const remedyWords = ({ kind, at }: Remedy, labelOf: LabelOf): string =>
  `${remedyNames[kind]}${at === undefined ? '' : `: ${labelOf(at)}`}`;
customElements.define('remedy-list', RemedyList);
declare global {
  interface HTMLElementTagNameMap {
    'remedy-list': RemedyList;
  }
}
