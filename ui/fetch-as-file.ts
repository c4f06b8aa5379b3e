/** Hands a text to the browser as a file of this name, to be kept where its user likes. */
export function fetchAsFile(
  name: string,
  text: string,
  type: 'application/json' | 'text/csv' | 'text/plain',
): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has begun to read it by then; held on to, it would stay in memory for as long as the page.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
