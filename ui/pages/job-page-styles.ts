import { css } from 'lit';

/** How a job's page lies at a desk and on a phone. */
export const jobPageCss = css`
  :host {
    --sheet-width: 400px;
    --toast-bottom: 132px;
    display: grid;
    grid-template:
      'head head head' auto
      'notice notice notice' auto
      'sheet plan aside' minmax(0, 1fr)
      'strip strip strip' auto / var(--sheet-width) minmax(0, 1fr) 340px;
  }
  :host([wide-sheet]) {
    --sheet-width: 560px;
  }
  header {
    grid-area: head;
    display: grid;
    grid-template-columns: minmax(220px, 1fr) auto minmax(220px, 1fr);
    gap: 20px;
    align-items: center;
    min-height: 66px;
    padding: 6px 20px;
    background: var(--sheet);
    border-bottom: 1px solid var(--line);
  }
  .title {
    min-width: 0;
  }
  .title p {
    display: flex;
    gap: 0 14px;
    align-items: center;
    margin: 0;
    color: var(--ink-soft);
    font: 500 13px / 1.3 var(--drawing-font);
    white-space: nowrap;
  }
  .title a {
    padding: 3px 0;
    color: var(--ink-soft);
  }
  h1 {
    margin: 0;
    overflow: hidden;
    font: 600 17px / 1.3 var(--drawing-font);
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .tools {
    display: flex;
    gap: 6px;
    align-items: center;
    justify-content: flex-end;
  }
  .tools button {
    width: 38px;
    padding: 0;
  }
  .tools svg {
    width: 18px;
    height: 18px;
    fill: none;
    stroke: currentColor;
    stroke-width: 2;
  }
  step-run {
    width: 640px;
    max-width: 48vw;
  }
  .notice {
    grid-area: notice;
  }
  .sheet {
    grid-area: sheet;
    overflow: auto;
    background: var(--sheet);
    border-right: 1px solid var(--line);
  }
  .plan {
    position: relative;
    grid-area: plan;
    min-width: 0;
    overflow: hidden;
    background: var(--sheet);
  }
  .plan plan-view {
    position: absolute;
    inset: 0;
  }
  storey-switch {
    position: absolute;
    top: 12px;
    left: 12px;
    z-index: 1;
  }
  .aside {
    grid-area: aside;
    overflow: auto;
    border-left: 1px solid var(--line);
  }
  .aside chosen-card {
    position: sticky;
    bottom: 0;
    border-top: 1px solid var(--line);
  }
  .strip {
    grid-area: strip;
    min-height: 116px;
    background: var(--paper);
    border-top: 1px solid var(--line);
  }
  .compare {
    grid-row: 3;
    grid-column: 1 / 3;
    overflow: auto;
    background: var(--sheet);
  }
  .waiting {
    grid-row: 3;
    grid-column: 1 / -1;
    padding: 32px 20px;
  }
  .warning {
    max-width: 640px;
    padding: 12px 16px;
    background: var(--ask-wash);
    border-left: 4px solid var(--ask);
  }
  dialog {
    width: 100%;
    max-width: none;
    max-height: 86dvh;
    margin: auto 0 0;
    padding: 0;
    color: var(--ink);
    background: var(--paper);
    border: 0;
    border-top: 1px solid var(--line);
  }
  dialog::backdrop {
    background: rgb(20 25 29 / 45%);
  }
  .close {
    position: sticky;
    bottom: 0;
    display: flex;
    padding: 8px 14px;
    background: var(--paper);
    border-top: 1px solid var(--line);
  }
  .close button {
    flex: 1;
  }
  @media (max-width: 1180px) {
    :host {
      --sheet-width: 330px;
      grid-template-columns: var(--sheet-width) minmax(0, 1fr) 300px;
    }
    :host([wide-sheet]) {
      --sheet-width: 440px;
    }
    header {
      grid-template-columns: minmax(140px, 1fr) auto auto;
      gap: 12px;
    }
  }
  @media (max-width: 960px) {
    :host {
      grid-template:
        'head head' auto
        'notice notice' auto
        'sheet plan' minmax(0, 1fr)
        'sheet aside' minmax(0, 1fr)
        'strip strip' auto / minmax(300px, 46%) minmax(0, 1fr);
    }
    .aside {
      border-top: 1px solid var(--line);
    }
    .compare {
      grid-row: 3 / 5;
      grid-column: 1;
    }
    .compare ~ .aside {
      grid-row: 3 / 5;
      border-top: 0;
    }
  }
  @media (max-width: 700px) {
    :host {
      grid-template:
        'head' auto
        'notice' auto
        'plan' 40dvh
        'sheet' minmax(0, 1fr)
        'bar' auto
        'steps' auto / minmax(0, 1fr);
    }
    header {
      grid-template-columns: minmax(0, 1fr) auto;
      gap: 8px;
      min-height: 56px;
      padding: 4px 12px;
    }
    .title a {
      padding: 14px 8px 14px 0;
      margin: -12px 0;
    }
    storey-switch {
      top: 8px;
      left: 8px;
    }
    .tools button {
      width: 44px;
    }
    step-run {
      grid-area: steps;
      width: auto;
      max-width: none;
      background: var(--sheet);
      border-top: 1px solid var(--line);
    }
    .plan {
      border-bottom: 1px solid var(--line);
    }
    .sheet {
      border-right: 0;
    }
    price-bar {
      grid-area: bar;
    }
    .strip {
      min-height: 0;
      border-top: 0;
      border-bottom: 1px solid var(--line);
    }
    .compare,
    .waiting {
      grid-row: 3 / 5;
      grid-column: 1;
      padding: 20px 12px;
    }
    .compare {
      padding: 0;
    }
  }
  @media print {
    :host,
    :host([wide-sheet]) {
      display: block;
      height: auto;
    }
    .tools,
    step-run,
    storey-switch,
    price-bar,
    .strip,
    .aside {
      display: none;
    }
    .sheet,
    .compare {
      overflow: visible;
      border: 0;
    }
    .plan {
      height: 160mm;
      break-inside: avoid;
    }
  }
`;
