/** As narrow as a phone, or as low as a phone on its side or a desk's window that is looked at twice as large. */
const smallWindow = '(max-width: 43.75em), (max-height: 37.5em)';

/** Whether the window is small, and a call at each change of that; gives back what ends the calls. */
export function watchSmallWindow(changed: (isSmall: boolean) => void): () => void {
  const query = matchMedia(smallWindow);
  // A sheet of paper is no window: what is shown stays as it is while it is printed.
  const tell = (): void => {
    if (!matchMedia('print').matches) changed(query.matches);
  };
  query.addEventListener('change', tell);
  tell();
  return () => query.removeEventListener('change', tell);
}
