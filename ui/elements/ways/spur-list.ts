import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { joinedBy } from '../../edits/joined-by.ts';
import {
  type FoundSpur,
  foundSpurs,
  mendingOf,
  mendSpur,
  type SpurMending,
  whyNotMend,
} from '../../edits/mend-spur.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import type { Choice } from '../fields/choice-field.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss } from '../shared-styles.ts';
import './connection-form.ts';
import { findingRows, findingRowsCss } from './finding-rows.ts';
import { findingsOf } from './findings-of.ts';

/** The spurs that are there already: each left alone, fused down, or closed into the ring. */
export class SpurList extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    scheme: { attribute: false },
    open: { state: true },
  };
  static override styles = [
    controlsCss,
    findingRowsCss,
    css`
      :host {
        display: block;
      }
      h3 {
        margin: 20px 0 6px;
      }
      .rows {
        display: grid;
        gap: 8px;
        margin: 0;
        padding: 0;
        list-style: none;
      }
      .rows > li {
        padding: 10px 12px;
        background: var(--sheet);
        border: 1px solid var(--line);
        border-radius: var(--corner);
      }
      details,
      .hint {
        margin: 6px 0 0;
      }
    `,
  ];
  declare view: JobView;
  declare scheme: Scheme;
  /** The spur whose form is open, by its first point. */
  declare private open: string | null;

  constructor() {
    super();
    keepFocus(this);
    this.open = null;
  }

  override render(): TemplateResult | typeof nothing {
    const spurs = foundSpurs(this.view.estimate.asFound.worked);
    if (spurs.length === 0) return nothing;
    const labelOf = labelsOf(this.view.scheme?.worked ?? this.view.estimate.asFound.worked);
    return html`<h3>Spurs that are there</h3>
      <ul class="rows">
        ${spurs.map((spur) => this.#spur(spur, labelOf))}
      </ul>`;
  }

  #spur(spur: FoundSpur, labelOf: LabelOf): TemplateResult {
    const mending = mendingOf(this.scheme, spur);
    const name = spur.pointIds.map(labelOf).join(', ');
    const from = spur.sourceId === null ? '' : `, from ${labelOf(spur.sourceId)}`;
    return html`<li>
      <choice-field
        .label=${`The spur to ${name}${from}`}
        .value=${howMended(mending)}
        .options=${choices(spur)}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<SpurMending>>) => {
          event.stopPropagation();
          send(this, 'job-edit', mendSpur(this.scheme, spur, event.detail.value, name));
        }}
      ></choice-field>
      ${mending === null ? nothing : this.#mended(spur, mending)}
    </li>`;
  }

  #mended(spur: FoundSpur, connection: Connection): TemplateResult {
    const { scheme, job } = this.view;
    // What hangs behind it has the rest in its own row.
    const behind = joinedBy(connection).map((id) => job.points.find((point) => point.id === id)?.label ?? id);
    if (behind.length > 0) return html`<p class="hint">The rest is told with ${behind[0]}.</p>`;
    const key = spur.pointIds[0] ?? '';
    const isOpen = this.open === key;
    return html`${scheme === null ? nothing : findingRows(this, findingsOf(scheme, connection))}
      <details
        ?open=${isOpen}
        @toggle=${(event: Event) => {
          if (!(event.target instanceof HTMLDetailsElement)) return;
          if (event.target.open) this.open = key;
          else if (this.open === key) this.open = null;
        }}
      >
        <summary>How exactly</summary>
        ${isOpen ? html`<connection-form .view=${this.view} .connection=${connection}></connection-form>` : nothing}
      </details>`;
  }
}

function howMended(connection: Connection | null): SpurMending {
  if (connection === null) return 'none';
  return connection.kind === 'fuse-down' ? 'fuse' : 'close';
}

function choices(spur: FoundSpur): readonly Choice[] {
  const choice = (how: 'fuse' | 'close', label: string): Choice => {
    const why = whyNotMend(spur, how);
    return why === null ? { value: how, label } : { value: how, label, notPossible: why };
  };
  return [
    { value: 'none', label: 'stays as it is' },
    choice('fuse', 'gets a fused unit before it'),
    choice('close', 'is closed into the ring'),
  ];
}
customElements.define('spur-list', SpurList);
declare global {
  interface HTMLElementTagNameMap {
    'spur-list': SpurList;
  }
}
