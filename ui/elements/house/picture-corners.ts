import { css, html, LitElement, type PropertyDeclarations, svg, type TemplateResult } from 'lit';
import type { Storey, Underlay } from '#model/building.ts';
import { type Corners, isSeenRectangle } from '../../house/straighten.ts';
import { send } from '../../job-events.ts';
import { formCss } from '../as-found/form-styles.ts';
import '../fields/number-field.ts';
import '../photos/kept-picture.ts';
import { controlsCss } from '../shared-styles.ts';
import { cornerNames, firstCorners, withCorner } from './corner-marks.ts';
import { lengthField } from './own-fields.ts';

/** How far an arrow moves a corner, px of the picture. */
const STEP_PX = 8;
const FINE_PX = 1;

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/**
 * Says where a picture shows the four corners of a rectangle: by dragging, by keys, or by figures; and how large that is, where
 * somebody has measured it.
 *
 * @fires underlay-straightened, corners-closed
 */
export class PictureCorners extends LitElement {
  static override properties: PropertyDeclarations = {
    storey: { attribute: false },
    underlay: { attribute: false },
    corners: { state: true },
    widthMm: { state: true },
    heightMm: { state: true },
  };
  static override styles = [
    controlsCss,
    formCss,
    css`
      dialog {
        width: min(98vw, 1100px);
        max-width: none;
        max-height: 96dvh;
        padding: 12px;
        color: var(--ink);
        background: var(--sheet);
        border: 1px solid var(--line);
        border-radius: var(--corner);
      }
      dialog::backdrop {
        background: rgb(0 0 0 / 60%);
      }
      .picture {
        position: relative;
        width: fit-content;
        margin: 8px auto;
        touch-action: none;
      }
      svg {
        display: block;
        width: 100%;
        max-height: 56dvh;
        overflow: visible;
        touch-action: none;
      }
      polygon {
        fill: none;
        stroke: var(--copper);
        stroke-width: 2;
        vector-effect: non-scaling-stroke;
      }
      .handle circle {
        fill: var(--sheet);
        fill-opacity: 0.35;
        stroke: var(--copper);
        stroke-width: 3;
        vector-effect: non-scaling-stroke;
      }
      .handle path {
        stroke: var(--copper);
        stroke-width: 1.5;
        vector-effect: non-scaling-stroke;
      }
      .handle {
        cursor: grab;
      }
      .handle:focus-visible {
        outline: 3px solid var(--copper);
      }
      .why {
        color: var(--fail);
        font-weight: 600;
      }
      dialog .buttons button {
        min-height: 44px;
      }
    `,
  ];
  declare storey: Storey;
  declare underlay: Underlay;
  declare private corners: Corners | null;
  declare private widthMm: number | null;
  declare private heightMm: number | null;
  /** Px of the picture to one of the screen, as it was drawn last. */
  #pxPerPx = 1;
  #held: { readonly at: number; readonly offX: number; readonly offY: number } | null = null;
  #url: string | null = null;
  /** The picture that was asked for. */
  #asked = '';

  constructor() {
    super();
    this.corners = null;
    this.widthMm = null;
    this.heightMm = null;
  }

