import { css } from 'lit';

/** How the plan's window, its things, their light and its buttons look. */
export const planCss = css`
  :host {
    /* A stud wall: between the sheet and a solid wall, by day and by night. */
    --wall-light: color-mix(in srgb, var(--wall) 30%, var(--sheet));
    display: grid;
    grid-template: minmax(0, 1fr) auto / minmax(0, 1fr);
    overflow: hidden;
    background: var(--sheet);
    contain: strict;
  }
  .window {
    position: relative;
    min-height: 0;
    overflow: hidden;
    contain: strict;
  }
  svg.plan,
  svg.hand {
    display: block;
    width: 100%;
    height: 100%;
    font-family: var(--drawing-font);
  }
  /* What the hand is at lies in a picture of its own, so that the house is not painted anew at every move. */
  svg.hand {
    position: absolute;
    inset: 0;
    contain: strict;
    pointer-events: none;
  }
  svg.hand.busy {
    will-change: transform;
  }
  svg.plan {
    position: relative;
    z-index: 0;
    cursor: grab;
    touch-action: none;
    user-select: none;
    -webkit-user-select: none;
    -webkit-touch-callout: none;
  }
  svg.plan:focus-visible {
    outline: 3px solid var(--copper);
    outline-offset: -3px;
  }
  svg.plan:focus:not(:focus-visible) {
    outline: none;
  }
  svg.plan.panning {
    cursor: grabbing;
  }
  svg.plan.placing,
  svg.plan.placing .thing {
    cursor: crosshair;
  }
  .grid-line {
    fill: none;
    stroke: var(--grid);
    stroke-width: 0.2;
  }
  /* Joists are in sight only while somebody tells of a floor, so they need not be as faint as a fixture. */
  .joists path {
    stroke: var(--copper);
    stroke-opacity: 0.5;
    pointer-events: none;
  }
  /* Lettering stands on a strip of sheet in its own outline, not on a box. */
  path.halo {
    display: none;
  }
  svg.plan text,
  svg.hand text {
    stroke: var(--sheet);
    stroke-width: 0.9;
    stroke-linejoin: round;
    paint-order: stroke;
    pointer-events: none;
  }
  svg.plan .findings text {
    stroke: none;
  }
  .thing,
  .findings g,
  .locks g {
    cursor: pointer;
  }
  .movable {
    cursor: move;
  }
  .thing:focus {
    outline: none;
  }
  .hit {
    fill: transparent;
    stroke: transparent;
    stroke-width: 5;
    pointer-events: all;
  }
  path.hit {
    fill: none;
    pointer-events: stroke;
  }
  .ring,
  .glow {
    display: none;
    fill: none;
    stroke: var(--copper);
    stroke-linecap: round;
    stroke-linejoin: round;
  }
  .ring {
    stroke-width: 0.5;
  }
  .glow {
    stroke-width: 2.4;
    stroke-opacity: 0.4;
  }
  .lit :is(.ring, .glow),
  .chosen :is(.ring, .glow),
  .thing:focus-visible :is(.ring, .glow) {
    display: inline;
  }
  .chosen .ring {
    stroke-width: 0.8;
  }
  .thing:focus-visible .ring {
    stroke-width: 0.8;
    stroke-dasharray: 1.4 0.9;
  }
  .thing:focus-visible .glow {
    stroke-dasharray: 0.1 3.2;
    stroke-opacity: 0.9;
  }
  :is(.lit, .chosen) :is(.found, .found-assumed, .removed) {
    stroke-width: 0.6;
  }
  :is(.lit, .chosen) .new {
    stroke-width: 1;
  }
  .wall-group.lit :is(.wall, .wall-light) {
    stroke: var(--copper);
    stroke-width: 0.8;
  }
  /* What the hand holds is drawn in the hand's own picture, at once. */
  svg.plan .moving text {
    display: none;
  }
  svg.plan .moving {
    opacity: 0;
  }
  /* What has moved stays faintly in sight as it was while a wall or a corner is held; names and cables would be in the way. */
  svg.plan :is(.walls, .points) .aside,
  svg.plan.fixtures-moved .fixtures {
    opacity: 0.18;
  }
  svg.plan.reshaping :is(.rooms, .cables, .findings, .leaders, .locks) {
    display: none;
  }
  .house-parts :is(.handle, .handle-chosen) {
    fill: var(--sheet);
    stroke: var(--copper);
    stroke-width: 0.45;
  }
  .house-parts .handle-chosen {
    fill: var(--copper);
    stroke: var(--sheet);
    stroke-width: 0.3;
  }
  .house-parts .in-hand {
    fill: none;
    stroke: var(--copper);
    stroke-width: 1.1;
    stroke-linecap: round;
  }
  .house-parts .under {
    fill: none;
    stroke: var(--copper);
    stroke-width: 0.7;
    stroke-opacity: 0.5;
  }
  .house-parts .guide {
    fill: none;
    stroke: var(--copper);
    stroke-width: 0.25;
    stroke-dasharray: 1.4 1;
  }
  .house-parts.refused :is(.wall, .wall-light) {
    fill: var(--fail);
    fill-opacity: 0.35;
  }
  svg.hand .in-order text {
    stroke: none;
  }
  .dimensions text {
    fill: var(--copper-ink);
  }
  .dimensions .scale-bar {
    stroke: var(--copper-ink);
    stroke-width: 0.22;
  }
  .tools {
    position: absolute;
    right: 12px;
    bottom: 12px;
    display: grid;
    grid-template-columns: repeat(var(--plan-tools-columns, 1), auto);
    gap: 4px;
    justify-items: end;
  }
  .tools button {
    width: 40px;
    min-height: 40px;
    padding: 0;
  }
  .tools svg {
    width: 20px;
    height: 20px;
    fill: none;
    stroke: currentcolor;
    stroke-width: 1.8;
  }
  /* A row of its own, of one line: nothing that is told covers what is drawn, and nothing shifts for it. */
  .foot {
    display: flex;
    gap: 18px;
    align-items: center;
    height: 28px;
    padding: 0 14px;
    overflow: hidden;
    font-size: 0.875rem;
    color: var(--ink-soft);
    white-space: nowrap;
    border-top: 1px solid var(--rule);
  }
  .foot > :is(.hint, .telling) {
    flex: 0 1 auto;
    min-width: 0;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  /* Where a thing is comes before what can be done. */
  .foot > .hint {
    flex-shrink: 100;
  }
  .scale {
    display: inline-flex;
    gap: 6px;
    align-items: center;
    font-family: var(--drawing-font);
    white-space: nowrap;
  }
  .scale svg {
    fill: none;
    stroke: var(--ink-soft);
    stroke-width: 1.2;
  }
  .key {
    display: inline-flex;
    gap: 4px;
    align-items: center;
  }
  .key svg {
    width: 20px;
    height: 20px;
  }
  .telling {
    font-weight: 500;
    color: var(--copper-ink);
  }
  .empty {
    position: absolute;
    top: 12px;
    left: 14px;
    /* The buttons' column stays free. */
    max-width: min(24rem, calc(100% - 82px));
    margin: 0;
    padding: 10px 12px;
    font-size: 0.875rem;
    background: var(--sheet);
    border: 1px solid var(--line);
    border-radius: var(--corner);
    pointer-events: none;
  }
  /* A phone has no Escape; the button that asked for a place says how to give up. */
  @media (pointer: coarse) {
    .by-key {
      display: none;
    }
  }
  @media (max-width: 43.75em), (max-height: 37.5em) {
    /* Where there is little room, nothing stands about the place that is being chosen. */
    svg.plan.busy :is(.rooms, .findings, .leaders),
    svg.plan.busy .fixtures text {
      display: none;
    }
    .tools button {
      width: 44px;
      min-height: 44px;
    }
    .foot {
      gap: 12px;
      padding: 0 10px;
    }
    .hint:not(.asked) {
      display: none;
    }
  }
  @media print {
    .tools,
    .hint {
      display: none;
    }
  }
`;
