import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { multipliersOf } from '#engine/labour/multipliers.ts';
import type { Stage } from '#engine/labour/task.ts';
import type { Multiplier, Norms } from '#model/library.ts';
import { addMultiplier, removeMultiplier, setMultiplierOf } from '../../edits/norms.ts';
import { sendLibraryEdit } from '../../library-events.ts';
import { newId } from '../../new-id.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../fields/text-field.ts';
import '../fields/tick-field.ts';
import { workStages } from '../price/work-stages.ts';
import { controlsCss } from '../shared-styles.ts';

/** What makes work slower or faster than the norms: the list that jobs choose from. */
export class MultiplierList extends LitElement {
  static override properties: PropertyDeclarations = { norms: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      h3 {
        margin: 18px 0 4px;
      }
      ul {
        margin: 0 0 12px;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: minmax(220px, 1fr) 112px auto;
        gap: 6px 12px;
        align-items: end;
        padding: 10px 0;
        border-top: 1px solid var(--rule);
      }
      .stages {
        grid-column: 1 / -1;
        display: flex;
        flex-wrap: wrap;
        gap: 0 18px;
      }
      .memory {
        grid-column: 1 / -1;
        margin: 0;
      }
      @media (max-width: 560px) {
        li {
          grid-template-columns: 1fr 1fr;
        }
        .words {
          grid-column: 1 / -1;
        }
      }
    `,
  ];
  declare norms: Norms;

  override render(): TemplateResult {
    return html`<h3>What makes work slower or faster</h3>
      <p class="hint">Jobs choose from these in Price; minutes of the ticked stages are multiplied. 1 changes nothing; the norms themselves
        are for a furnished house.
      </p>
      <ul>
        ${multipliersOf(this.norms).map((one) => this.#row(one))}
      </ul>
      <button @click=${() => sendLibraryEdit(this, addMultiplier(newId()))}>Add another</button>`;
  }

  #row(one: Multiplier): TemplateResult {
    const { id, words, factor, origin } = one;
    return html`<li>
      <text-field
        class="words"
        label="What it is"
        .value=${words}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => sendLibraryEdit(this, setMultiplierOf(id, { words: event.detail.value }))}
      ></text-field>
      <number-field
        label="Minutes times"
        needed
        .value=${factor}
        .min=${0.1}
        .max=${5}
        @field-change=${(event: CustomEvent<FieldChange<number | null>>) => sendLibraryEdit(this, setMultiplierOf(id, { factor: event.detail.value ?? 1 }))}
      ></number-field>
      <button aria-label=${`Take off: ${words}`} @click=${() => sendLibraryEdit(this, removeMultiplier(id))}>Take off</button>
      <div class="stages" role="group" aria-label=${`Stages: ${words}`}>
        ${workStages.map(([stage, name]) => this.#stage(one, stage, name))}
      </div>
      ${origin === 'demo' ? html`<p class="hint memory">From memory, no source: yours once it is changed.</p>` : nothing}
    </li>`;
  }

  #stage({ id, on }: Multiplier, stage: Stage, name: string): TemplateResult {
    return html`<tick-field
      .label=${name}
      .value=${on.includes(stage)}
      @field-change=${(event: CustomEvent<FieldChange<boolean>>) => {
        const now = workStages
          .map(([known]) => known)
          .filter((known) => (known === stage ? event.detail.value : on.includes(known)));
        sendLibraryEdit(this, setMultiplierOf(id, { on: now }));
      }}
    ></tick-field>`;
  }
}
customElements.define('multiplier-list', MultiplierList);
declare global {
  interface HTMLElementTagNameMap {
    'multiplier-list': MultiplierList;
  }
}
