import { css } from 'lit';

/** A customer's paper on a screen, from a phone's width up. */
export const quotationCss = css`
  :host {
    display: block;
    max-width: 46rem;
    padding: 16px 18px 24px;
    background: var(--sheet);
    border: 1px solid var(--line);
    border-radius: var(--corner);
  }
  h2 {
    font-size: 1.75rem;
  }
  h3 {
    margin: 22px 0 6px;
    font-size: 1.125rem;
  }
  h4 {
    margin: 12px 0 4px;
    font: 600 0.9375rem / 1.3 var(--text-font);
  }
  ul {
    margin: 0 0 8px;
    padding-left: 1.2em;
  }
  li {
    margin-bottom: 2px;
  }
  .parties {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(150px, 1fr));
    gap: 8px 16px;
    margin: 12px 0;
  }
  .parties p {
    margin: 0;
    overflow-wrap: anywhere;
  }
  .label {
    color: var(--ink-soft);
    font-size: 0.875rem;
  }
  .notice {
    font-weight: 600;
    padding: 8px 10px;
    background: var(--ask-wash);
    border-left: 4px solid var(--ask);
  }
  .prices {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(150px, 1fr));
    gap: 12px;
    margin: 12px 0 6px;
    padding: 12px 14px;
    color: var(--paper);
    background: var(--ink);
    border-radius: var(--corner);
  }
  .prices p {
    margin: 0;
  }
  .prices .sum {
    font: 600 1.5rem / 1.25 var(--text-font);
  }
  .rows {
    margin: 0 0 8px;
  }
  .rows > div {
    padding: 8px 0;
    border-top: 1px solid var(--rule);
  }
  .rows p {
    margin: 2px 0 0;
  }
  .money td:last-child {
    text-align: right;
    white-space: nowrap;
  }
  .money th {
    font-family: var(--text-font);
    font-weight: 400;
    color: var(--ink);
    border-top: 1px solid var(--rule);
  }
  .money .whole > * {
    font-weight: 600;
  }
  .option {
    padding-top: 6px;
    border-top: 2px solid var(--line);
  }
  .drawings {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 290px), 1fr));
    gap: 8px 16px;
  }
  .legend {
    max-width: 384px;
  }
  .wide {
    overflow-x: auto;
  }
  .form dt {
    color: var(--ink-soft);
    font-size: 0.875rem;
  }
  .form dd {
    margin: 0 0 6px;
    min-height: 1.6em;
    border-bottom: 1px solid var(--ink-faint);
    overflow-wrap: anywhere;
  }
`;
