/** A window looked at nearer than this is pinched, px a CSS px: what is out of sight then is no keyboard. */
const PINCHED = 1.05;

/** How much of the window's foot lies under the keyboard of a phone, px; nought where the window itself gets smaller. */
function coveredPx(): number {
  const { visualViewport: seen } = window;
  if (seen === null || seen.scale > PINCHED) return 0;
  return Math.max(0, Math.round(innerHeight - seen.height - seen.offsetTop));
}

/**
 * Tells the styles of an element how much of the window the keyboard covers, as `--keyboard`; gives back what ends that.
 * Browsers that heed `interactive-widget` in the page's head make the window smaller themselves; the others lay the
 * keyboard over it.
 */
export function watchKeyboard(element: HTMLElement): () => void {
  const root = element.shadowRoot;
  const { visualViewport: seen } = window;
  if (root === null || seen === null) return () => {};
  const sheet = new CSSStyleSheet();
  root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet];
  const tell = (): void => sheet.replaceSync(`:host { --keyboard: ${coveredPx()}px }`);
  seen.addEventListener('resize', tell);
  seen.addEventListener('scroll', tell);
  tell();
  return () => {
    seen.removeEventListener('resize', tell);
    seen.removeEventListener('scroll', tell);
    root.adoptedStyleSheets = root.adoptedStyleSheets.filter((one) => one !== sheet);
  };
}
