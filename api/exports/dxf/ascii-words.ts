/** What drafting programs' own letters lack, in letters that all have. */
const plain: Readonly<Record<string, string>> = {
  '²': '2',
  '³': '3',
  '×': 'x',
  '–': '-',
  '—': '-',
  '−': '-',
  '’': "'",
  '‘': "'",
  '“': '"',
  '”': '"',
  '…': '...',
  '°': 'deg ',
  Ω: 'ohm',
  '½': '1/2',
  '£': 'GBP ',
  '≤': '<=',
  '≥': '>=',
  '\u00a0': ' ',
  '\u202f': ' ',
};

/**
 * Words in ASCII on one line, for a file that is read with letters of the reader's own: accents are dropped, signs
 * written out, and "?" stands for whatever has no such letter.
 */
export const asciiWords = (words: string): string =>
  [...words]
    .map((letter) => plain[letter] ?? letter)
    .join('')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[\p{Cc}\p{Cf}]+/gu, ' ')
    .replace(/[^ -~]/gu, '?')
    // A caret and per cents begin codes of the format.
    .replace(/%%/g, '% %')
    .replace(/\^/g, ' ');
