import { css } from 'lit';

/** The look of two schemes side by side: a table on a desk and on paper, stacked on a phone. */
export const compareCss = css`
  :host {
    display: block;
    max-width: 1060px;
    padding: 16px 20px 28px;
  }
  h3 {
    margin: 22px 0 8px;
  }
  .pick {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 12px;
    margin: 10px 0 4px;
  }
  .sides,
  .differences {
    table-layout: fixed;
  }
  .sides th:first-child {
    width: 18%;
  }
  .sides th[scope='row'] {
    font: 400 0.9375rem / 1.45 var(--text-font);
    border-top: 1px solid var(--rule);
  }
  .sides thead th {
    color: var(--ink);
  }
  .sides td {
    font-size: 0.9375rem;
  }
  .sides td p:last-child {
    margin: 0;
  }
  .sum td,
  .sides .sum th[scope='row'] {
    font-weight: 600;
    border-top: 1px solid var(--ink);
  }
  .sides .pay td {
    font: 600 1.375rem/1.3 var(--drawing-font);
  }
  .differences th {
    white-space: normal;
    vertical-align: bottom;
  }
  .differences th:nth-child(2),
  .differences th:nth-child(3) {
    width: 20%;
  }
  .differences th:last-child {
    width: 14%;
  }
  ul.findings {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  ul.findings li {
    margin-bottom: 4px;
  }
  .more {
    color: var(--copper-ink);
    font-weight: 600;
  }
  @media (max-width: 700px) {
    :host {
      padding: 12px 12px 24px;
    }
    .pick {
      grid-template-columns: 1fr;
    }
    .sides,
    .sides thead,
    .sides tbody,
    .differences,
    .differences thead,
    .differences tbody {
      display: block;
    }
    .sides tr {
      display: grid;
      grid-template-columns: 1fr 1fr;
      padding: 6px 0 8px;
      border-top: 1px solid var(--rule);
    }
    .differences tr {
      display: grid;
      grid-template-columns: 1fr 1fr 1fr;
      padding: 6px 0;
      border-top: 1px solid var(--rule);
    }
    .sides th,
    .sides td,
    .sides th[scope='row'],
    .differences th,
    .differences td {
      padding: 0 6px 0 0;
      border: 0;
      overflow-wrap: break-word;
    }
    .sides tr.sum,
    .differences tr.sum {
      border-top-color: var(--ink);
    }
    .sides .sum td,
    .sides .sum th[scope='row'],
    .differences .sum td {
      border: 0;
    }
    .sides tr > :first-child,
    .differences tr > :first-child {
      grid-column: 1 / -1;
      width: auto;
    }
    .sides th[scope='row'] {
      font-size: 0.875rem;
    }
    .sides .pay td {
      font-size: 1.1875rem;
    }
    .differences td.number,
    .differences th.number {
      width: auto;
      text-align: left;
    }
  }
  @media print {
    :host {
      max-width: none;
      padding: 0;
    }
    .pick,
    .back {
      display: none;
    }
    tr {
      break-inside: avoid;
    }
  }
`;
