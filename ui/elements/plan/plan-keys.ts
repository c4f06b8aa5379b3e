/** What keys do on the plan. */
export interface PlanKeys {
  readonly zoom: (factor: number) => void;
  readonly whole: () => void;
  readonly choose: (subject: string) => void;
  /** Goes on to the next thing, or back. */
  readonly reach: (subject: string, by: 1 | -1) => void;
  /** Moves the thing, where it may be moved and the key moves it; false where not. */
  readonly move: (subject: string, key: string, isFine: boolean) => boolean;
  /** Moves the place that is waited for; false where the key does not. */
  readonly movePlace: (key: string, isFine: boolean) => boolean;
  readonly takePlace: () => void;
  readonly giveUpPlace: () => void;
}

/** How much nearer one press brings. */
export const ZOOM_STEP = 1.35;

const isPress = (key: string): boolean => key === 'Enter' || key === ' ';

/** Keys that do the same wherever they are pressed on the plan. */
function everywhere(key: string, placing: boolean, does: PlanKeys): boolean {
  if (key === '+' || key === '=') does.zoom(ZOOM_STEP);
  else if (key === '-') does.zoom(1 / ZOOM_STEP);
  else if (key === '0') does.whole();
  else if (placing && key === 'Escape') does.giveUpPlace();
  else if (placing && isPress(key)) does.takePlace();
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
 * @returns false for a key that means nothing here.
 */
export function actOnKey(
  event: KeyboardEvent,
  subject: string | null,
  placing: boolean,
  does: PlanKeys,
): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  if (everywhere(event.key, placing, does)) return true;
  if (placing) return does.movePlace(event.key, event.shiftKey);
  return subject !== null && onThing(event, subject, does);
}
