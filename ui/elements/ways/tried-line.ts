import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { connectionWords } from '#drawing/connection-words.ts';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import { isSameConnection, keptAs } from '../../found-ways/same-ways.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { listed, pounds } from '../../written.ts';
import { controlsCss } from '../shared-styles.ts';

/** Says over the plan that what it shows is a found way and not the job's, and what of it is held fast. @fires ways-asked */
export class TriedLine extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 12px;
        align-items: center;
        justify-content: space-between;
        padding: 4px 12px;
        background: var(--copper-wash);
        border-bottom: 1px solid var(--copper);
      }
      p {
        margin: 0;
        font-size: 0.875rem;
      }
      button {
        flex: none;
      }
      @media (max-width: 43.75em) {
        :host {
          flex-wrap: nowrap;
          padding: 4px 6px 4px 10px;
        }
      }
    `,
  ];
  declare view: JobView;

  override render(): TemplateResult {
    const { ways, job } = this.view;
    const { tried, search } = ways;
    const at = (search.answer?.candidates ?? []).findIndex(({ scheme }) => scheme.id === tried?.id);
    const found = search.answer?.candidates[at]?.scheme;
    const kept = found === undefined ? null : keptAs(job.schemes, found);
    const name = at < 0 ? 'A found way' : `Way ${at + 1}`;
    return html`<p role="status">
        <strong>${name}, ${pounds(tried?.totals.grossPence ?? 0)}</strong>: ${kept === null ? 'not kept yet' : `kept as “${kept.name}”`}.
        <span class="held">${this.#held(labelsOf({ ...this.view.estimate.asFound.worked, job }))}</span>
      </p>
      <button class="small" @click=${() => send(this, 'ways-asked', { do: 'try', scheme: null })}>
        Off the plan
      </button>`;
  }

  #held(labelOf: LabelOf): string {
    const { tried, locked } = this.view.ways;
    const held = (tried?.worked.scheme?.connections ?? []).filter((connection) =>
      locked.some((one) => isSameConnection(one, connection)),
    );
    return held.length === 0 ? '' : `Held fast: ${listed(held.map((one) => connectionWords(one, labelOf)))}.`;
  }
}
customElements.define('tried-line', TriedLine);
declare global {
  interface HTMLElementTagNameMap {
    'tried-line': TriedLine;
  }
}
