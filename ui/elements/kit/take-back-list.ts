import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { backWords } from '#drawing/shopping/back-words.ts';
import { lackingWords, staysWords } from '#drawing/shopping/kit-words.ts';
import type { TakeBackLine } from '#engine/price/packing/take-back.ts';
import type { OutcomeQuestion, TakeBackFor, TurnedOut } from '#engine/schemes/outcomes/outcome-plan.ts';
import { pounds } from '../../written.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { controlsCss } from '../shared-styles.ts';

/** What goes back to the merchant once it is known how things turned out. @fires turned-out - detail: TurnedOut */
export class TakeBackList extends LitElement {
  static override properties: PropertyDeclarations = {
    questions: { attribute: false },
    back: { attribute: false },
    turnedOut: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        margin-top: 18px;
        padding-top: 10px;
        border-top: 1px solid var(--ink);
      }
      choice-field {
        display: block;
        margin: 0 0 10px;
      }
      h4 {
        margin: 12px 0 4px;
        font: 600 0.9375rem / 1.3 var(--text-font);
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: flex;
        gap: 10px;
        justify-content: space-between;
        padding: 6px 0;
        border-top: 1px solid var(--rule);
      }
      b {
        font-weight: 600;
        white-space: nowrap;
      }
      .lacking {
        padding: 8px 10px;
        background: var(--ask-wash);
        border-left: 4px solid var(--ask);
      }
    `,
  ];
  /** Those of which more than one outcome is bought for. */
  declare questions: readonly OutcomeQuestion[];
  declare back: TakeBackFor;
  declare turnedOut: TurnedOut;

  override render(): TemplateResult {
    const { lines, pence } = this.back;
    const goes = lines.filter(({ back }) => back.length > 0);
    const stays = lines.filter((line) => line.stays > 0);
    return html`<h3>What goes back</h3>
      <p class="hint">
        Say how things turned out on site. Once it is sure, write it into <em>As found</em>: the kit then holds only what is
        needed.
      </p>
      ${this.questions.map((question) => this.#question(question))} ${this.#lacking(lines)}
      <h4>Take back unopened${goes.length === 0 ? ': nothing' : ''}</h4>
      <ul>
        ${goes.map((line) => html`<li><span>${backWords(line)}</span><b>${pounds(line.backPence)}</b></li>`)}
        ${goes.length > 1 ? html`<li><b>In all</b><b>${pounds(pence)}</b></li>` : nothing}
      </ul>
      <p class="hint">
        At what was paid. What a merchant takes back, how long, and less what for restocking is theirs to say; what was cut or
        opened is not.
      </p>
      <details>
        <summary>What is left for the van</summary>
        ${stays.length === 0 ? html`<p>Nothing: all of it is used or goes back.</p>` : html`<ul>${stays.map((line) => html`<li>${staysWords(line)}</li>`)}</ul>`}
      </details>`;
  }

  #question({ id, words, outcomes }: OutcomeQuestion): TemplateResult {
    return html`<choice-field
      .label=${words}
      .options=${outcomes.map((outcome) => ({ value: outcome.id, label: outcome.words }))}
      .empty=${null}
      .value=${this.turnedOut[id] ?? outcomes[0]?.id ?? ''}
      @field-change=${(event: CustomEvent<FieldChange<string | null>>) => {
        event.stopPropagation();
        const detail: TurnedOut = { ...this.turnedOut, [id]: event.detail.value ?? '' };
        this.dispatchEvent(new CustomEvent('turned-out', { detail, bubbles: true, composed: true }));
      }}
    ></choice-field>`;
  }

  #lacking(lines: readonly TakeBackLine[]): TemplateResult | typeof nothing {
    const lacking = lines.filter((line) => line.lacking > 0);
    if (lacking.length === 0) return nothing;
    return html`<div class="lacking" role="status">
      <p>Not bought for, and lacking then: ${lacking.map(lackingWords).join('; ')}.</p>
    </div>`;
  }
}
customElements.define('take-back-list', TakeBackList);
declare global {
  interface HTMLElementTagNameMap {
    'take-back-list': TakeBackList;
  }
}
