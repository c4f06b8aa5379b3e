/** Whether the window is as narrow as a phone, and a call at each change of that; gives back what ends the calls. */
export function watchPhoneWidth(changed: (phone: boolean) => void): () => void {
  const query = matchMedia('(max-width: 700px)');
  const tell = (): void => changed(query.matches);
  query.addEventListener('change', tell);
  tell();
  return () => query.removeEventListener('change', tell);
}
