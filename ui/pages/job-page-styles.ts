import { css } from 'lit';

/** How a job's page lies at a desk and on a phone. */
export const jobPageCss = css`
  :host {
    --sheet-width: min(25rem, 34vw);
    --aside-width: min(21.25rem, 30vw);
    display: grid;
    /* What the keyboard of a phone covers is not reckoned with. */
    padding-bottom: var(--keyboard, 0);
    grid-template:
      'head head head' auto
      'notice notice notice' auto
      'sheet plan aside' minmax(0, 1fr)
      'toast plan aside' auto
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
    font: 500 0.875rem / 1.3 var(--drawing-font);
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
    /* Last, also before the steps are there. */
    grid-column: -2 / -1;
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
  /* What was just done has room of its own under the sheet: it covers nothing, and neither plan nor price moves for it. */
  toast-line {
    position: static;
    grid-area: toast;
  }
  .notice {
    grid-area: notice;
    max-height: 45dvh;
    overflow: auto;
  }
  .sheet {
    grid-area: sheet;
    overflow: auto;
    background: var(--sheet);
    border-right: 1px solid var(--line);
  }
  /* Its controls have a row of their own: they cover nothing that is drawn. */
  .plan {
    display: flex;
    flex-direction: column;
    grid-area: plan;
    min-width: 0;
    overflow: hidden;
    background: var(--sheet);
  }
  .plan > * {
    flex: none;
  }
  /* Plan above, picture below. */
  .plan > :is(plan-view, proof-view) {
    flex: 46 1 0;
    min-height: 0;
  }
  .plan > proof-view {
    flex-grow: 54;
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
  tried-line {
    flex: 1 0 100%;
  }
  .plan proof-view.half {
    border-top: 1px solid var(--line);
  }
  /* The price stays at the head and what is chosen at the foot; the checks scroll between them, in half of what is left at least. */
  .aside {
    display: flex;
    flex-direction: column;
    grid-area: aside;
    overflow: hidden;
    border-left: 1px solid var(--line);
  }
  .aside price-block {
    flex: none;
  }
  .under {
    display: flex;
    flex: 1 1 0;
    flex-direction: column;
    min-height: 0;
  }
  .checks {
    flex: 1 1 0;
    min-height: 50%;
    overflow: auto;
  }
  .checks finding-list::part(counts) {
    position: sticky;
    z-index: 1;
    top: 0;
  }
  .aside chosen-card {
    flex: 0 1 auto;
    min-height: 0;
    overflow: auto;
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
  }
  @media (max-width: 60em) {
    :host {
      grid-template:
        'head head' auto
        'notice notice' auto
        'sheet plan' minmax(0, 1fr)
        'sheet aside' minmax(18rem, 1fr)
        'toast aside' auto
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
      grid-row: 3 / 6;
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
        'toast plan' auto
        'steps bar' auto / var(--sheet-width) minmax(0, 1fr);
    }
    :host([wide-sheet]) {
      --sheet-width: min(27.5rem, 62vw);
    }
    :host([sheet-alone]) .sheet {
      grid-column: 1 / -1;
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
        'plan' calc(var(--plan-height, 44dvh) - var(--keyboard, 0px) / 2)
        'sheet' minmax(0, 1fr)
        'toast' auto
        'bar' auto
        'steps' auto / minmax(0, 1fr);
    }
    /* The sheet is read; the plan shows what is touched in it. */
    :host([reading]) {
      --plan-height: 26dvh;
      /* Three buttons above one another are taller than that. */
      --plan-tools-columns: 2;
    }
    :host([picture]) {
      --plan-height: 56dvh;
    }
    /* Points are tapped one after another: the plan has what room there is, and the end of it is below. */
    :host([tapping]) {
      --plan-height: 72dvh;
    }
    /* What keeps the job from being kept comes first. */
    :host([notice]) {
      --plan-height: 20dvh;
    }
    /* In a shop, or at an open box, nobody looks at the plan. */
    :host([sheet-alone]) {
      --plan-height: 0px;
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
    .notice {
      max-height: none;
    }
    toast-line {
      position: sticky;
      bottom: 54px;
      z-index: 2;
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
      bottom: var(--keyboard, 0);
      z-index: 2;
    }
  }
`;
