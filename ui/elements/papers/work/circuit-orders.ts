import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { cableSaid, orderScene } from '#drawing/work/order-scene.ts';
import { evidenceWords, shapeWords } from '#drawing/work/order-words.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { type CircuitOrder, circuitOrder } from '#engine/work/circuit-order.ts';
import { referencesOf } from '#engine/work/references.ts';
import { controlsCss } from '../../shared-styles.ts';
import { stillPicture } from './still-picture.ts';
import { workSheetCss } from './work-sheet-styles.ts';

/** The circuits that a scheme touches, place after place, as found beside as they will be. */
export class CircuitOrders extends LitElement {
  static override properties: PropertyDeclarations = { worked: { attribute: false } };
  static override styles = [
    controlsCss,
    workSheetCss,
    css`
      .both {
        display: flex;
        flex-wrap: wrap;
        gap: 12px 32px;
      }
      .both > div {
        flex: 1 1 18rem;
        min-width: 0;
        max-width: 100%;
      }
      @media print {
        /* Side by side as on screen, and from the head of a page where they do not fit under what is before them. */
        .both {
          flex-wrap: nowrap;
        }
        .both:has([one-page]) {
          break-inside: avoid;
        }
      }
    `,
  ];
  declare worked: Worked;

  override render(): TemplateResult {
    const references = referencesOf(this.worked);
    return html`${this.worked.circuitIds.map((id) => {
      const found = circuitOrder(this.worked, 'found', id, references);
      const proposed = circuitOrder(this.worked, 'proposed', id, references);
      return html`<section>
        <h3>${(proposed ?? found)?.name ?? id}, in order</h3>
        <div class="both">
          ${found === null ? html`<p class="soft">A new circuit: there is nothing of it yet.</p>` : order('As found', found)}
          ${proposed === null ? nothing : order('As it will be', proposed)}
        </div>
      </section>`;
    })}`;
  }
}

/** So many rows go on one page of A4, with lettering of 2 mm and more. */
const FIT_ONE_PAGE = 24;

function order(title: string, told: CircuitOrder): TemplateResult {
  const { evidence, rows, others, unwired } = told;
  return html`<div>
    <h4>${title}</h4>
    <p class="soft">${shapeWords(told)}, ${evidenceWords[evidence]}.</p>
    ${rows.length > 1 ? stillPicture(orderScene(told), rows.length <= FIT_ONE_PAGE) : nothing}
    ${others.length === 0 ? nothing : html`<p>Beside this order: ${others.map(cableSaid).join('; ')}.</p>`}
    ${unwired.length === 0 ? nothing : html`<p>No cable is recorded to ${unwired.join(', ')}.</p>`}
  </div>`;
}

customElements.define('circuit-orders', CircuitOrders);
declare global {
  interface HTMLElementTagNameMap {
    'circuit-orders': CircuitOrders;
  }
}
