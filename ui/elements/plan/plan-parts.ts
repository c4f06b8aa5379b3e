import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { HELD_FAST, lockMark } from '#drawing/lock-mark.ts';
import { joistShapes } from '#drawing/plan/joists.ts';
import { SMALL } from '#drawing/plan/screen-names.ts';
import { ghostShapes, letteringRoom, movingLabel, placeDimensions } from '#drawing/plan/screen-placing.ts';
import type { SymbolName, SymbolState } from '#drawing/symbols.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { type SheetFrame, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Storey } from '#model/building.ts';
import type { Place } from '#model/installation.ts';
import type { MovedParts } from '../../house/moved-parts.ts';
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

/** The joists of a storey's floors, faint, below all else. */
export const joistsTemplate = (frame: SheetFrame, { plan }: Worked, storeyId: string): SVGTemplateResult =>
  svg`<g class="joists" aria-hidden="true">${joistShapes(frame, plan, storeyId).map(shapeTemplate)}</g>`;

/** Lettering of lengths and sizes of rooms, units of the scene: 16 px where they are read at arm's length, else 12.5 px. */
export const figuresMm = (isLarge: boolean): number => (isLarge ? 3.2 : SMALL);

/** A thing as the hand holds it. */
export interface HeldThing {
  /** Null for what has none yet. */
  readonly label: string | null;
  readonly symbol: SymbolName;
  readonly state: SymbolState;
  /** Lettering of lengths, units of the scene. */
  readonly figuresMm: number;
}

/** A point of the job as the hand holds it; null where there is none of this id. */
export function heldPoint({ job }: Worked, pointId: string, figuresMm: number): HeldThing | null {
  const point = job.points.find(({ id }) => id === pointId);
  if (point === undefined) return null;
  const state = point.status === 'wanted' ? 'new' : 'found';
  return { label: point.label, symbol: point.kind, state, figuresMm };
}

/** A thing's symbol at a place, how far that is from the corners, and its label. */
export function placeDrawing(
  frame: SheetFrame,
  { plan }: Worked,
  place: Place,
  held: HeldThing,
): PlaceDrawing {
  const { label, figuresMm } = held;
  const shapes = [
    ...placeDimensions(frame, plan, place, figuresMm),
    ...(label === null ? [] : movingLabel(frame, plan, place, label)),
  ];
  const ghost = ghostShapes(frame, plan, place, held);
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

/** The scale, and what can be done; while something moves, where it is. It has a row of its own, of one line. */
export function footTemplate(foot: PlanFoot): TemplateResult {
  const { scale, telling, tool } = foot;
  const hint = html`<span class=${tool === null ? 'hint' : 'hint asked'}>${tool?.hint ?? hintWords(foot)}</span>`;
  return html`<div class="foot">
    ${scaleBarTemplate(scale)} ${foot.hasLocks ? lockKey() : nothing}
    ${telling === null ? nothing : html`<span class="telling" aria-hidden="true">${telling}</span>`}
    ${telling === null || tool !== null ? hint : nothing}
  </div>`;
}

/** What can be done on a storey on which nothing is drawn; a picture that is traced lies there to be seen. */
export const noticeTemplate = (storey: Storey | undefined): TemplateResult | typeof nothing =>
  storey?.underlay !== undefined
    ? nothing
    : html`<p class="empty">
    No walls are drawn on this plan: draw its rooms under Rooms and walls in As found. You can place points here roughly without them,
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

/** The words of the plan's class while something of the house is held: whether fixtures are drawn elsewhere too. */
export const reshapingState = (aside: MovedParts | null): string =>
  aside === null ? '' : aside.fixtures ? ' reshaping fixtures-moved' : ' reshaping';
