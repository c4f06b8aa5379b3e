import { css } from 'lit';

/** Looks of the shopping list: made for one thumb in a shop. */
export const shoppingListCss = css`
  :host {
    display: block;
  }
  .over {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 12px;
    align-items: center;
    justify-content: space-between;
  }
  .over p {
    margin: 0;
    font-weight: 600;
  }
  section {
    margin-top: 6px;
  }
  /* Which counter one stands at stays in sight while its things go by. */
  h3 {
    position: sticky;
    top: 0;
    z-index: 1;
    display: flex;
    gap: 12px;
    align-items: center;
    justify-content: space-between;
    min-height: 40px;
    padding: 6px 0;
    background: var(--sheet);
    border-bottom: 1px solid var(--ink);
  }
  .count {
    display: inline-flex;
    gap: 6px;
    align-items: center;
    font-weight: 500;
    color: var(--ink-soft);
    white-space: nowrap;
  }
  .all .count {
    font-weight: 600;
    color: var(--pass);
  }
  h3 svg {
    width: 16px;
    height: 16px;
    fill: none;
    stroke: currentColor;
    stroke-width: 2.5;
  }
  ul {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  li {
    border-bottom: 1px solid var(--rule);
  }
  .row {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 8px;
  }
  .end {
    display: grid;
    justify-items: end;
    align-content: space-between;
    padding-bottom: 4px;
  }
  .end button {
    width: 4.75rem;
    min-height: 44px;
    padding: 2px 6px;
    font-size: 0.8125rem;
    line-height: 1.15;
    white-space: normal;
    color: var(--ink-soft);
    text-align: right;
    justify-content: flex-end;
    text-decoration: underline;
    background: none;
    border-color: transparent;
  }
  .instead {
    padding: 8px 10px;
    background: var(--ask-wash);
    border-left: 4px solid var(--ask);
  }
  label {
    display: grid;
    grid-template-columns: 44px minmax(0, 1fr);
    align-items: start;
    min-height: 52px;
    padding: 8px 0;
    cursor: pointer;
  }
  input {
    width: 26px;
    height: 26px;
    margin: 4px 8px 0 4px;
    accent-color: var(--ink);
    cursor: pointer;
  }
  .what {
    padding-top: 5px;
    font-size: 1rem;
    overflow-wrap: anywhere;
  }
  .cost {
    padding: 6px 0 0 10px;
    font-size: 0.875rem;
    color: var(--ink-soft);
  }
  small {
    display: block;
    font-size: 0.875rem;
    color: var(--ink-soft);
  }
  small.changed {
    padding: 2px 8px;
    color: var(--ask);
    font-weight: 600;
    background: var(--ask-wash);
    border-left: 4px solid var(--ask);
  }
  /* Not in stock, or there for what may turn out: a dashed edge, as whatever is assumed has. */
  small.mark {
    padding-left: 8px;
    border-left: 2px dashed var(--line);
  }
  .turned {
    margin: 8px 0 2px;
    font-weight: 600;
  }
  .back li {
    padding: 6px 0;
  }
  .had .name {
    color: var(--ink-soft);
    text-decoration: line-through;
    text-decoration-thickness: 1px;
  }
  .stray {
    display: flex;
    gap: 12px;
    align-items: center;
    justify-content: space-between;
    padding: 6px 0;
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    margin: 12px 0;
  }
  .none,
  .uncounted p {
    padding: 12px 0;
  }
  @media print {
    .screen {
      display: none;
    }
  }
`;
