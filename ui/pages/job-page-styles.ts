import { css } from 'lit';

/** How a job's page lies at a desk and on a phone. */
export const jobPageCss = css`
  :host {
    --sheet-width: min(25rem, 34vw);
    --aside-width: min(21.25rem, 30vw);
    display: grid;
    grid-template:
      'head head head' auto
      'notice notice notice' auto
      'sheet plan aside' minmax(0, 1fr)
      'strip strip strip' auto / var(--sheet-width) minmax(0, 1fr) var(--aside-width);
  }
  :host([wide-sheet]) {
    --sheet-width: min(35rem, 42vw);
  }
  header {
    grid-area: head;
    display: grid;
    grid-template-columns: minmax(13.75rem, 1fr) auto minmax(13.75rem, 1fr);
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
    font: 500 0.8125rem / 1.3 var(--drawing-font);
    white-space: nowrap;
  }
  .title a {
    padding: 3px 0;
    color: var(--ink-soft);
  }
  h1 {
    margin: 0;
    overflow: hidden;
    font: 600 1.0625rem / 1.3 var(--drawing-font);
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
    width: 40rem;
    max-width: 46vw;
  }
  /* What was just done stands beside undo and redo: there it covers nothing that one is working on. */
  toast-line {
    position: absolute;
    inset: 6px 112px auto auto;
    grid-area: head;
    justify-content: flex-end;
    width: min(19rem, calc(50vw - min(20rem, 23vw) - 136px));
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
  /* Its controls have a row of their own: they cover nothing that is drawn. */
  .plan {
    display: grid;
    grid-area: plan;
    grid-template: auto minmax(0, 46fr) / minmax(0, 1fr);
    grid-auto-rows: minmax(0, 54fr);
    min-width: 0;
    overflow: hidden;
    background: var(--sheet);
  }
  .controls {
    display: flex;
    flex-wrap: wrap;
    gap: 6px 12px;
    align-items: flex-start;
    padding: 8px 12px;
    border-bottom: 1px solid var(--line);
  }
  view-switch {
    margin-left: auto;
  }
  /* Plan above, picture below. */
  .plan proof-view.half {
    border-top: 1px solid var(--line);
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
  @media (max-width: 73.75em) {
    :host {
      --sheet-width: 20.625rem;
      --aside-width: 18.75rem;
    }
    :host([wide-sheet]) {
      --sheet-width: 27.5rem;
    }
    header {
      grid-template-columns: minmax(140px, 1fr) auto auto;
      gap: 12px;
    }
    toast-line {
      right: auto;
      left: 20px;
      justify-content: flex-start;
      width: min(24rem, 42vw);
    }
  }
  @media (max-width: 60em) {
    :host {
      grid-template:
        'head head' auto
        'notice notice' auto
        'sheet plan' minmax(0, 5fr)
        'sheet aside' minmax(0, 3fr)
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
  @media (max-height: 37.5em) {
    :host {
      --sheet-width: min(20.625rem, 50vw);
      grid-template:
        'head head' auto
        'notice notice' auto
        'sheet plan' minmax(0, 1fr)
        'steps bar' auto / var(--sheet-width) minmax(0, 1fr);
    }
    :host([wide-sheet]) {
      --sheet-width: min(27.5rem, 62vw);
    }
    .compare {
      grid-row: 3;
      grid-column: 1 / -1;
    }
  }
  @media (max-width: 43.75em), (max-height: 37.5em) {
    header {
      grid-template-columns: minmax(0, 1fr) auto;
      gap: 8px;
      min-height: 56px;
      padding: 4px 12px;
    }
    toast-line {
      inset: 3px auto auto 8px;
      justify-content: flex-start;
      width: calc(100% - 122px);
    }
    .title a {
      padding: 14px 8px 14px 0;
      margin: -12px 0;
    }
    .controls {
      gap: 4px;
      padding: 4px 6px;
    }
    .tools button {
      width: 44px;
      min-height: 44px;
    }
    step-run {
      grid-area: steps;
      width: auto;
      max-width: none;
      background: var(--sheet);
      border-top: 1px solid var(--line);
    }
    price-bar {
      grid-area: bar;
    }
    .strip {
      min-height: 0;
      border-top: 0;
      border-bottom: 1px solid var(--line);
    }
  }
  @media (max-width: 43.75em) {
    :host {
      grid-template:
        'head' auto
        'notice' auto
        'plan' var(--plan-height, 44dvh)
        'sheet' minmax(0, 1fr)
        'bar' auto
        'steps' auto / minmax(0, 1fr);
    }
    :host([picture]) {
      --plan-height: 62dvh;
    }
    .plan {
      border-bottom: 1px solid var(--line);
    }
    .sheet {
      border-right: 0;
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
  /* Too small to be cut up: the page scrolls as one. */
  @media (max-width: 43.75em) and (max-height: 31.25em) {
    :host {
      display: block;
      overflow: auto;
    }
    toast-line {
      position: fixed;
    }
    .plan {
      height: 60dvh;
      min-height: 13rem;
    }
    .sheet,
    .compare {
      overflow: visible;
    }
    price-bar {
      position: sticky;
      bottom: 0;
      z-index: 2;
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
    .controls,
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
