import { css } from 'lit';

/** How the list of jobs lies. */
export const jobListCss = css`
  :host {
    display: flex;
    flex-direction: column;
    min-height: 100vh;
  }
  header {
    display: flex;
    gap: 10px;
    align-items: center;
    min-height: 60px;
    padding: 6px 20px;
    background: var(--sheet);
    border-bottom: 1px solid var(--line);
  }
  .mark {
    flex: none;
    width: 64px;
    height: 20px;
    fill: var(--sheet);
    stroke: var(--copper);
    stroke-width: 3;
  }
  .mark .full {
    fill: var(--copper);
  }
  .mark circle:last-child {
    stroke: var(--line);
    stroke-width: 2;
  }
  .name {
    margin-right: auto;
    font: 600 1.25rem / 1.2 var(--drawing-font);
  }
  main {
    flex: 1;
    width: 100%;
    max-width: 980px;
    margin: 0 auto;
    padding: 28px 20px;
  }
  main.dropping {
    outline: 2px dashed var(--copper);
    outline-offset: -8px;
  }
  .head {
    position: relative;
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    align-items: center;
    margin-bottom: 16px;
  }
  .away {
    margin: 0 0 12px;
    padding: 8px 12px;
    background: var(--ask-wash);
    border-left: 4px solid var(--ask);
  }
  h1 {
    margin: 0 auto 0 0;
    font: 600 1.625rem / 1.2 var(--drawing-font);
  }
  ul {
    display: grid;
    gap: 8px;
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .start {
    padding: 10px 14px;
    margin: 0 0 16px;
    background: var(--copper-wash);
    border-left: 4px solid var(--copper);
  }
  .warning {
    display: flex;
    flex-wrap: wrap;
    gap: 8px 12px;
    align-items: center;
    padding: 10px 14px;
    margin-bottom: 16px;
    background: var(--ask-wash);
    border-left: 4px solid var(--ask);
  }
  .warning p {
    flex: 1 1 320px;
    margin: 0;
  }
  fault-list {
    margin-bottom: 16px;
  }
  .wait {
    min-height: 400px;
  }
  .empty {
    padding: 20px 24px;
    background: var(--sheet);
    border: 1px dashed var(--line);
    border-radius: var(--corner);
  }
  .empty li {
    margin-bottom: 6px;
  }
  footer {
    display: flex;
    flex-wrap: wrap;
    gap: 8px 24px;
    align-items: center;
    justify-content: space-between;
    width: 100%;
    max-width: 980px;
    margin: 0 auto;
    padding: 16px 20px 28px;
    color: var(--ink-soft);
    font-size: 0.875rem;
  }
  footer p {
    flex: 1 1 420px;
    max-width: 68ch;
    margin: 0;
  }
  @media (max-width: 700px) {
    header {
      padding: 6px 12px;
    }
    main {
      padding: 16px 12px;
    }
    h1 {
      flex: 1 0 100%;
    }
    .head button {
      flex: 1;
    }
    /* A link within a sentence: what can be touched is higher than its words. */
    .start a {
      padding: 11px 0;
    }
  }
  /* Who only reads is offered nothing else. */
  :host([reads]) .head button,
  :host([reads]) footer button {
    display: none;
  }
`;
