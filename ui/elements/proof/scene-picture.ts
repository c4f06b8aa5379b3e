import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type SVGTemplateResult,
  svg,
  type TemplateResult,
} from 'lit';
import type { Scene, Shape } from '#drawing/scene.ts';
import { send } from '../../job-events.ts';
import { inkStyles } from '../plan/ink-styles.ts';
import { PX_PER_UNIT } from '../plan/plan-window.ts';
import { shapeTemplate } from '../plan/shape-template.ts';
import { groupsInOrder, outlineOf, type PictureGroup } from './group-outline.ts';

const isLayerOfThings = (name: string): boolean => ['points', 'cables', 'readings', 'notes'].includes(name);

/**
 * A picture at its own size; its things can be touched, and come to by keyboard: Tab to the first, arrows to the next.
 *
 * @fires thing-chosen, things-lit
 */
export class ScenePicture extends LitElement {
  static override properties: PropertyDeclarations = {
    scene: { attribute: false },
    chosen: { attribute: false },
    lit: { attribute: false },
    follows: { type: Boolean },
    reached: { state: true },
  };
  static override styles = [
    inkStyles,
    css`
      :host {
        /* A stud wall's colour, which the drawings' inks name. */
        --wall-light: color-mix(in srgb, var(--wall) 30%, var(--sheet));
        display: block;
        overflow-x: auto;
      }
      svg {
        display: block;
        margin-inline: auto;
        font-family: var(--drawing-font);
        font-variant-numeric: tabular-nums;
      }
      text {
        stroke: var(--sheet);
        stroke-width: 0.7;
        stroke-linejoin: round;
        paint-order: stroke;
      }
      text.text-paper {
        stroke: none;
      }
      .thing {
        cursor: pointer;
      }
      .thing:focus {
        outline: none;
      }
      .hit {
        fill: transparent;
        stroke: transparent;
        pointer-events: all;
      }
      path.hit {
        stroke-width: 6;
      }
      .glow {
        display: none;
        fill: none;
        stroke: var(--copper);
        stroke-linejoin: round;
        stroke-width: 0.6;
        pointer-events: none;
      }
      path.glow {
        stroke-width: 2;
        stroke-opacity: 0.5;
      }
      :is(.lit, .chosen) .glow,
      .thing:focus-visible .glow {
        display: inline;
      }
      .chosen .glow {
        stroke-width: 0.9;
      }
      .chosen path.glow {
        stroke-width: 2;
        stroke-opacity: 1;
      }
      .thing:focus-visible .glow {
        stroke-dasharray: 1.4 0.9;
        stroke-opacity: 1;
      }
      @media print {
        /* Paper does not scroll. */
        svg {
          max-width: 100%;
          height: auto;
        }
        :host([one-page]) svg {
          width: auto;
          max-height: 185mm;
        }
      }
      .chosen text {
        font-weight: 600;
        paint-order: stroke;
        stroke: var(--sheet);
        stroke-width: 0.9;
        stroke-linejoin: round;
      }
    `,
  ];
  declare scene: Scene;
  /** The subject that is looked at; null for none. */
  declare chosen: string | null;
  declare lit: ReadonlySet<string>;
  /** True where what is chosen is brought into view. */
  declare follows: boolean;
  /** Which of the things Tab comes to, in their order. */
  declare private reached: number;

  constructor() {
    super();
    this.chosen = null;
    this.lit = new Set();
    this.follows = false;
    this.reached = 0;
  }

  override updated(changed: PropertyValues): void {
    if (!this.follows || !changed.has('chosen') || this.chosen === null) return;
    const thing = this.renderRoot.querySelector('.thing.chosen');
    thing?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  get #groups(): readonly PictureGroup[] {
    return groupsInOrder(this.scene);
  }

  #choose(subject: string): void {
    if (this.lit.size > 0) send(this, 'things-lit', { subjectIds: [] });
    send(this, 'thing-chosen', { subjectId: subject === this.chosen ? null : subject });
  }

  #reach(place: number): void {
    const count = this.#groups.length;
    this.reached = (place + count) % count;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<SVGElement>(`[data-place="${this.reached}"]`)?.focus(),
    );
  }

  #keyed(event: KeyboardEvent, group: PictureGroup, place: number): void {
    const { key } = event;
    if (key === 'Enter' || key === ' ') this.#choose(group.subject);
    else if (key === 'ArrowRight' || key === 'ArrowDown') this.#reach(place + 1);
    else if (key === 'ArrowLeft' || key === 'ArrowUp') this.#reach(place - 1);
    else return;
    event.preventDefault();
  }

  override render(): TemplateResult {
    const { widthMm, heightMm, title, layers } = this.scene;
    const groups = this.#groups;
    const reached = Math.min(this.reached, groups.length - 1);
    return html`<svg
      width=${widthMm * PX_PER_UNIT}
      height=${heightMm * PX_PER_UNIT}
      viewBox=${`0 0 ${widthMm} ${heightMm}`}
      role="group"
      aria-label=${title}
    >
      ${layers.map(({ name, shapes }) =>
        isLayerOfThings(name)
          ? svg`<g class=${name}>${shapes.map((shape) => this.#shape(name, shape, groups, reached))}</g>`
          : svg`<g aria-hidden="true">${shapes.map(shapeTemplate)}</g>`,
      )}
    </svg>`;
  }

  #shape(layer: string, shape: Shape, groups: readonly PictureGroup[], reached: number): SVGTemplateResult {
    if (shape.kind !== 'group') return shapeTemplate(shape);
    const place = groups.indexOf(shape);
    const isChosen = shape.subject === this.chosen;
    const classes = `thing${isChosen ? ' chosen' : ''}${this.lit.has(shape.subject) ? ' lit' : ''}`;
    return svg`<g class=${classes} role="button" data-subject=${shape.subject} data-place=${place}
      tabindex=${place === reached ? 0 : -1} aria-label=${shape.title} aria-pressed=${isChosen}
      @click=${() => this.#choose(shape.subject)}
      @focus=${() => {
        this.reached = place;
      }}
      @keydown=${(event: KeyboardEvent) => this.#keyed(event, shape, place)}>
      ${outlineTemplate(layer, shape)}
    </g>`;
  }
}

/** A thing with the line that lights up round it, and room for a finger. */
function outlineTemplate(layer: string, group: PictureGroup): SVGTemplateResult {
  const outline = outlineOf(layer, group);
  // A space after each: lines of lettering are words of their own for who hears them.
  const shapes = group.shapes.map((shape) => svg`${shapeTemplate(shape)} `);
  if (outline.kind === 'paths')
    return svg`${outline.paths.map((d) => svg`<path class="glow" d=${d}/>`)}${shapes}
      ${outline.paths.map((d) => svg`<path class="hit" d=${d}/>`)}`;
  const { ring, hit } = outline;
  const box = (name: string, { x, y, width, height }: typeof ring): SVGTemplateResult | typeof nothing =>
    width > 0 && height > 0
      ? svg`<rect class=${name} rx="0.8" x=${x} y=${y} width=${width} height=${height}/>`
      : nothing;
  // What is written beside a symbol is read over the line round it.
  return svg`${box('hit', hit)}${box('glow', ring)}${shapes}`;
}
customElements.define('scene-picture', ScenePicture);
declare global {
  interface HTMLElementTagNameMap {
    'scene-picture': ScenePicture;
  }
}
