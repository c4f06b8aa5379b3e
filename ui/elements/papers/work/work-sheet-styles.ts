import { css } from 'lit';

/** How a sheet that is worked from looks, on screen and in print: black and one grey there. */
export const workSheetCss = css`
  :host {
    display: block;
  }
  .caution {
    margin: 12px 0;
    padding: 8px 10px;
    background: var(--ask-wash);
    border-left: 4px solid var(--ask);
  }
  .caution p {
    margin: 0 0 4px;
  }
  h3 {
    margin: 20px 0 8px;
  }
  h4 {
    margin: 0;
    font-size: 1rem;
  }
  .soft {
    color: var(--ink-soft);
  }
  .paper-head,
  .paper-only {
    display: none;
  }
  summary {
    min-height: 44px;
    display: flex;
    align-items: center;
    gap: 8px;
    cursor: pointer;
  }
  @media print {
    :host {
      --ink: #000;
      --ink-soft: #555;
      --ink-faint: #555;
      --line: #555;
      --rule: #555;
      --copper: #000;
      --copper-ink: #000;
      --copper-wash: #fff;
      --ask: #000;
      --ask-wash: #fff;
      --sheet: #fff;
      font-size: 10pt;
      color: #000;
    }
    .paper-head,
    .paper-only {
      display: block;
    }
    h3,
    h4,
    section > ol,
    section > .soft {
      break-after: avoid;
    }
    section > ol {
      break-inside: avoid;
    }
    /* Whatever an element lays them out by on screen. */
    button,
    .screen {
      display: none !important;
    }
  }
`;
