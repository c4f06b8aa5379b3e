import { css } from 'lit';

/** What every element shares: box model, text, headings, focus, buttons, tables, and text for screen readers only. */
export const controlsCss = css`
  :host {
    position: relative;
    box-sizing: border-box;
    font: 400 0.9375rem / 1.45 var(--text-font);
    color: var(--ink);
    font-variant-numeric: tabular-nums;
  }
  :host([hidden]) {
    display: none;
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  h2,
  h3 {
    font: 600 1.0625rem / 1.25 var(--drawing-font);
    margin: 0;
  }
  h3 {
    font-size: 0.9375rem;
  }
  p {
    margin: 0 0 8px;
  }
  a {
    color: var(--copper-ink);
  }
  :focus-visible {
    outline: 2px solid var(--copper);
    outline-offset: 2px;
  }
  button,
  a.button {
    display: inline-flex;
    align-items: center;
    justify-content: center;
    gap: 6px;
    min-height: 36px;
    padding: 4px 12px;
    font: 500 0.9375rem / 1.2 var(--text-font);
    color: var(--ink);
    text-decoration: none;
    background: var(--sheet);
    border: 1px solid var(--line);
    border-radius: var(--corner);
    cursor: pointer;
  }
  button:hover,
  a.button:hover {
    border-color: var(--ink-faint);
  }
  button.main,
  a.button.main {
    color: var(--sheet);
    background: var(--ink);
    border-color: var(--ink);
  }
  button.quiet {
    color: var(--ink-soft);
    background: none;
    border-color: transparent;
  }
  button.small {
    min-height: 30px;
    padding: 2px 9px;
    font-size: 0.875rem;
  }
  button[aria-pressed='true'] {
    color: var(--copper-ink);
    font-weight: 600;
    background: var(--copper-wash);
    border-color: var(--copper);
  }
  button:disabled {
    color: var(--ink-faint);
    background: var(--sheet);
    border: 1px dashed var(--line);
    cursor: default;
  }
  table {
    width: 100%;
    border-collapse: collapse;
    font-size: 0.875rem;
  }
  th,
  td {
    padding: 6px 8px;
    text-align: left;
    vertical-align: top;
    border-top: 1px solid var(--rule);
  }
  th {
    font: 600 0.875rem / 1.3 var(--drawing-font);
    color: var(--ink-soft);
    border-top: 0;
  }
  td.number,
  th.number {
    text-align: right;
  }
  td.number {
    white-space: nowrap;
  }
  summary {
    cursor: pointer;
    min-height: 36px;
    padding: 6px 0;
    font: 600 0.9375rem / 1.5 var(--drawing-font);
  }
  .hint {
    color: var(--ink-soft);
    font-size: 0.875rem;
  }
  .visually-hidden {
    position: absolute;
    width: 1px;
    height: 1px;
    margin: -1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  @media (max-width: 43.75em) {
    th,
    td {
      padding-inline: 4px;
    }
  }
  @media (max-width: 43.75em), (pointer: coarse) {
    button,
    a.button,
    button.small,
    summary {
      min-height: 44px;
    }
  }
`;

/** A step's sheet: its margins at a desk and on a phone. */
export const stepCss = css`
  :host {
    display: block;
    padding: 16px 20px 24px;
  }
  @media (max-width: 43.75em) {
    :host {
      padding: 12px 12px 24px;
    }
  }
`;

/** A form whose fields stand in pairs; what is `wide` has a row of its own. */
export const pairsCss = css`
  :host {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 10px;
    align-items: end;
  }
  .wide {
    grid-column: 1 / -1;
  }
`;

/** Buttons in one row of which one is pressed, each touching the next. */
export const segmentsCss = css`
  :host {
    display: block;
  }
  div {
    display: flex;
  }
  button {
    font: 500 0.875rem / 1.2 var(--drawing-font);
    border-radius: 0;
  }
  button + button {
    border-left: 0;
  }
  button:first-child {
    border-radius: var(--corner) 0 0 var(--corner);
  }
  button:last-child {
    border-radius: 0 var(--corner) var(--corner) 0;
  }
  button[aria-pressed='true'] {
    color: var(--sheet);
    background: var(--ink);
    border-color: var(--ink);
  }
  @media (max-width: 43.75em), (max-height: 37.5em) {
    button {
      min-width: 44px;
      padding: 2px 9px;
    }
  }
`;
