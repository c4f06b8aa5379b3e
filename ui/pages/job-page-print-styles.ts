import { css } from 'lit';

/** What of a job's page goes on paper, and how. */
export const jobPagePrintCss = css`
  @media print {
    :host,
    :host([wide-sheet]) {
      display: block;
      height: auto;
    }
    .tools,
    step-run,
    .controls,
    price-bar,
    .strip,
    .aside {
      display: none;
    }
    .sheet,
    .compare {
      overflow: visible;
      border: 0;
    }
    .plan {
      height: 160mm;
      break-inside: avoid;
    }
    /* What is shopped by or worked from has a sheet of its own, with its own head. */
    :host([sheet-alone]) :is(header, .notice, .plan, toast-line) {
      display: none;
    }
  }
`;
