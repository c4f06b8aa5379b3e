/**
 * A text as part of a file name: lower case, plain letters and digits, words joined by hyphens, at most 60
 * characters. Accents are dropped; letters that are not Latin leave no trace.
 *
 * @param otherwise what stands there when nothing is left of the text.
 */
export function fileWord(text: string, otherwise: string): string {
  const word = text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-|-$/g, '');
  return word === '' ? otherwise : word;
}
