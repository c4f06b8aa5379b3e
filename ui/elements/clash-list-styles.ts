import { css } from 'lit';

/** Rows of what is to be decided: mine beside theirs at a desk, under each other on a phone. */
export const clashListCss = css`
  :host {
    display: block;
  }
  ol {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  fieldset {
    min-width: 0;
    margin: 0;
    padding: 8px;
    background: var(--sheet);
    border: 0;
    border-top: 1px solid var(--rule);
  }
  legend {
    float: left;
    width: 100%;
    padding: 0 0 4px;
    font-weight: 600;
    overflow-wrap: anywhere;
  }
  legend span,
  th span {
    font-weight: 400;
    color: var(--ink-soft);
  }
  th span {
    display: block;
  }
  .also {
    clear: both;
    margin: 0 0 4px;
    font-size: 0.875rem;
    color: var(--ink-soft);
  }
  .sides {
    clear: both;
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 6px;
  }
  label {
    display: flex;
    gap: 8px;
    align-items: center;
    min-width: 0;
    min-height: 36px;
    padding: 4px 10px 4px 8px;
    overflow-wrap: anywhere;
    background: var(--sheet);
    border: 1px solid var(--field-line);
    border-radius: var(--corner);
    cursor: pointer;
  }
  label span {
    min-width: 0;
  }
  label b {
    margin-right: 4px;
    font-weight: 600;
  }
  label:has(:checked) {
    background: var(--copper-wash);
    border-color: var(--copper);
  }
  input {
    flex: none;
    width: 18px;
    height: 18px;
    margin: 0;
    accent-color: var(--copper-ink);
  }
  .all,
  .save {
    display: flex;
    flex-wrap: wrap;
    gap: 8px 12px;
    align-items: center;
    margin: 8px 0;
  }
  table {
    background: var(--sheet);
  }
  tbody th {
    color: var(--ink);
    border-top: 1px solid var(--rule);
  }
  th,
  td {
    overflow-wrap: anywhere;
  }
  small {
    display: block;
    font-size: 0.875rem;
    color: var(--ink-soft);
  }
  @media (max-width: 43.75em), (pointer: coarse) {
    label {
      min-height: 44px;
    }
  }
  @media (max-width: 700px) {
    .sides {
      grid-template-columns: 1fr;
    }
    /* Three columns would break words apart: each thing is a line of a list, with mine and theirs under it. */
    table,
    tbody,
    tr,
    tbody th,
    td {
      display: block;
    }
    thead {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    tr {
      padding: 6px 8px;
      border-top: 1px solid var(--rule);
    }
    tbody th,
    td {
      padding: 1px 0;
      border: 0;
    }
    td::before {
      color: var(--ink-soft);
      content: attr(data-whose) ': ';
    }
    td small {
      display: inline;
      margin-left: 6px;
    }
  }
`;
