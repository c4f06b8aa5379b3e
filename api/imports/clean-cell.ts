/** A cell's text as it is gone on with: nothing unseen in it, blanks and line ends as single spaces, none at its ends. */
export function cleanCell(text: string): string {
  return (
    text
      .replace(/\s+/g, ' ')
      // Control characters, and what is not seen but turns the direction of writing about.
      .replace(/[\p{Cc}\p{Cf}\ufffe\uffff]/gu, '')
      .replace(/\p{Surrogate}/gu, '\ufffd')
      .trim()
  );
}
