import { css, html, type TemplateResult } from 'lit';

/** How a label that chooses a file looks: a button with the file's own field over it, so that keys and taps reach that. */
export const pickCss = css`
  .pick {
    position: relative;
    display: inline-flex;
    align-items: center;
    min-height: 44px;
    padding: 4px 12px;
    font-weight: 500;
    background: var(--sheet);
    border: 1px solid var(--line);
    border-radius: var(--corner);
  }
  .pick:focus-within {
    outline: 2px solid var(--copper);
    outline-offset: 2px;
  }
  .pick input {
    position: absolute;
    inset: -1px;
    width: calc(100% + 2px);
    min-height: 44px;
    opacity: 0;
    cursor: pointer;
  }
`;

/** What a picture is chosen by. */
interface Pick {
  readonly label: string;
  /** What it is chosen for, for those who do not see where the button stands. */
  readonly of: string;
  /** True where a phone's camera is opened at once. */
  readonly camera: boolean;
  /** True where several may be chosen. */
  readonly several?: boolean;
  readonly took: (files: readonly File[]) => void;
}

/** A button that takes a picture or chooses one. */
export const pickPicture = ({ label, of, camera, several = false, took }: Pick): TemplateResult => {
  const picked = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const files = [...(input.files ?? [])];
    // The same one can be chosen again after it was removed.
    input.value = '';
    if (files.length > 0) took(files);
  };
  const hidden = html`<span class="visually-hidden">, ${of}</span>`;
  return camera
    ? html`<label class="pick">${label}${hidden}<input type="file" accept="image/*" capture="environment" @change=${picked} /></label>`
    : html`<label class="pick">${label}${hidden}<input type="file" accept="image/*" ?multiple=${several} @change=${picked} /></label>`;
};
