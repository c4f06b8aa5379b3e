import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { HELD_FAST, lockMark } from '#drawing/lock-mark.ts';
import { ghostShapes, letteringRoom, movingLabel, placeDimensions } from '#drawing/plan/screen-placing.ts';
import type { Shape } from '#drawing/scene.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { type SheetFrame, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Place } from '#model/installation.ts';
import type { Extent } from './group-extent.ts';
import { ZOOM_STEP } from './plan-keys.ts';
import type { PlaceDrawing, PlanTool } from './plan-tool.ts';
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

/** How far a place on a wall is from its corners, with the label of the point that moves. */
function placeShapes(
  frame: SheetFrame,
  { plan, job }: Worked,
  place: Place,
  pointId: string | null,
): readonly Shape[] {
  const label = job.points.find(({ id }) => id === pointId)?.label;
  return [
    ...placeDimensions(frame, plan, place),
    ...(label === undefined ? [] : movingLabel(frame, plan, place, label)),
  ];
}

/** The dimensions of a place with the point's label, and the symbol itself where nothing stands there yet. */
export function placeDrawing(
  frame: SheetFrame,
  worked: Worked,
  place: Place | null,
  pointId: string | null,
): PlaceDrawing {
  if (place === null) return { template: nothing, written: [] };
  const shapes = placeShapes(frame, worked, place, pointId);
  const ghost = pointId === null ? ghostShapes(frame, worked.plan, place) : [];
  const template = svg`<g class="dimensions" aria-hidden="true">${shapes.map(shapeTemplate)}</g>
    <g class="ghost" aria-hidden="true">${ghost.map(shapeTemplate)}</g>`;
  return { template, written: letteringRoom(shapes) };
}

/** What the buttons of the plan do. */
interface PlanTools {
  readonly zoom: (factor: number) => void;
  readonly whole: () => void;
}

/** The buttons for nearer, further away and the whole plan. */
export const toolsTemplate = (tools: PlanTools): TemplateResult =>
  html`<div class="tools" role="group" aria-label="View of the plan">
    <button aria-label="Nearer" title="Nearer (+)" @click=${() => tools.zoom(ZOOM_STEP)}>
      <svg viewBox="0 0 20 20" aria-hidden="true"><path d="M10 4v12M4 10h12" /></svg>
    </button>
    <button aria-label="Further away" title="Further away (−)" @click=${() => tools.zoom(1 / ZOOM_STEP)}>
      <svg viewBox="0 0 20 20" aria-hidden="true"><path d="M4 10h12" /></svg>
    </button>
    <button aria-label="The whole plan" title="The whole plan (0)" @click=${() => tools.whole()}>
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
  /** What the hand does in place of choosing things; null for nothing. */
  readonly tool: Pick<PlanTool, 'hint'> | null;
  /** False for a storey of which no wall is drawn. */
  readonly hasWalls: boolean;
  /** Whether something in sight carries the mark of a lock. */
  readonly hasLocks: boolean;
}

/** What the mark of a lock means. */
const lockKey = (): TemplateResult =>
  html`<span class="key"><svg viewBox="-2.2 -2.1 4.4 4.4" aria-hidden="true">${lockMark(sheetPoint(0, 0)).map(shapeTemplate)}</svg>${HELD_FAST}</span>`;

/** The scale, and what can be done; while something moves, where it is. */
export function footTemplate(foot: PlanFoot): TemplateResult {
  const { scale, telling, tool } = foot;
  const hint = html`<span class=${tool === null ? 'hint' : 'hint asked'}>${tool?.hint ?? hintWords(foot)}</span>`;
  return html`<div class="foot">
    ${scaleBarTemplate(scale)} ${foot.hasLocks ? lockKey() : nothing}
    ${telling === null ? nothing : html`<span class="telling" aria-hidden="true">${telling}</span>`}
    ${telling === null || tool !== null ? hint : nothing}
  </div>`;
}

/** What can be done on a storey on which nothing is drawn. */
export const noticeTemplate = (): TemplateResult =>
  html`<p class="empty">
    This plan has no walls yet: draw its rooms under Rooms and walls in As found. You can place points here roughly without them,
    or list them without a place: cable between points without a place is priced at a typical length.
  </p>`;

/** What can be done on the plan at this moment, in a line. */
function hintWords({ movableLabels, hasWalls }: PlanFoot): string {
  const where = hasWalls ? 'along the walls' : 'to its place';
  const [first, second] = movableLabels;
  if (first === undefined)
    return hasWalls ? 'Tap a thing to see what is known of it.' : 'This plan has no walls.';
  if (second === undefined) return `Drag ${first} ${where}.`;
  const last = movableLabels.at(-1) ?? second;
  return movableLabels.length === 2
    ? `Drag ${first} and ${second} ${where}.`
    : `Drag ${first} to ${last} ${where}.`;
}
