import { css } from 'lit';

/** A paper read over everything, from edge to edge on a phone, with the way out always in sight. */
export const paperDialogCss = css`
  dialog {
    width: min(48rem, 100vw);
    max-width: 100vw;
    height: 100dvh;
    max-height: 100dvh;
    padding: 0 12px 24px;
    color: inherit;
    background: var(--paper);
    border: 0;
    overscroll-behavior: contain;
  }
  dialog header {
    position: sticky;
    z-index: 1;
    top: 0;
    padding: 8px 0;
    text-align: right;
    background: var(--paper);
  }
`;
