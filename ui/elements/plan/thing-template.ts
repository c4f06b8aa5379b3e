import { nothing, type SVGTemplateResult, svg } from 'lit';
import type { Shape } from '#drawing/scene.ts';
import { cableLines, grown, symbolExtent } from './group-extent.ts';
import { linePath, shapeTemplate } from './shape-template.ts';

/** A thing of the plan. */
export type Group = Extract<Shape, { kind: 'group' }>;

/** How a thing stands on the plan at this moment. */
export interface ThingState {
  readonly chosen: boolean;
  readonly lit: boolean;
  readonly movable: boolean;
  readonly moving: boolean;
  /** It is drawn faintly, since the hand's own picture has it where it would be. */
  readonly aside: boolean;
  /** The one thing that the keyboard comes to. */
  readonly reached: boolean;
}

/** Least size of what a finger must hit, in units of the scene: 44 px. */
export const FINGER = 8.8;

const named = (name: string, is: boolean): string => (is ? ` ${name}` : '');

/** A thing of the plan: its shapes, a ring or a glow for when it is lit, and room for a finger. */
export function thingTemplate(group: Group, state: ThingState): SVGTemplateResult {
  const lines = cableLines(group.shapes);
  const classes = `thing${named('chosen', state.chosen)}${named('lit', state.lit)}${named('movable', state.movable)}${named('moving', state.moving)}${named('aside', state.aside)}`;
  return svg`<g class=${classes} data-subject=${group.subject} role="button"
      tabindex=${state.reached ? 0 : -1} aria-label=${group.title} aria-pressed=${state.chosen}>
      ${lines.map((points) => svg`<path class="glow" d=${linePath(points, false)}/>`)}
      ${group.shapes.map(shapeTemplate)}
      ${lines.map((points) => svg`<path class="hit" d=${linePath(points, false)}/>`)}
      ${lines.length > 0 ? nothing : symbolRoom(group)}
    </g>`;
}

function symbolRoom(group: Group): SVGTemplateResult | typeof nothing {
  const extent = symbolExtent(group.shapes);
  if (extent === null) return nothing;
  const ring = grown(extent, 0.9, 4);
  const hit = grown(extent, 0.5, FINGER);
  return svg`<rect class="ring" rx="0.8" x=${ring.x} y=${ring.y} width=${ring.width} height=${ring.height}/>
    <rect class="hit" stroke="none" x=${hit.x} y=${hit.y} width=${hit.width} height=${hit.height}/>`;
}

/**
 * A finding's mark or a lock's: told in the list of checks, or in the name of its thing, so that here it is a picture only; a tap
 * goes to its thing.
 */
export const markTemplate = (group: Group): SVGTemplateResult =>
  svg`<g data-subject=${group.subject} aria-hidden="true"><title>${group.title}</title>${group.shapes.map(shapeTemplate)}</g>`;

/** A wall: nothing is known of it that could be told by a tap, but it can be lit. */
export const wallTemplate = (
  group: Group,
  { lit, aside }: Pick<ThingState, 'lit' | 'aside'>,
): SVGTemplateResult =>
  svg`<g class=${`wall-group${named('lit', lit)}${named('aside', aside)}`} data-wall=${group.subject}>${group.shapes.map(shapeTemplate)}</g>`;

/** Brings the focus to a thing that is drawn; nothing where it is not. */
export function focusThing(root: ParentNode, subject: string): void {
  const things = [...root.querySelectorAll<SVGElement>('.thing')];
  things.find(({ dataset }) => dataset.subject === subject)?.focus({ preventScroll: true });
}
