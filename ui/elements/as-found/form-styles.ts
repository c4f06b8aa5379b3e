import { css } from 'lit';

/** How the forms of the survey look: fields below each other, short ones in pairs, lists of things that open. */
export const formCss = css`
  .fields {
    display: grid;
    gap: 10px;
    padding: 4px 0 12px;
  }
  .pair {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 10px;
    align-items: start;
  }
  .list {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .list > li {
    border-top: 1px solid var(--rule);
  }
  .row {
    display: grid;
    grid-template-columns: 56px minmax(0, 1fr) auto;
    gap: 2px 8px;
    align-items: baseline;
    justify-content: stretch;
    width: 100%;
    min-height: 40px;
    padding: 6px 6px;
    font-weight: 400;
    line-height: 1.35;
    text-align: left;
    background: none;
    border: 0;
    border-radius: 0;
  }
  .row:hover {
    background: var(--paper);
  }
  .row[aria-expanded='true'] {
    background: var(--copper-wash);
  }
  .row .name {
    font: 600 0.9375rem / 1.35 var(--drawing-font);
  }
  .row .name::before {
    display: inline-block;
    margin-right: 6px;
    border: 4px solid transparent;
    border-right-width: 0;
    border-left: 5px solid var(--ink-soft);
    content: '';
  }
  .row[aria-expanded='true'] .name::before {
    transform: rotate(90deg);
  }
  .row .more {
    grid-column: 2 / -1;
  }
  .row.wide {
    grid-template-columns: minmax(0, 1fr) auto;
  }
  .row.wide .more {
    grid-column: 1 / -1;
  }
  .more,
  .state {
    color: var(--ink-soft);
    font-size: 0.875rem;
  }
  .open {
    padding: 8px 6px 10px 12px;
    border-left: 3px solid var(--copper);
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 6px;
    margin: 8px 0;
  }
  .three {
    grid-template-columns: 1fr 1fr 1fr;
  }
  .ticks {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 0 10px;
  }
  .fields > .buttons {
    margin: 0;
  }
  .missing {
    color: var(--ask);
    font-weight: 500;
  }
  h4 {
    margin: 8px 0 0;
    font: 600 0.875rem / 1.3 var(--drawing-font);
  }
  details.less {
    border-top: 1px solid var(--rule);
  }
  details.less > summary {
    font-size: 0.875rem;
    color: var(--ink-soft);
  }
  @media (max-width: 700px) {
    .row {
      min-height: 48px;
    }
  }
`;
