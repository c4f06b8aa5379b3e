import { css } from 'lit';

/** The one dark block of a page. */
export const priceBlockCss = css`
  :host {
    display: block;
    min-height: 218px;
    padding: 14px 18px 14px;
    color: var(--block-ink);
    background: var(--block);
  }
  .total {
    margin: 0;
    font: 600 2.25rem / 1.15 var(--drawing-font);
  }
  .total small {
    font: 400 0.875rem / 1.3 var(--text-font);
    color: var(--block-soft);
  }
  .whose {
    margin: 0;
    overflow-wrap: anywhere;
    font-size: 0.875rem;
    line-height: 1.35;
    color: var(--block-soft);
  }
  .missing {
    margin: 6px 0 0;
  }
  .condition {
    margin: 4px 0 0;
    font-size: 0.875rem;
    line-height: 1.3;
  }
  .range-of {
    margin: 6px 0 0;
    font-size: 0.875rem;
    line-height: 1.3;
    color: var(--block-soft);
  }
  .range {
    display: flex;
    gap: 9px;
    align-items: center;
    margin-top: 2px;
    font-size: 0.875rem;
    color: var(--block-soft);
  }
  .range svg {
    flex: 1;
    min-width: 0;
    height: 12px;
  }
  .track {
    fill: #6d7a82;
  }
  .ends {
    fill: #c9c6bd;
  }
  .now {
    fill: #f6f1e6;
  }
  .bar {
    display: block;
    width: 100%;
    height: 10px;
    margin: 10px 0 6px;
  }
  .bar .part0 {
    fill: #d9854c;
  }
  .bar .part1 {
    fill: #e8dcc6;
  }
  .bar .part2 {
    fill: #9fb0b8;
  }
  .bar .part3 {
    fill: #c6b26b;
  }
  .bar .part4 {
    fill: #64737c;
  }
  dl {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(92px, 1fr));
    gap: 4px 10px;
    margin: 0;
    font-size: 0.875rem;
    line-height: 1.35;
  }
  dl div {
    padding-left: 8px;
    border-left: 4px solid #64737c;
  }
  dl .part0 {
    border-color: #d9854c;
  }
  dl .part1 {
    border-color: #e8dcc6;
  }
  dl .part2 {
    border-color: #9fb0b8;
  }
  dl .part3 {
    border-color: #c6b26b;
  }
  dt {
    color: var(--block-soft);
  }
  dd {
    margin: 0;
    font: 600 0.875rem / 1.3 var(--drawing-font);
  }
  .verdict {
    display: flex;
    gap: 8px;
    align-items: center;
    padding: 5px 9px;
    margin: 11px 0 0;
    color: var(--ink);
    background: var(--sheet);
    border-radius: var(--corner);
    font-size: 0.875rem;
    font-weight: 500;
  }
  /* Where there is little height, the total, its range and the verdict are what stays. */
  @media (max-height: 47em), (max-width: 60em) {
    .whose,
    .bar,
    dl {
      display: none;
    }
    :host {
      min-height: 0;
    }
  }
`;