  get #size(): readonly [number, number] {
    return [this.underlay.widthPx, this.underlay.heightPx];
  }

  get #now(): Corners {
    return this.corners ?? firstCorners(this.#size);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.#url !== null) URL.revokeObjectURL(this.#url);
    this.#url = null;
    this.#asked = '';
  }

  override updated(): void {
    const dialog = this.renderRoot.querySelector('dialog');
    if (dialog !== null && !dialog.open) dialog.showModal();
    const box = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    const pxPerPx = box === undefined || box.width === 0 ? 1 : this.underlay.widthPx / box.width;
    // The marks keep their size under a finger, however large the picture is shown.
    if (Math.abs(pxPerPx - this.#pxPerPx) > 0.01) {
      this.#pxPerPx = pxPerPx;
      this.requestUpdate();
    }
    this.#ask();
  }

  #ask(): void {
    const { asset } = this.underlay;
    if (this.#asked === asset) return;
    this.#asked = asset;
    send(this, 'picture-asked', {
      assetId: asset,
      show: (picture) => {
        if (typeof picture === 'string' || !this.isConnected) return;
        this.#url = URL.createObjectURL(picture);
        this.requestUpdate();
      },
    });
  }

  override render(): TemplateResult {
    const isSound = isSeenRectangle(this.#now);
    return html`<dialog aria-label="Straighten the picture" @close=${() => this.#close()} @keydown=${(event: KeyboardEvent) => event.stopPropagation()}>
      <h3>Put a mark on each corner of something that is a rectangle in truth</h3>
      <p class="hint">The outer walls, a large room, or the sheet of paper. Drag the marks, or go to one with Tab and use the arrows.</p>
      ${this.#picture()}
      ${isSound ? '' : html`<p class="why" role="alert">These are the corners of no rectangle: one lies between the others, or two have changed places.</p>`}
      <details class="less"><summary>The marks as figures</summary><div class="pair">${cornerNames.map((name, at) => this.#figures(name, at))}</div></details>
      <div class="fields"><div class="pair">
        ${lengthField({
          label: 'Across it in truth, if you know',
          help: 'Then the picture is to scale at once.',
          value: this.widthMm,
          took: (mm) => {
            this.widthMm = mm;
          },
        })}
        ${lengthField({
          label: 'Up it in truth, if you know',
          help: 'Without, as the camera saw it.',
          value: this.heightMm,
          took: (mm) => {
            this.heightMm = mm;
          },
        })}
      </div></div>
      <div class="buttons">
        <button class="main" ?disabled=${!isSound} @click=${() => this.#straighten()}>Straighten</button>
        <button @click=${() => this.renderRoot.querySelector('dialog')?.close()}>Leave it as it is</button>
      </div>
    </dialog>`;
  }

  #picture(): TemplateResult {
    const [width, height] = this.#size;
    const points = this.#now.map(([x, y]) => `${x},${y}`).join(' ');
    return html`<div class="picture"><svg
      viewBox=${`0 0 ${width} ${height}`}
      role="group"
      aria-label="The picture with its four marks"
      @pointermove=${(event: PointerEvent) => this.#moved(event)}
      @pointerup=${() => {
        this.#held = null;
      }}
      @pointercancel=${() => {
        this.#held = null;
      }}
    >${this.#url === null ? '' : svg`<image href=${this.#url} width=${width} height=${height} preserveAspectRatio="none" aria-hidden="true"></image>`}
      <polygon points=${points}></polygon>
      ${this.#now.map((corner, at) => this.#handle(corner, at))}
    </svg></div>`;
  }

  #handle([x, y]: readonly [number, number], at: number): TemplateResult {
    const [width, height] = this.#size;
    const radius = 22 * this.#pxPerPx;
    const arm = radius * 0.6;
    return svg`<g class="handle" tabindex="0" role="button"
      aria-label=${`${cornerNames[at]} corner, ${Math.round((100 * x) / width)} % across, ${Math.round((100 * y) / height)} % down; arrows move it`}
      @pointerdown=${(event: PointerEvent) => this.#took(event, at)}
      @keydown=${(event: KeyboardEvent) => this.#keyed(event, at)}>
      <circle cx=${x} cy=${y} r=${radius}></circle>
      <path d=${`M${x - arm} ${y}H${x + arm}M${x} ${y - arm}V${y + arm}`}></path></g>` as unknown as TemplateResult;
  }

  #onPicture({ clientX, clientY }: PointerEvent): readonly [number, number] {
    const box = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    if (box === undefined) return [0, 0];
    // The picture fills its box one way and is in the middle the other.
    const [width, height] = this.#size;
    const scale = Math.min(box.width / width, box.height / height);
    return [
      (clientX - box.left - (box.width - width * scale) / 2) / scale,
      (clientY - box.top - (box.height - height * scale) / 2) / scale,
    ];
  }

  #took(event: PointerEvent, at: number): void {
    const [x, y] = this.#onPicture(event);
    const corner = this.#now[at] ?? [0, 0];
    this.#held = { at, offX: corner[0] - x, offY: corner[1] - y };
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
  }

  #moved(event: PointerEvent): void {
    if (this.#held === null) return;
    const { at, offX, offY } = this.#held;
    const [x, y] = this.#onPicture(event);
    this.corners = withCorner(this.#now, at, [x + offX, y + offY], this.#size);
  }

  #keyed(event: KeyboardEvent, at: number): void {
    const arrow = arrows[event.key];
    const corner = this.#now[at];
    if (arrow === undefined || corner === undefined) return;
    event.preventDefault();
    const step = event.shiftKey ? FINE_PX : STEP_PX;
    this.corners = withCorner(
      this.#now,
      at,
      [corner[0] + arrow[0] * step, corner[1] + arrow[1] * step],
      this.#size,
    );
  }

  #figures(name: string, at: number): TemplateResult {
    return html`${([0, 1] as const).map(
      (axis) => html`<number-field
        .label=${`${name}: px ${axis === 0 ? 'from the left' : 'from the top'}`}
        unit="px"
        .min=${0}
        .max=${this.#size[axis]}
        .needed=${true}
        .value=${Math.round(this.#now[at]?.[axis] ?? 0)}
        @field-change=${(event: CustomEvent<{ readonly value: number | null }>) => {
          event.stopPropagation();
          const corner = this.#now[at] ?? [0, 0];
          const { value } = event.detail;
          if (value === null) return;
          const to: [number, number] = axis === 0 ? [value, corner[1]] : [corner[0], value];
          this.corners = withCorner(this.#now, at, to, this.#size);
        }}
      ></number-field>`,
    )}`;
  }

  #straighten(): void {
    const { widthMm, heightMm } = this;
    const corners = this.#now;
    send(this, 'underlay-straightened', { storeyId: this.storey.id, corners, widthMm, heightMm });
    this.renderRoot.querySelector('dialog')?.close();
  }

  #close(): void {
    this.dispatchEvent(new CustomEvent('corners-closed'));
  }
}
customElements.define('picture-corners', PictureCorners);
declare global {
  interface HTMLElementTagNameMap {
    'picture-corners': PictureCorners;
  }
}
