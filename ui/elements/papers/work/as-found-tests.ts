import { css, html, type TemplateResult } from 'lit';
import { AS_FOUND_SAID, asFoundHeading, asFoundTests } from '#drawing/work/as-found-words.ts';
import type { Worked } from '#engine/connections/worked.ts';

export const asFoundTestsCss = css`
  .as-found {
    margin: 4px 0 10px;
    padding: 0;
    list-style: none;
  }
  .as-found li {
    display: grid;
    grid-template-columns: minmax(0, 2fr) minmax(0, 1fr) minmax(0, 1fr);
    gap: 2px 12px;
    padding: 6px 0;
    border-bottom: 1px solid var(--line);
  }
`;

/** What every circuit showed, or has to show, before anything was added to it; the survey's readings answer it. */
export const asFoundTestsTemplate = (worked: Worked): readonly TemplateResult[] =>
  asFoundTests(worked).map(
    ({ circuitName, rows }) => html`<section aria-label=${asFoundHeading(circuitName)}>
      <h3>${asFoundHeading(circuitName)}</h3>
      <p class="soft">${AS_FOUND_SAID}</p>
      <ul class="as-found">
        ${rows.map(
          ({ what, held, read }) =>
            html`<li><strong>${what}</strong><span>${held}</span>${
              read === ''
                ? html`<span class="soft screen">not read before</span>`
                : html`<span>${read}</span>`
            }</li>`,
        )}
      </ul>
    </section>`,
  );
