import { css, html, type TemplateResult } from 'lit';

/** How the line looks that says what of a list is the demo's still. */
export const demoLineCss = css`
  .demo {
    display: flex;
    flex-wrap: wrap;
    gap: 8px 12px;
    align-items: center;
    padding: 6px 10px;
    background: var(--ask-wash);
    border-left: 4px solid var(--ask);
  }
`;

/** Says what of a list is the demo's still, with the button that takes all of it over. */
export const demoLine = (
  words: string,
  takeWords: string,
  take: () => void,
): TemplateResult => html`<p class="demo">
  <span>${words}</span>
  <button @click=${take}>${takeWords}</button>
</p>`;
