import { css } from 'lit';

/** How fields look: the label above, the control and its unit below, and the certainty beside them. */
export const fieldCss = css`
  :host {
    /* A hidden label is placed within its field: placed on the page it would make the page longer. */
    position: relative;
    display: block;
    min-width: 0;
  }
  .label {
    display: block;
    margin-bottom: 2px;
    font: 500 0.875rem / 1.35 var(--text-font);
    color: var(--ink-soft);
  }
  :host([label-hidden]) .label {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  fieldset {
    min-width: 0;
    margin: 0;
    padding: 0;
    border: 0;
  }
  .line {
    display: flex;
    align-items: stretch;
    gap: 6px;
  }
  .control {
    display: flex;
    flex: 1 1 auto;
    min-width: 0;
    align-items: center;
  }
  input,
  select,
  textarea {
    flex: 1 1 auto;
    width: 100%;
    min-width: 0;
    min-height: 36px;
    padding: 5px 8px;
    font: 400 0.9375rem / 1.35 var(--text-font);
    font-variant-numeric: tabular-nums;
    color: var(--ink);
    background: var(--sheet);
    border: 1px solid var(--field-line);
    border-radius: var(--corner);
  }
  textarea {
    min-height: 72px;
    resize: vertical;
  }
  input:disabled,
  select:disabled,
  textarea:disabled {
    color: var(--ink-faint);
    border-style: dashed;
  }
  input[aria-invalid='true'] {
    border: 2px solid var(--fail);
  }
  .unit {
    flex: 0 0 auto;
    padding-left: 6px;
    font-size: 0.875rem;
    color: var(--ink-soft);
  }
  .certainty {
    flex: 0 0 auto;
    align-self: start;
    width: 104px;
    font-size: 0.875rem;
    color: var(--ink-soft);
  }
  .help {
    margin: 2px 0 0;
    font-size: 0.875rem;
    color: var(--ink-soft);
  }
  .error {
    margin: 2px 0 0;
    font-size: 0.875rem;
    font-weight: 500;
    color: var(--fail);
  }
  .choices {
    display: inline-flex;
    flex-wrap: wrap;
    gap: 4px;
  }
  .choices label,
  label.tick {
    display: inline-flex;
    align-items: center;
    gap: 6px;
    min-height: 36px;
    padding: 2px 10px 2px 6px;
    border: 1px solid var(--field-line);
    border-radius: var(--corner);
    background: var(--sheet);
    cursor: pointer;
  }
  label.tick {
    padding: 2px 0;
    background: none;
    border: 0;
  }
  input[type='radio'],
  input[type='checkbox'] {
    flex: 0 0 auto;
    width: 18px;
    min-height: 18px;
    height: 18px;
    margin: 0;
    accent-color: var(--copper-ink);
  }
  .choices label:has(:checked) {
    background: var(--copper-wash);
    border-color: var(--copper);
  }
  @media (max-width: 43.75em), (pointer: coarse) {
    input,
    select,
    .choices label,
    label.tick {
      min-height: 44px;
      font-size: 1rem;
    }
  }
`;
