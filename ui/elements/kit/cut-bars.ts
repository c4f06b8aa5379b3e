import {
  css,
  html,
  LitElement,
  type PropertyDeclarations,
  type SVGTemplateResult,
  svg,
  type TemplateResult,
} from 'lit';
import type { Shape } from '#drawing/scene.ts';
import type { CutBar } from '#drawing/shopping/cut-lists.ts';
import { cutScene } from '#drawing/shopping/cut-scene.ts';
import { SeenSize } from '../../controllers/seen-size.ts';
import { inkStyles } from '../plan/ink-styles.ts';
import { PX_PER_UNIT } from '../plan/plan-window.ts';
import { shapeTemplate } from '../plan/shape-template.ts';

/** The least and the greatest width of the picture, units. */
const NARROWEST = 50;
const WIDEST = 180;
/** Its width on an A4 sheet between margins of 15 mm, where a unit is a millimetre. */
const ON_PAPER = 180;

/**
 * Lengths with their cuts, as bars. A cut that is touched is told; the list beneath says the same to who does not see it,
 * so that for them the picture is none.
 *
 * @fires cut-touched - detail: { cause }
 */
export class CutBars extends LitElement {
  static override properties: PropertyDeclarations = {
    bars: { attribute: false },
    lit: { attribute: false },
    paper: { type: Boolean },
  };
  static override styles = [
    inkStyles,
    css`
      :host {
        display: block;
      }
      svg {
        display: block;
        max-width: 100%;
        font-family: var(--drawing-font);
        font-variant-numeric: tabular-nums;
      }
      .cut {
        cursor: pointer;
      }
      .lit .symbol-new {
        fill: var(--copper);
      }
      .lit text {
        fill: var(--sheet);
        font-weight: 600;
      }
      :host([paper]) svg {
        width: 180mm;
        height: auto;
      }
    `,
  ];
  declare bars: readonly CutBar[];
  declare lit: ReadonlySet<string>;
  /** True for print: as wide as the sheet. */
  declare paper: boolean;
  readonly #size = new SeenSize(this);

  constructor() {
    super();
    this.bars = [];
    this.lit = new Set();
    this.paper = false;
  }

  override render(): TemplateResult {
    const units = Math.min(WIDEST, Math.max(NARROWEST, this.#size.width / PX_PER_UNIT));
    const { widthMm, heightMm, layers } = cutScene(this.bars, this.paper ? ON_PAPER : units);
    return html`<svg
      width=${widthMm * PX_PER_UNIT}
      height=${heightMm * PX_PER_UNIT}
      viewBox=${`0 0 ${widthMm} ${heightMm}`}
      aria-hidden="true"
    >
      ${layers.map(({ shapes }) => svg`<g>${shapes.map((shape) => this.#shape(shape))}</g>`)}
    </svg>`;
  }

  #shape(shape: Shape): SVGTemplateResult {
    if (shape.kind !== 'group') return shapeTemplate(shape);
    const { subject, title } = shape;
    return svg`<g class=${this.lit.has(subject) ? 'cut lit' : 'cut'} @click=${() => this.#touch(subject)}>
      <title>${title}</title>${shapeTemplate(shape)}</g>`;
  }

  #touch(cause: string): void {
    this.dispatchEvent(new CustomEvent('cut-touched', { detail: { cause } }));
  }
}
customElements.define('cut-bars', CutBars);
declare global {
  interface HTMLElementTagNameMap {
    'cut-bars': CutBars;
  }
}
