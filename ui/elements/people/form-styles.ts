import { css } from 'lit';

/** Forms of a few fields that stand by themselves. */
export const formCss = css`
  :host {
    display: block;
  }
  form {
    display: grid;
    gap: 12px;
    max-width: 420px;
  }
  label {
    display: grid;
    gap: 4px;
    font-weight: 600;
  }
  input,
  select {
    width: 100%;
    box-sizing: border-box;
    min-height: 44px;
    padding: 6px 10px;
    font: inherit;
    font-weight: 400;
    color: var(--ink);
    background: var(--sheet);
    border: 1px solid var(--field-line);
    border-radius: var(--corner);
  }
  p {
    margin: 0;
  }
  .trouble {
    padding: 8px 10px;
    background: var(--fail-wash);
    border-left: 4px solid var(--fail);
  }
  .done {
    padding: 8px 10px;
    background: var(--pass-wash);
    border-left: 4px solid var(--pass);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
  }
`;

/** A page of such forms. */
export const formPageCss = css`
  main {
    max-width: 720px;
    margin: 0 auto;
    padding: 32px 20px 64px;
  }
  h1 {
    margin: 0 0 12px;
    font: 600 1.5rem / 1.25 var(--drawing-font);
  }
  h2 {
    margin: 28px 0 8px;
    font: 600 1.125rem / 1.3 var(--drawing-font);
  }
  main > p {
    margin: 0 0 12px;
  }
  @media (max-width: 700px) {
    main {
      padding: 20px 12px 48px;
    }
  }
`;
