import { css, html, type TemplateResult } from 'lit';

export const ownFoldCss = css`
  summary {
    padding: 10px 0;
  }
  summary .soft {
    float: right;
    color: var(--ink-soft);
    font-weight: 400;
  }
  details {
    border-top: 1px solid var(--rule);
  }
`;

/** Figures that a firm seldom changes, folded, with how many of them are its own. */
export const ownFold = (title: string, fields: readonly TemplateResult[], own: number): TemplateResult =>
  html`<details>
    <summary><span>${title}</span><span class="soft">${own === 0 ? 'all usual' : `${own} of ${fields.length} your own`}</span></summary>
    <div class="grid">${fields}</div>
  </details>`;
