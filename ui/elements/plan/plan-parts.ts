import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { ghostShapes, placeDimensions } from '#drawing/plan/screen-placing.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { SheetFrame } from '#engine/plan/sheet-frame.ts';
import type { Place } from '#model/installation.ts';
import type { Extent } from './group-extent.ts';
import { scaleBarTemplate } from './scale-bar.ts';
import { shapeTemplate } from './shape-template.ts';

/** Spacings of the grid, mm in the house; the first that is not too dense is drawn. */
const spacingsMm = [500, 1000, 5000, 10_000];
const DENSEST = 4;

/** A faint grid over all that is in sight, its lines where the house's coordinates are round. */
export function gridTemplate({ scale, origin, at }: SheetFrame, sight: Extent): SVGTemplateResult {
  const spacing = spacingsMm.find((mm) => mm / scale >= DENSEST) ?? 10_000;
  const step = spacing / scale;
  const x = at[0] - origin[0] / scale;
  const y = at[1] + origin[1] / scale;
  return svg`<defs><pattern id="grid" patternUnits="userSpaceOnUse" x=${x} y=${y} width=${step} height=${step}>
      <path class="grid-line" d=${`M${step} 0H0V${step}`}/></pattern></defs>
    <rect class="ground" x=${sight.x} y=${sight.y} width=${sight.width} height=${sight.height} fill="url(#grid)"/>`;
}

/** How far a place on a wall is from its corners, drawn; and the symbol itself where nothing stands there yet. */
export function placeTemplate(
  frame: SheetFrame,
  plan: Plan,
  place: Place | null,
  isGhost: boolean,
): SVGTemplateResult | typeof nothing {
  if (place === null) return nothing;
  return svg`<g class="dimensions" aria-hidden="true">${placeDimensions(frame, plan, place).map(shapeTemplate)}</g>
    ${isGhost ? svg`<g class="ghost" aria-hidden="true">${ghostShapes(frame, plan, place).map(shapeTemplate)}</g>` : nothing}`;
}

/** What the buttons of the plan do. */
export interface PlanTools {
  readonly nearer: () => void;
  readonly further: () => void;
  readonly whole: () => void;
}

/** The buttons for nearer, further away and the whole plan. */
export const toolsTemplate = ({ nearer, further, whole }: PlanTools): TemplateResult =>
  html`<div class="tools" role="group" aria-label="View of the plan">
    <button aria-label="Nearer" title="Nearer (+)" @click=${nearer}>
      <svg viewBox="0 0 20 20" aria-hidden="true"><path d="M10 4v12M4 10h12" /></svg>
    </button>
    <button aria-label="Further away" title="Further away (−)" @click=${further}>
      <svg viewBox="0 0 20 20" aria-hidden="true"><path d="M4 10h12" /></svg>
    </button>
    <button aria-label="The whole plan" title="The whole plan (0)" @click=${whole}>
      <svg viewBox="0 0 20 20" aria-hidden="true">
        <path d="M3 8V3h5M12 3h5v5M17 12v5h-5M8 17H3v-5" />
      </svg>
    </button>
  </div>`;

/** What stands at the foot of the plan. */
export interface PlanFoot {
  readonly scale: number;
  /** Where something that moves is at this moment; null for nothing. */
  readonly telling: string | null;
  /** The labels of what can be moved. */
  readonly movableLabels: readonly string[];
  readonly placing: boolean;
}

/** The scale, and what can be done; while something moves, where it is. */
export function footTemplate({ scale, telling, movableLabels, placing }: PlanFoot): TemplateResult {
  const hint = html`<span class=${placing ? 'hint asked' : 'hint'}>${hintWords(movableLabels, placing)}</span>`;
  return html`<div class="foot">
    ${scaleBarTemplate(scale)}
    ${telling === null ? nothing : html`<span class="telling" aria-hidden="true">${telling}</span>`}
    ${telling === null || placing ? hint : nothing}
  </div>`;
}

/** What a storey without walls can do all the same. */
export const emptyTemplate = (): TemplateResult =>
  html`<p class="empty">
    No walls drawn yet. Points can be listed all the same, and are priced by typical lengths.
  </p>`;

/** What can be done on the plan at this moment, in a line. */
function hintWords(movableLabels: readonly string[], placing: boolean): string {
  if (placing) return 'Tap the wall where it is to go. Escape gives up.';
  const [first, second] = movableLabels;
  if (first === undefined) return 'Tap a thing to see what is known of it.';
  if (second === undefined) return `Drag ${first} along the walls.`;
  const last = movableLabels.at(-1) ?? second;
  return movableLabels.length === 2
    ? `Drag ${first} and ${second} along the walls.`
    : `Drag ${first} to ${last} along the walls.`;
}
