import { type CSSResult, css } from 'lit';

/** The frame round every page: a job fills the window, all others scroll. */
export const appShellCss: CSSResult = css`
  :host {
    display: flex;
    flex-direction: column;
    min-height: 100vh;
  }
  .page {
    flex: 1 0 auto;
  }
  /* A job fills the window; what it is made of scrolls. */
  :host([page='job']) {
    height: calc(100vh - var(--above, 0px));
    height: calc(100dvh - var(--above, 0px));
    min-height: 0;
  }
  job-page.page {
    flex: 1 1 0;
    min-height: 0;
  }
  /* On paper it takes as many sheets as it wants. */
  @media print {
    :host([page='job']) {
      display: block;
      height: auto;
    }
    nav {
      display: none;
    }
  }
  .skip {
    position: absolute;
    top: 8px;
    left: 8px;
    z-index: 10;
    padding: 8px 14px;
    background: var(--sheet);
    border: 2px solid var(--copper);
    transform: translateY(-160px);
  }
  .skip:focus {
    transform: none;
  }
  .broken {
    display: flex;
    flex-wrap: wrap;
    gap: 8px 16px;
    align-items: center;
    padding: 10px 20px;
    background: var(--fail-wash);
    border-bottom: 1px solid var(--fail);
  }
  .broken p {
    flex: 1 1 320px;
    margin: 0;
  }
  .news {
    display: flex;
    gap: 12px;
    align-items: center;
    padding: 4px 20px;
    background: var(--ask-wash);
    border-bottom: 1px solid var(--ask);
  }
  .news p {
    flex: 1;
    margin: 0;
  }
  @media (max-width: 700px) {
    .news {
      padding: 2px 12px;
    }
  }
`;
