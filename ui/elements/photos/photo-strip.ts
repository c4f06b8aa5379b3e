import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Asset } from '#model/job.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { captionPhoto, removePhoto } from '../../edits/photos.ts';
import { type PhotoOf, send } from '../../job-events.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/text-field.ts';
import { controlsCss } from '../shared-styles.ts';
import './kept-picture.ts';
import { pickCss, pickPicture } from './pick-picture.ts';

/**
 * The photos of one thing: small ones to open in full, what each shows in a person's words, and two buttons that add further ones.
 *
 * @fires photos-taken, job-edit
 */
export class PhotoStrip extends LitElement {
  static override properties: PropertyDeclarations = {
    of: { attribute: false },
    name: { attribute: false },
    photos: { attribute: false },
    assets: { attribute: false },
    at: { state: true },
  };
  static override styles = [
    controlsCss,
    pickCss,
    css`
      :host {
        display: block;
      }
      ul,
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin: 6px 0;
        padding: 0;
        list-style: none;
      }
      .small-one {
        width: 88px;
        height: 88px;
        padding: 0;
      }
      .small-one kept-picture {
        width: 100%;
        height: 100%;
      }
      figure {
        width: 88px;
        margin: 0;
      }
      /* Whoever wants to read more of it opens the photo. */
      figcaption {
        display: -webkit-box;
        margin-top: 2px;
        overflow: hidden;
        font-size: 0.8125rem;
        line-height: 1.25;
        overflow-wrap: anywhere;
        -webkit-box-orient: vertical;
        -webkit-line-clamp: 3;
      }
      dialog {
        width: min(96vw, 1200px);
        height: min(94dvh, 1000px);
        padding: 8px;
        color: var(--ink);
        background: var(--sheet);
        border: 1px solid var(--line);
        border-radius: var(--corner);
      }
      dialog::backdrop {
        background: rgb(0 0 0 / 60%);
      }
      dialog[open] {
        display: grid;
        grid-template-rows: minmax(0, 1fr) auto auto;
        gap: 8px;
      }
      dialog .acts {
        align-items: center;
        margin: 0;
      }
      dialog .acts p {
        flex: 1 1 auto;
        margin: 0;
      }
      dialog button {
        min-height: 44px;
      }
      @media (max-width: 700px) {
        dialog .acts p {
          flex: 1 0 100%;
        }
        dialog .acts button {
          flex: 1 0 auto;
        }
      }
    `,
  ];
  declare of: PhotoOf;
  /** Of the thing, as people know it. */
  declare name: string;
  /** Ids, in the order in which they were added. */
  declare photos: readonly string[];
  /** The job's pictures: what a person said of one stands under it. */
  declare assets: readonly Asset[];
  /** Which is open in full, from 0; null for none. */
  declare private at: number | null;

  constructor() {
    super();
    keepFocus(this);
    this.name = '';
    this.photos = [];
    this.assets = [];
    this.at = null;
  }

  override updated(): void {
    const dialog = this.renderRoot.querySelector('dialog');
    if (dialog !== null && !dialog.open) dialog.showModal();
  }

  override render(): TemplateResult {
    return html`${this.photos.length === 0 ? nothing : html`<ul aria-label=${`Photos of ${this.name}`}>${this.photos.map((id, at) => this.#smallOne(id, at))}</ul>`}
      <div class="acts">${this.#pick(true)} ${this.#pick(false)}</div>
      ${this.#full()}`;
  }

  #words(at: number): string {
    return this.photos.length === 1
      ? `Photo of ${this.name}`
      : `Photo ${at + 1} of ${this.photos.length}, ${this.name}`;
  }

  /** What a person said that a photo shows; empty where nobody did. */
  #caption(id: string): string {
    return this.assets.find((asset) => asset.id === id)?.caption ?? '';
  }

  /** A photo in words: which it is, and what it shows. */
  #told(id: string, at: number): string {
    const caption = this.#caption(id);
    return caption === '' ? this.#words(at) : `${this.#words(at)}, ${caption}`;
  }

  #smallOne(id: string, at: number): TemplateResult {
    const caption = this.#caption(id);
    return html`<li><figure>
      <button class="small-one" aria-label=${`${this.#told(id, at)}: look at it in full`} @click=${() => {
        this.at = at;
      }}><kept-picture .assetId=${id} .words=${this.#told(id, at)}></kept-picture></button>
      ${caption === '' ? nothing : html`<figcaption>${caption}</figcaption>`}
    </figure></li>`;
  }

  #pick(camera: boolean): TemplateResult {
    const { of, name } = this;
    return pickPicture({
      label: camera ? 'Take a photo' : 'Add a picture',
      of: name,
      camera,
      several: true,
      took: (files) => send(this, 'photos-taken', { of, name, files }),
    });
  }

  #full(): TemplateResult | typeof nothing {
    const { photos } = this;
    const at = this.at === null ? null : Math.min(this.at, photos.length - 1);
    const id = at === null ? undefined : photos[at];
    if (at === null || id === undefined) return nothing;
    // It can have the focus, so that a key after a tap on the picture is its own.
    return html`<dialog tabindex="-1" aria-label=${this.#words(at)} @close=${this.#closed} @keydown=${(event: KeyboardEvent) => this.#keyed(event, at)}>
      <kept-picture whole .assetId=${id} .words=${this.#told(id, at)}></kept-picture>
      <text-field
        label="What it shows"
        .value=${this.#caption(id)}
        @field-change=${(event: CustomEvent<FieldChange<string>>) => {
          event.stopPropagation();
          send(this, 'job-edit', captionPhoto(this.name, id, event.detail.value));
        }}
      ></text-field>
      <div class="acts">
        <p role="status">${this.#words(at)}</p>
        ${
          photos.length === 1
            ? nothing
            : html`<button ?disabled=${at === 0} @click=${() => this.#turn(at - 1)}>Before</button>
                <button ?disabled=${at === photos.length - 1} @click=${() => this.#turn(at + 1)}>Next</button>`
        }
        <button @click=${() => this.#remove(id)}>Remove</button>
        <button class="main" autofocus @click=${() => this.renderRoot.querySelector('dialog')?.close()}>Close</button>
      </div>
    </dialog>`;
  }

  #turn(to: number): void {
    if (this.photos[to] !== undefined) this.at = to;
  }

  #keyed(event: KeyboardEvent, at: number): void {
    // What lies behind it hears of none: Escape shuts this alone.
    event.stopPropagation();
    const isTyping = event.composedPath()[0] instanceof HTMLInputElement;
    if (isTyping || (event.key !== 'ArrowLeft' && event.key !== 'ArrowRight')) return;
    event.preventDefault();
    this.#turn(event.key === 'ArrowLeft' ? at - 1 : at + 1);
  }

  /** The small one that was opened has the focus again. */
  readonly #closed = (): void => {
    const at = this.at ?? 0;
    this.at = null;
    void this.updateComplete.then(() => {
      const small = this.renderRoot.querySelectorAll<HTMLElement>('.small-one');
      small[Math.min(at, small.length - 1)]?.focus();
    });
  };

  /** It comes back by undo; nobody is asked twice. */
  #remove(id: string): void {
    this.renderRoot.querySelector('dialog')?.close();
    send(this, 'job-edit', removePhoto(this.of, this.name, id));
  }
}
customElements.define('photo-strip', PhotoStrip);
declare global {
  interface HTMLElementTagNameMap {
    'photo-strip': PhotoStrip;
  }
}
