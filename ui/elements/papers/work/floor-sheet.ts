import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { cutScene } from '#drawing/shopping/cut-scene.ts';
import { DRILLED_SAID, drilledWallRows } from '#drawing/work/drilled-wall-words.ts';
import { boardRows, type FloorRows, joistRows, TAPE_SAID } from '#drawing/work/floor-words.ts';
import { CUTS_SAID, markedCuts } from '#drawing/work/marked-cuts.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { floorPlaces } from '#engine/work/floors/floor-places.ts';
import type { JobView } from '../../../job-view.ts';
import { controlsCss } from '../../shared-styles.ts';
import { stillPicture } from './still-picture.ts';
import { workSheetHead } from './work-sheet-head.ts';
import { workSheetCss } from './work-sheet-styles.ts';

/** Of the bars on a sheet of A4; on a phone they are scrolled. */
const BARS_MM = 170;

/** What is cut from which length, then where floors are opened, joists are cut and walls are drilled, as a tape finds it. */
export class FloorSheet extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    workSheetCss,
    css`
      ul {
        margin: 0 0 12px;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: 3.2rem minmax(0, 1fr);
        gap: 0 8px;
        padding: 8px 0;
        border-top: 1px solid var(--rule);
        break-inside: avoid;
      }
      h3,
      h4 {
        break-after: avoid;
      }
      .where {
        font-variant-numeric: tabular-nums;
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult {
    const { scheme } = this.view;
    if (scheme === null) return html`<p class="hint">Wants a scheme: make one in <em>Ways</em>.</p>`;
    const { worked } = scheme;
    const work = floorPlaces(worked);
    const [boards, joists] = [boardRows(worked, work), joistRows(worked, work)];
    const walls = drilledWallRows(worked);
    return html`${workSheetHead(this.view, 'Cuts, floors and walls')} ${cuts(scheme)}
      <h3>Floors that are opened</h3>
      ${boards.length === 0 ? html`<p>No floor is opened.</p>` : html`<p class="soft">${TAPE_SAID}</p>`}
      ${boards.map(rooms)}
      <h3>Joists that are cut</h3>
      ${joists.length === 0 ? html`<p>No joist is cut.</p>` : joists.map(rooms)}
      <h3>Walls that are drilled</h3>
      ${walls.length === 0 ? html`<p>No wall is drilled through.</p>` : html`<p class="soft">${DRILLED_SAID}</p>`}
      ${walls.map(rooms)}`;
  }
}

function cuts(scheme: SchemeEstimate): TemplateResult {
  const lists = markedCuts(scheme);
  return html`<h3>Cut list</h3>
    ${lists.length === 0 ? html`<p>Nothing is cut to length.</p>` : html`<p class="soft">${CUTS_SAID}</p>`}
    ${lists.map(
      ({ description, bars, without, nearMisses }) => html`<h4>${description}</h4>
        ${bars.length === 0 ? '' : stillPicture(cutScene(bars, BARS_MM, true))}
        ${without.map(({ label, lengthMm }) => html`<p>${label}, ${(lengthMm / 1000).toFixed(2)} m: nothing on the price list, nor in the van, is long enough.</p>`)}
        ${nearMisses.map((words) => html`<p class="soft">${words}</p>`)}`,
    )}`;
}

const rooms = ({ title, rows }: FloorRows): TemplateResult => html`<h4>${title}</h4>
  <ul>
    ${rows.map(
      ({ mark, cables, where, what, note }) => html`<li>
        <strong>${mark}</strong>
        <div>
          <div>${what}, for ${cables}</div>
          <div class="where">${where}</div>
          <div class="soft">${note}</div>
        </div>
      </li>`,
    )}
  </ul>`;

customElements.define('floor-sheet', FloorSheet);
declare global {
  interface HTMLElementTagNameMap {
    'floor-sheet': FloorSheet;
  }
}
