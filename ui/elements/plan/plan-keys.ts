import type { PlanTool } from './plan-tool.ts';

/** What keys do on the plan. */
export interface PlanKeys {
  readonly zoom: (factor: number) => void;
  readonly whole: () => void;
  readonly choose: (subject: string) => void;
  /** Goes on to the next thing, or back. */
  readonly reach: (subject: string, by: 1 | -1) => void;
  /** Moves the thing, where it may be moved and the key moves it; false where not. */
  readonly move: (subject: string, key: string, isFine: boolean) => boolean;
}

/** How much nearer one press brings. */
export const ZOOM_STEP = 1.35;

/** Whether a key presses what it is on. */
export const isPress = (key: string): boolean => key === 'Enter' || key === ' ';

/** Keys that do the same wherever they are pressed on the plan. */
function everywhere(key: string, does: PlanKeys): boolean {
  if (key === '+' || key === '=') does.zoom(ZOOM_STEP);
  else if (key === '-') does.zoom(1 / ZOOM_STEP);
  else if (key === '0') does.whole();
  else return false;
  return true;
}

/** Keys on a thing: what moves it comes before what goes on to the next one. */
function onThing({ key, shiftKey }: KeyboardEvent, subject: string, does: PlanKeys): boolean {
  if (isPress(key)) does.choose(subject);
  else if (does.move(subject, key, shiftKey)) return true;
  else if (key === 'PageDown' || key === 'ArrowRight' || key === 'ArrowDown') does.reach(subject, 1);
  else if (key === 'PageUp' || key === 'ArrowLeft' || key === 'ArrowUp') does.reach(subject, -1);
  else return false;
  return true;
}

/**
 * Does what a key means on the plan.
 *
 * @param subject the thing that has the focus; null for the plan itself.
 * @param tool what the hand does in place of choosing things; null for nothing.
 * @returns false for a key that means nothing here.
 */
export function actOnKey(
  event: KeyboardEvent,
  subject: string | null,
  tool: Pick<PlanTool, 'keyed' | 'giveUp' | 'onThings'> | null,
  does: PlanKeys,
): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  if (everywhere(event.key, does)) return true;
  if (tool !== null && event.key === 'Escape') {
    tool.giveUp();
    return true;
  }
  if (tool?.keyed(event.key, event.shiftKey)) return true;
  if (tool !== null && !tool.onThings) return false;
  // From the plan itself the keys come to its first thing.
  if (subject === null) return tool !== null && !isPress(event.key) && onThing(event, '', does);
  return onThing(event, subject, does);
}
