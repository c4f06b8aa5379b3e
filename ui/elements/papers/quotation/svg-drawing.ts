import {
  css,
  html,
  LitElement,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';

/** All that our drawings are made of; anything else in a kept drawing is left out. */
const shapes: ReadonlySet<string> = new Set(['svg', 'g', 'title', 'path', 'circle', 'text']);
const refused = /^(?:on|href$|xlink:|style$|src$)/i;

/** Leaves of a drawing only what draws: no script, no reference, no style of its own. */
function cleaned(from: Element): Element {
  for (const { name } of [...from.attributes]) if (refused.test(name)) from.removeAttribute(name);
  for (const child of [...from.children]) {
    if (shapes.has(child.localName)) cleaned(child);
    else child.remove();
  }
  return from;
}

/** A drawing that is kept as SVG text, as wide as there is room; one that cannot be read says so. */
export class SvgDrawing extends LitElement {
  static override properties: PropertyDeclarations = { svg: { attribute: false }, label: {} };
  static override styles = css`
    :host {
      display: block;
    }
    svg {
      display: block;
      width: 100%;
      height: auto;
    }
  `;
  declare svg: string;
  /** What it is of, for who cannot see it. */
  declare label: string;

  constructor() {
    super();
    this.svg = '';
    this.label = '';
  }

  override render(): TemplateResult {
    return html`<div></div>`;
  }

  override updated(changed: PropertyValues): void {
    if (!changed.has('svg') && !changed.has('label')) return;
    const holder = this.renderRoot.querySelector('div');
    if (holder === null) return;
    const drawing = new DOMParser().parseFromString(this.svg, 'image/svg+xml').documentElement;
    if (drawing.localName !== 'svg') {
      holder.textContent = 'This drawing cannot be read.';
      return;
    }
    drawing.setAttribute('role', 'img');
    drawing.setAttribute('aria-label', this.label);
    holder.replaceChildren(document.importNode(cleaned(drawing), true));
  }
}
customElements.define('svg-drawing', SvgDrawing);
declare global {
  interface HTMLElementTagNameMap {
    'svg-drawing': SvgDrawing;
  }
}
