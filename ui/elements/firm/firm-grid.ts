import { css } from 'lit';

/** Fields of the firm's page side by side, as many as there is room for. */
export const firmGridCss = css`
  :host {
    display: block;
  }
  .grid {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(220px, 1fr));
    gap: 12px 16px;
    margin: 8px 0 24px;
  }
`;
