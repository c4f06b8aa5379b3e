/** Hands a text to the browser as a file of this name, to be kept where its user likes. */
export const fetchAsFile = (
  name: string,
  text: string,
  type: 'application/json' | 'text/csv' | 'text/plain',
): void => handOut(name, new Blob([text], { type }));

/** As `fetchAsFile`, of bytes. */
export function handOut(name: string, file: Blob): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has begun to read it by then; held on to, it would stay in memory for as long as the page.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
