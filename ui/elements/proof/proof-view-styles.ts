import { css } from 'lit';

/** How a circuit's pictures and figures lie. */
export const proofViewCss = css`
  :host {
    display: block;
    padding: 0 12px 20px;
    overflow: auto;
    background: var(--sheet);
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 14px;
    align-items: flex-end;
    padding: 10px 4px 4px;
  }
  .told {
    flex: 1 1 14rem;
  }
  .told p {
    margin: 2px 0 4px;
  }
  number-field {
    display: block;
    max-width: 16rem;
    margin-bottom: 8px;
  }
  choice-field {
    flex: 0 1 13rem;
    min-width: 9rem;
  }
  @media (max-width: 43.75em) {
    .told {
      flex-basis: 100%;
    }
    choice-field {
      flex: 1 1 9rem;
    }
  }
  section {
    margin-inline: 4px;
  }
  section {
    max-width: 46rem;
    padding-top: 12px;
    margin-top: 12px;
    border-top: 1px solid var(--line);
  }
  h3 {
    margin-bottom: 6px;
  }
  ul {
    padding-left: 18px;
    margin: 0;
    font-size: 0.875rem;
  }
  .none {
    padding: 16px 8px;
  }
  caption {
    padding-bottom: 4px;
    font-size: 0.875rem;
    text-align: left;
    color: var(--ink-soft);
  }
  th[scope='row'] {
    padding-block: 0;
    vertical-align: middle;
    border-top: 1px solid var(--rule);
  }
  th button {
    padding-inline: 0;
    font-weight: 600;
    color: var(--ink);
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  td {
    vertical-align: middle;
  }
  .over {
    color: var(--fail);
  }
  @media print {
    :host {
      position: static;
      overflow: visible;
    }
  }
`;
