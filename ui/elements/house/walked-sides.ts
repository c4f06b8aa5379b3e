import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type SVGTemplateResult,
  svg,
  type TemplateResult,
} from 'lit';
import { closingSide, sharedOut, type WalkedSide, walked } from '../../house/room-walk.ts';
import { formCss } from '../as-found/form-styles.ts';
import { controlsCss } from '../shared-styles.ts';
import { choiceOf, lengthField } from './own-fields.ts';

/** Missing the beginning by more than this many parts of the walls' length says that a wall was measured wrongly: common practice, no source. */
const ROUGH = 1 / 100;

const turns = [
  { value: '90', label: 'inside corner' },
  { value: '-90', label: 'outside corner' },
  { value: '45', label: 'half a corner in (45°)' },
  { value: '-45', label: 'half a corner out (45°)' },
  { value: '0', label: 'straight on' },
] as const;

/**
 * The walls of a room, one after the other, as they are walked with the wall on the right hand; with a picture, and by how much the
 * end misses the beginning.
 *
 * @fires sides-walked - detail: { sides }
 */
export class WalkedSides extends LitElement {
  static override properties: PropertyDeclarations = {
    sides: { attribute: false },
    lengthMm: { state: true },
  };
  static override styles = [
    controlsCss,
    formCss,
    css`
      :host {
        display: block;
      }
      ol {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: 1fr 1fr auto;
        gap: 8px;
        align-items: end;
        padding: 6px 0;
        border-top: 1px solid var(--rule);
      }
      svg {
        display: block;
        width: 100%;
        height: 160px;
        background: var(--sheet);
        border: 1px solid var(--rule);
      }
      .wall {
        fill: none;
        stroke: var(--ink);
        stroke-width: 2;
        vector-effect: non-scaling-stroke;
      }
      .gap {
        fill: none;
        stroke: var(--copper);
        stroke-width: 2;
        stroke-dasharray: 4 3;
        vector-effect: non-scaling-stroke;
      }
      .misses.rough {
        color: var(--fail);
        font-weight: 600;
      }
    `,
  ];
  declare sides: readonly WalkedSide[];
  declare private lengthMm: number | null;

  constructor() {
    super();
    this.sides = [];
    this.lengthMm = null;
  }

  override render(): TemplateResult {
    return html`<p class="hint">Walk with the wall on your right hand. The first wall is the one it shares with the room beside it.</p>
      ${this.sides.length === 0 ? nothing : this.#picture()}
      <ol>
        ${this.sides.map((side, i) => this.#side(side, i))}
      </ol>
      <div class="pair">
        ${lengthField({
          label: 'Next wall',
          value: this.lengthMm,
          took: (lengthMm) => {
            if (lengthMm !== null) this.#tell([...this.sides, { lengthMm, turnDeg: 90 }]);
          },
        })}
      </div>
      ${this.#closing()}`;
  }

  #side({ lengthMm, turnDeg }: WalkedSide, at: number): TemplateResult {
    const set = (side: WalkedSide): void => this.#tell(this.sides.map((one, i) => (i === at ? side : one)));
    return html`<li>
      ${lengthField({
        label: `Wall ${at + 1}`,
        value: lengthMm,
        needed: true,
        took: (mm) => {
          if (mm !== null) set({ lengthMm: mm, turnDeg });
        },
      })}
      ${choiceOf({
        label: 'then',
        options: turns,
        value: String(turnDeg) as `${90 | -90 | 45 | -45 | 0}`,
        took: (deg) => set({ lengthMm, turnDeg: Number(deg) }),
      })}
      <button
        class="small"
        aria-label=${`Take wall ${at + 1} out`}
        @click=${() => this.#tell(this.sides.filter((_, i) => i !== at))}
      >
        Take out
      </button>
    </li>`;
  }

  /** How well it closes, and that what is missing is shared out over the walls. */
  #closing(): TemplateResult | typeof nothing {
    if (this.sides.length < 3) return nothing;
    const { missing, missingMm, roundMm } = walked(this.sides);
    const closing = closingSide(this.sides);
    const isRough = missingMm > roundMm * ROUGH;
    const [x, y] = missing.map(Math.round);
    return html`<p class="misses ${isRough ? 'rough' : ''}" role="status">
        ${
          missingMm < 1
            ? 'It closes.'
            : html`It misses its beginning by ${Math.round(missingMm)} mm (${x} along the first wall, ${y} away from it).
              ${isRough ? 'That is more than a tape errs: measure again, or add a wall.' : 'Drawn so, it is shared out over the walls; right angles stay right.'}`
        }
      </p>
      ${
        closing === null
          ? nothing
          : html`<div class="buttons">
              <button class="small" @click=${() => this.#tell([...this.sides, closing])}>Close it with a wall of ${closing.lengthMm} mm</button>
              <button class="small" @click=${() => this.#shareOut()}>Share it out over the walls</button>
            </div>`
      }`;
  }

  #shareOut(): void {
    const corners = sharedOut(this.sides);
    this.#tell(
      this.sides.map((side, i) => {
        const [from, to] = [corners[i], corners[(i + 1) % corners.length]];
        if (from === undefined || to === undefined) return side;
        return { ...side, lengthMm: Math.round(Math.hypot(to[0] - from[0], to[1] - from[1]) * 10) / 10 };
      }),
    );
  }

  #picture(): TemplateResult {
    const { corners } = walked(this.sides);
    const xs = corners.map(([x]) => x);
    const ys = corners.map(([, y]) => -y);
    const [left, top] = [Math.min(...xs), Math.min(...ys)];
    const size = Math.max(Math.max(...xs) - left, Math.max(...ys) - top, 1);
    const box = `${left - size * 0.1} ${top - size * 0.1} ${Math.max(...xs) - left + size * 0.2} ${Math.max(...ys) - top + size * 0.2}`;
    const points = corners.map(([x, y]) => `${x},${-y}`).join(' ');
    const [last] = corners.slice(-1);
    const gap: SVGTemplateResult | typeof nothing =
      this.sides.length < 2 || last === undefined
        ? nothing
        : svg`<line class="gap" x1=${last[0]} y1=${-last[1]} x2="0" y2="0" />`;
    return html`<svg viewBox=${box} role="img" aria-label="The walls walked so far">
      ${svg`<polyline class="wall" points=${points} />`}${gap}
    </svg>`;
  }

  #tell(sides: readonly WalkedSide[]): void {
    this.lengthMm = null;
    this.dispatchEvent(new CustomEvent('sides-walked', { detail: { sides }, bubbles: true, composed: true }));
  }
}
customElements.define('walked-sides', WalkedSides);
declare global {
  interface HTMLElementTagNameMap {
    'walked-sides': WalkedSides;
  }
}
