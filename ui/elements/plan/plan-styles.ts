import { css } from 'lit';

/** How the plan's window, its things, their light and its buttons look. */
export const planCss = css`
  :host {
    position: relative;
    display: block;
    overflow: hidden;
    background: var(--sheet);
    contain: strict;
  }
  svg.plan {
    display: block;
    width: 100%;
    height: 100%;
    font-family: var(--drawing-font);
    cursor: grab;
    touch-action: none;
    user-select: none;
  }
  svg.plan.panning {
    cursor: grabbing;
  }
  svg.plan.placing {
    cursor: crosshair;
  }
  .grid .rule {
    stroke: var(--grid);
  }
  g[data-subject] {
    cursor: pointer;
  }
  g.movable {
    cursor: move;
  }
  g:focus {
    outline: none;
  }
  g:focus-visible .ring {
    display: inline;
    stroke-dasharray: 1.4 0.8;
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
  .ring {
    display: none;
    fill: none;
    stroke: var(--copper);
    stroke-width: 0.55;
  }
  .lit .ring,
  .chosen .ring {
    display: inline;
  }
  .glow {
    display: none;
    fill: none;
    stroke: var(--copper);
    stroke-width: 2.4;
    stroke-opacity: 0.45;
    stroke-linecap: round;
    stroke-linejoin: round;
  }
  .lit .glow,
  .chosen .glow,
  g:focus-visible .glow {
    display: inline;
  }
  .ghost {
    fill: var(--copper-wash);
    stroke: var(--copper);
    stroke-width: 0.5;
    pointer-events: none;
  }
  .tools {
    position: absolute;
    right: 12px;
    bottom: 12px;
    display: grid;
    gap: 4px;
  }
  .tools button {
    width: 40px;
    min-height: 40px;
    padding: 0;
    font-size: 20px;
  }
  .tools svg {
    width: 20px;
    height: 20px;
    fill: none;
    stroke: currentcolor;
    stroke-width: 1.8;
  }
  .telling,
  .hint,
  .empty {
    position: absolute;
    left: 12px;
    max-width: calc(100% - 76px);
    margin: 0;
    padding: 3px 8px;
    font-size: 13px;
    background: var(--sheet);
    border-radius: var(--corner);
    pointer-events: none;
  }
  .hint {
    bottom: 12px;
  }
  .telling {
    top: 58px;
    font-weight: 500;
    color: var(--copper-ink);
    border: 1px solid var(--copper);
  }
  .empty {
    top: 64px;
    padding: 10px 12px;
    font-size: 14px;
    border: 1px solid var(--line);
  }
  @media (max-width: 700px) {
    .tools button {
      width: 44px;
      min-height: 44px;
    }
    .hint {
      display: none;
    }
  }
`;
