import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { costScene } from '#drawing/ways/cost-scene.ts';
import { SeenSize } from '../../controllers/seen-size.ts';
import type { Candidate } from '../../found-ways/candidate.ts';
import { send } from '../../job-events.ts';
import { PX_PER_UNIT } from '../plan/plan-window.ts';
import { withVatWords } from '../price/vat-words.ts';
import '../proof/scene-picture.ts';
import { controlsCss } from '../shared-styles.ts';
import { toldOf } from './candidate-words.ts';

/** The least and the greatest width of the chart, units. */
const NARROWEST = 50;
const WIDEST = 110;

/** How far from a mark a finger may come down, units: 44 px across. */
const REACH = 4.4;

/**
 * Price against disturbance of the found schemes; touched, or come to by keyboard and chosen, one is shown on the plan.
 *
 * @fires ways-asked
 */
export class FoundChart extends LitElement {
  static override properties: PropertyDeclarations = {
    candidates: { attribute: false },
    tried: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        margin: 6px 0 10px;
      }
      .key {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 14px;
        margin: 0;
        font-size: 0.875rem;
        color: var(--ink-soft);
      }
      .key svg {
        width: 12px;
        height: 12px;
        margin-right: 4px;
        vertical-align: -1px;
        stroke-width: 1.4;
      }
      .diamond {
        fill: var(--copper);
      }
      .ring {
        fill: var(--sheet);
        stroke: var(--ink);
      }
    `,
  ];
  declare candidates: readonly Candidate[];
  /** The id of the scheme that is on the plan; null where it is none of these. */
  declare tried: string | null;
  readonly #size = new SeenSize(this);

  constructor() {
    super();
    this.candidates = [];
    this.tried = null;
  }

  override render(): TemplateResult {
    const [first] = this.candidates;
    const widthMm = Math.min(WIDEST, Math.max(NARROWEST, this.#size.width / PX_PER_UNIT));
    const marks = this.candidates.map((candidate, i) => ({
      id: candidate.scheme.id,
      number: i + 1,
      title: toldOf(candidate, i + 1),
      grossPence: candidate.totals.grossPence,
      messPoints: candidate.messPoints,
      efficient: candidate.efficient,
    }));
    const scene = costScene(marks, { widthMm, vatWords: first === undefined ? '' : withVatWords(first) });
    return html`<scene-picture
        .scene=${scene}
        .chosen=${this.tried}
        @click=${this.#touched}
        @thing-chosen=${(event: CustomEvent<{ readonly subjectId: string | null }>) => {
          event.stopPropagation();
          this.#choose(event.detail.subjectId);
        }}
      ></scene-picture>
      <p class="key">
        <span><svg viewBox="0 0 10 10" aria-hidden="true"><path class="diamond" d="M5 0l5 5-5 5-5-5z" /></svg>Efficient: nothing found is cheaper without disturbing more</span>
        <span><svg viewBox="0 0 10 10" aria-hidden="true"><circle class="ring" cx="5" cy="5" r="4" /></svg>The others</span>
      </p>
      <p class="key">
        Disturbance: dust, noise, furniture moved, floors opened. About 10 points are a metre of chase in masonry; yours are
        in Firm, prices and norms.
      </p>`;
  }

  /** Marks may lie close together: the one nearest to the finger is meant. */
  readonly #touched = {
    capture: true,
    handleEvent: (event: MouseEvent): void => {
      event.stopPropagation();
      const picture = this.renderRoot.querySelector('scene-picture');
      const box = picture?.renderRoot.querySelector('svg')?.getBoundingClientRect();
      const things = picture?.scene.layers.find(({ name }) => name === 'points')?.shapes ?? [];
      if (box === undefined) return;
      const at = [(event.clientX - box.left) / PX_PER_UNIT, (event.clientY - box.top) / PX_PER_UNIT] as const;
      const near = things
        .flatMap((thing) => {
          if (thing.kind !== 'group') return [];
          const symbol = thing.shapes.at(-1);
          const [x, y] = symbol?.kind === 'circle' ? symbol.at : middleOf(symbol);
          return [{ id: thing.subject, away: Math.hypot(x - at[0], y - at[1]) }];
        })
        .sort((a, b) => a.away - b.away)[0];
      if (near !== undefined && near.away <= REACH) this.#choose(near.id);
    },
  };

  #choose(id: string | null): void {
    const scheme = this.candidates.find((one) => one.scheme.id === id)?.scheme ?? null;
    send(this, 'ways-asked', { do: 'try', scheme });
    if (scheme !== null)
      this.dispatchEvent(new CustomEvent('mark-chosen', { detail: { schemeId: scheme.id } }));
  }
}

/** The middle of a diamond. */
function middleOf(shape: unknown): readonly [number, number] {
  const { points = [] } = (shape ?? {}) as { readonly points?: readonly (readonly [number, number])[] };
  const [top, right] = points;
  return top === undefined || right === undefined ? [0, 0] : [top[0], right[1]];
}
customElements.define('found-chart', FoundChart);
declare global {
  interface HTMLElementTagNameMap {
    'found-chart': FoundChart;
  }
}
