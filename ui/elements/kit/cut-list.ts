import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { type Cut, type CutList, cutListsOf, plainMetres } from '#drawing/shopping/cut-lists.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { areLit } from '../../lit-things.ts';
import { controlsCss } from '../shared-styles.ts';
import './cut-bars.ts';

/**
 * What is cut from which length, item by item: each length as a bar, its cuts listed under it. A cut touched in either
 * lights what it is for on the plan.
 *
 * @fires things-lit
 */
export class CutListView extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    scheme: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      h3 {
        margin: 16px 0 6px;
      }
      ol {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(10.5rem, 1fr));
        gap: 4px 8px;
        margin: 10px 0 6px;
        padding: 0;
        list-style: none;
      }
      li button {
        display: grid;
        grid-template-columns: 1.6rem minmax(0, 1fr) auto;
        gap: 4px;
        width: 100%;
        padding: 4px 8px;
        font-size: 0.875rem;
        text-align: left;
      }
      .length {
        white-space: nowrap;
      }
      .number {
        color: var(--ink-soft);
      }
      .near {
        padding: 6px 10px;
        border-left: 4px solid var(--copper);
        background: var(--copper-wash);
      }
      .without {
        padding: 6px 10px;
        border-left: 4px solid var(--ask);
        background: var(--ask-wash);
      }
    `,
  ];
  declare view: JobView;
  declare scheme: SchemeEstimate;

  override render(): TemplateResult {
    const lists = cutListsOf(this.scheme);
    if (lists.length === 0) return html`<p>Nothing is cut to length in this scheme.</p>`;
    return html`<p class="hint">
        Longest first from each length, ends, slack and waste in them. Touch a cut to light its run on the plan. Measure on
        site before you cut.
      </p>
      ${lists.map((list) => this.#list(list))}`;
  }

  #list({ description, bars, without, nearMisses, proof }: CutList): TemplateResult {
    const cuts = bars.flatMap((bar) => bar.cuts);
    return html`<section aria-label=${description}>
      <h3>${description}</h3>
      <cut-bars
        .bars=${bars}
        .lit=${this.view.lit}
        @cut-touched=${(event: CustomEvent<{ cause: string }>) => this.#light(event.detail.cause)}
      ></cut-bars>
      <ol>
        ${cuts.map((cut) => this.#cut(cut))}
      </ol>
      ${
        without.length === 0
          ? nothing
          : html`<div class="without">
              <strong>Nothing on the price list, nor in the van, is long enough for</strong>
              <ol>
                ${without.map((cut) => this.#cut(cut))}
              </ol>
            </div>`
      }
      ${nearMisses.map((words) => html`<p class="near">${words}</p>`)}
      ${proof === '' ? nothing : html`<p class="hint">${proof}</p>`}
    </section>`;
  }

  #cut({ number, label, lengthMm, cause }: Cut): TemplateResult {
    return html`<li>
      <button aria-pressed=${areLit(this.view.lit, [cause])} @click=${() => this.#light(cause)}>
        <span class="number">${number}</span><span>${label}</span><span class="length">${plainMetres(lengthMm)}</span>
      </button>
    </li>`;
  }

  #light(cause: string): void {
    send(this, 'things-lit', { subjectIds: areLit(this.view.lit, [cause]) ? [] : [cause] });
  }
}
customElements.define('cut-list', CutListView);
declare global {
  interface HTMLElementTagNameMap {
    'cut-list': CutListView;
  }
}
