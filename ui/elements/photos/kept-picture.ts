import {
  css,
  html,
  LitElement,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { type SeenPicture, send } from '../../job-events.ts';
import { controlsCss } from '../shared-styles.ts';

/** Said in the place of a picture that cannot be shown. */
const missingWords = {
  away: 'Not on this device, and there is no connection',
  'not-there': 'Not sent yet by the device that took it, or lost',
} as const;

/**
 * One picture of the job, by the hash of its bytes; in its place, why it cannot be shown.
 *
 * @fires picture-asked
 */
export class KeptPicture extends LitElement {
  static override properties: PropertyDeclarations = {
    assetId: { attribute: false },
    words: { attribute: false },
    whole: { type: Boolean, reflect: true },
    seen: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        overflow: hidden;
      }
      img {
        display: block;
        width: 100%;
        height: 100%;
        object-fit: cover;
      }
      :host([whole]) img {
        object-fit: contain;
      }
      p {
        display: grid;
        place-items: center;
        height: 100%;
        margin: 0;
        padding: 4px;
        color: var(--ink-soft);
        font-size: 0.8125rem;
        line-height: 1.2;
        text-align: center;
        overflow-wrap: anywhere;
      }
    `,
  ];
  declare assetId: string;
  /** What it shows, in words. */
  declare words: string;
  /** True where all of it is shown, however it is shaped. */
  declare whole: boolean;
  /** Its address in this page, or why there is none; null until it is told. */
  declare private seen: string | keyof typeof missingWords | null;
  /** The address that has to be given back. */
  #url: string | null = null;

  constructor() {
    super();
    this.assetId = '';
    this.words = '';
    this.whole = false;
    this.seen = null;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('online', this.#again);
    if (this.hasUpdated) this.#ask();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('online', this.#again);
    this.#letGo();
  }

  override updated(changed: PropertyValues<this>): void {
    if (changed.has('assetId')) this.#ask();
  }

  readonly #again = (): void => {
    if (this.#url === null) this.#ask();
  };

  #ask(): void {
    const { assetId } = this;
    this.#letGo();
    send(this, 'picture-asked', {
      assetId,
      show: (picture) => {
        if (this.isConnected && this.assetId === assetId) this.#show(picture);
      },
    });
  }

  #show(picture: SeenPicture): void {
    this.#letGo();
    if (typeof picture === 'string') this.seen = picture;
    else this.seen = this.#url = URL.createObjectURL(picture);
  }

  #letGo(): void {
    if (this.#url !== null) URL.revokeObjectURL(this.#url);
    this.#url = null;
    this.seen = null;
  }

  override render(): TemplateResult {
    const { seen, words } = this;
    if (seen === null) return html``;
    if (seen === 'away' || seen === 'not-there')
      return html`<p role="img" aria-label=${`${words}: ${missingWords[seen]}`}>${missingWords[seen]}</p>`;
    return html`<img src=${seen} alt=${words} />`;
  }
}
customElements.define('kept-picture', KeptPicture);
declare global {
  interface HTMLElementTagNameMap {
    'kept-picture': KeptPicture;
  }
}
