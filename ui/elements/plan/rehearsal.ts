import { render } from 'lit';
import type { SheetFrame } from '#engine/plan/sheet-frame.ts';
import { keyOfPart } from '../../house/house-parts.ts';
import type { ToolPlace } from './plan-tool.ts';
import { type ReshapeTells, ReshapeTool } from './reshape-tool.ts';

/** So often a movement is gone through: what runs seldom a browser only interprets, and the first movement of a hand would wait for it. */
const TIMES = 16;
/** Where a browser does not tell when it is idle, ms. */
const PAUSE_MS = 50;
const STEP_MM = 40;

const nothingTold = (): void => {};
const toNobody: ReshapeTells = {
  picked: nothingTold,
  marked: nothingTold,
  reshaped: nothingTold,
  moved: nothingTold,
  gaveUp: nothingTold,
};

function whenIdle(run: () => void): () => void {
  if (typeof requestIdleCallback === 'function') {
    const idle = requestIdleCallback(run);
    return () => cancelIdleCallback(idle);
  }
  const timer = setTimeout(run, PAUSE_MS);
  return () => clearTimeout(timer);
}

/**
 * Does a thing some times, each when the page is idle; for good no more once a hand is at work, which takes the page's time for itself.
 *
 * @returns what leaves off.
 */
export function rehearse(movement: (time: number) => void, isHandAtWork: () => boolean): () => void {
  let [time, stop] = [0, (): void => {}];
  const next = (): void => {
    if (isHandAtWork()) return;
    movement(time);
    time += 1;
    if (time < TIMES) stop = whenIdle(next);
  };
  stop = whenIdle(next);
  return () => stop();
}

/** Moves one wall after another for nothing, with a tool that tells nobody, and draws it where nobody looks. */
export function wallRehearsal(
  place: () => ToolPlace,
  frame: () => SheetFrame | null,
): (time: number) => void {
  const unseen = document.createElementNS('http://www.w3.org/2000/svg', 'g');
  return (time) => {
    const { worked, storeyId } = place();
    const [walls, sheet] = [worked.plan.storeyById.get(storeyId)?.storey.walls ?? [], frame()];
    const wall = walls[time % Math.max(walls.length, 1)];
    if (wall === undefined || sheet === null) return;
    const key = keyOfPart({ part: 'wall', wallId: wall.id });
    const asked = { part: key, said: '', lengths: [], behind: null };
    const tool = new ReshapeTool(place, () => asked, toNobody);
    tool.grips.dragged(key, [0, 0], 'begin');
    tool.grips.dragged(key, [STEP_MM, STEP_MM], 'move');
    render(tool.drawing(sheet).template, unseen);
  };
}
