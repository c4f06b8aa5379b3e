import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { backView } from '#drawing/work/back-view.ts';
import { connectionCard, type EndSaid } from '#drawing/work/connection-card.ts';
import { oldToNew } from '#drawing/work/old-to-new.ts';
import { strippingSaid } from '#drawing/work/stripping-words.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { kitCountsOf } from '#engine/takeoff/kit-counts.ts';
import type { ConnectionPlace, ConnectionSheet } from '#engine/work/connection-place.ts';
import { connectionSheet } from '#engine/work/connection-sheet.ts';
import type { JobView } from '../../../job-view.ts';
import { controlsCss } from '../../shared-styles.ts';
import { stillPicture } from './still-picture.ts';
import './circuit-orders.ts';
import { workSheetHead } from './work-sheet-head.ts';
import { workSheetCss } from './work-sheet-styles.ts';

/** How everything is connected once the shown scheme is carried out: the circuits in order, then a card for every place. */
export class ConnectionSheetElement extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    workSheetCss,
    css`
      .cards {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 26rem), 1fr));
        gap: 12px;
      }
      article {
        padding: 12px;
        border: 1px solid var(--line);
        border-radius: 3px;
        background: var(--sheet);
        break-inside: avoid;
      }
      ol,
      ul {
        margin: 8px 0;
        padding-left: 20px;
      }
      scene-picture {
        margin: 8px 0;
      }
      table {
        width: 100%;
        border-collapse: collapse;
        font-size: 0.875rem;
      }
      th,
      td {
        padding: 4px 8px 4px 0;
        text-align: left;
        vertical-align: top;
        font-weight: 400;
      }
      caption {
        padding-top: 6px;
        text-align: left;
      }
      tbody th {
        padding-top: 8px;
        font-weight: 600;
      }
      tbody th.new {
        color: var(--copper-ink);
      }
      tr.core td {
        border-top: 1px solid var(--rule);
      }
      @media print {
        /* What is done and the back on the left, cables on the right: so a place is well shorter than a page and never parted. */
        .cards {
          display: block;
        }
        article {
          columns: 2;
          column-gap: 6mm;
          margin-bottom: 4mm;
          padding: 3mm;
        }
        article li {
          break-inside: avoid;
        }
        th,
        td {
          padding-block: 0.5mm;
        }
        ol,
        ul {
          margin: 1mm 0;
        }
        table {
          break-inside: avoid;
        }
      }
      .look {
        padding-left: 10px;
        border-left: 4px solid var(--ask);
        list-style: none;
      }
    `,
  ];
  declare view: JobView;
  #told: { readonly of: SchemeEstimate['worked']; readonly sheet: ConnectionSheet } | null = null;

  /** Worked out once for a scheme as it stands. */
  #sheetOf({ worked }: SchemeEstimate): ConnectionSheet {
    if (this.#told?.of !== worked) this.#told = { of: worked, sheet: connectionSheet(worked) };
    return this.#told.sheet;
  }

  override render(): TemplateResult {
    const { scheme } = this.view;
    if (scheme === null) return html`<p class="hint">Wants a scheme: make one in <em>Ways</em>.</p>`;
    const sheet = this.#sheetOf(scheme);
    const worked = sheet.places.filter(({ isWorkedOn }) => isWorkedOn);
    const others = sheet.places.filter(({ isWorkedOn }) => !isWorkedOn);
    const colours = oldToNew(sheet);
    return html`${workSheetHead(this.view, 'Connections')}
      <circuit-orders .worked=${scheme.worked}></circuit-orders>
      <h3>Where something is connected</h3>
      ${worked.length === 0 ? html`<p class="hint">This scheme connects nothing yet.</p>` : nothing}
      <div class="cards">${worked.map(card)}</div>
      <h3>Stripping, sleeving, tightening</h3>
      <ul>
        ${strippingSaid(kitCountsOf(this.view.library)).map((words) => html`<li>${words}</li>`)}
      </ul>
      ${
        colours.length === 0
          ? nothing
          : html`<h3>Old colours and new</h3>
              <ul>
                ${colours.map((words) => html`<li>${words}</li>`)}
              </ul>`
      }
      ${
        others.length === 0
          ? nothing
          : html`<details class="screen">
              <summary>As found and not touched: ${others.length}</summary>
              <div class="cards">${others.map(card)}</div>
            </details>`
      }`;
  }
}

function card(place: ConnectionPlace): TemplateResult {
  const { title, where, todo, sides, holds, look } = connectionCard(place);
  return html`<article data-place=${place.id}>
    <h4>${title}</h4>
    <div class="soft">${where}</div>
    ${listOf(todo, 'ol')}
    ${
      look.length === 0
        ? nothing
        : html`<ul class="look">
            ${look.map((words) => html`<li>${words}</li>`)}
          </ul>`
    }
    ${sides.length === 0 ? nothing : stillPicture(backView(place))}
    ${sides.map(({ title: side, ends }) => sideTable(side, ends))}
    ${listOf(holds, 'ul')}
  </article>`;
}

const listOf = (all: readonly string[], kind: 'ol' | 'ul'): TemplateResult | typeof nothing => {
  if (all.length === 0) return nothing;
  const items = all.map((words) => html`<li>${words}</li>`);
  return kind === 'ol'
    ? html`<ol>
        ${items}
      </ol>`
    : html`<ul>
        ${items}
      </ul>`;
};

const sideTable = (title: string, ends: readonly EndSaid[]): TemplateResult => html`<table>
  ${title === '' ? nothing : html`<caption class="soft">${title}</caption>`}
  <thead>
    <tr>
      <th scope="col" class="soft">Core</th>
      <th scope="col" class="soft">Colour</th>
      <th scope="col" class="soft">Terminal</th>
    </tr>
  </thead>
  ${ends.map(
    ({ words, size, isNew, conductors }) => html`<tbody>
      <tr>
        <th scope="rowgroup" colspan="3" class=${isNew ? 'new' : ''}>${words}${size === '' ? '' : `, ${size}`}</th>
      </tr>
      ${conductors.map(
        ({ core, colour, terminal }) => html`<tr class="core">
          <td>${core}</td>
          <td>${colour}</td>
          <td>${terminal}</td>
        </tr>`,
      )}
    </tbody>`,
  )}
</table>`;

customElements.define('connection-sheet', ConnectionSheetElement);
declare global {
  interface HTMLElementTagNameMap {
    'connection-sheet': ConnectionSheetElement;
  }
}
