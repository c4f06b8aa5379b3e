import type { LitElement } from 'lit';

/** How far above its top the heading of a fold stands that is too tall for its pane, px. */
const ABOVE_PX = 8;

/** The fold whose heading was pressed, and the pane that it scrolls in; null for any other press. */
function pressedFold(path: readonly EventTarget[]): { fold: HTMLDetailsElement; pane: Element } | null {
  const at = path.findIndex((one) => one instanceof HTMLElement && one.localName === 'summary');
  const fold = path[at + 1];
  if (at < 0 || !(fold instanceof HTMLDetailsElement)) return null;
  const pane = path
    .slice(at)
    .find((one) => one instanceof HTMLElement && /auto|scroll/.test(getComputedStyle(one).overflowY));
  return pane instanceof Element ? { fold, pane } : null;
}

/** How far a pane has to scroll so that what was opened in it is in sight, its heading in any case; 0 where it is. */
export function scrollToFold(
  fold: Pick<DOMRect, 'top' | 'bottom'>,
  pane: Pick<DOMRect, 'top' | 'bottom'>,
): number {
  const below = fold.bottom - pane.bottom;
  return below <= 0 ? 0 : Math.max(0, Math.min(below, fold.top - pane.top - ABOVE_PX));
}

/** A fold that is opened near the foot of its pane comes into sight: what it holds would stand under the edge otherwise. */
export function showOpenedFolds(host: LitElement): void {
  host.addEventListener('click', (event) => {
    const pressed = pressedFold(event.composedPath());
    if (pressed === null || pressed.fold.open) return;
    const { fold, pane } = pressed;
    // Opened after the press, and filled by an element that draws itself once more.
    requestAnimationFrame(() =>
      requestAnimationFrame(() => {
        const px = fold.open ? scrollToFold(fold.getBoundingClientRect(), pane.getBoundingClientRect()) : 0;
        if (px > 0) pane.scrollBy({ top: px });
      }),
    );
  });
}
