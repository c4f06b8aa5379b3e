import { css } from 'lit';

/** What the forms of rooms and walls share beyond those of the survey. */
export const houseFormCss = css`
  :host {
    display: block;
  }
  .why {
    margin: 0;
    color: var(--fail);
    font-weight: 600;
  }
  .size {
    white-space: nowrap;
  }
`;
