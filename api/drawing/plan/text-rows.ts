import { textWidthMm } from '../label-placer.ts';

/** Breaks text into rows that fit a width, at spaces; a word that is longer than a row, within. */
export function wrapped(text: string, widthMm: number, sizeMm: number): readonly string[] {
  const rows: string[] = [];
  let current = '';
  for (const word of text.split(/\s+/).flatMap((each) => broken(each, widthMm, sizeMm))) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (current !== '' && textWidthMm(longer, sizeMm) > widthMm) {
      rows.push(current);
      current = word;
    } else current = longer;
  }
  return current === '' ? rows : [...rows, current];
}

/** A word in parts that fit a row. */
function broken(word: string, widthMm: number, sizeMm: number): readonly string[] {
  const letters = Math.max(1, Math.floor(widthMm / textWidthMm('x', sizeMm)));
  if (word.length <= letters) return [word];
  return Array.from({ length: Math.ceil(word.length / letters) }, (_, i) =>
    word.slice(i * letters, (i + 1) * letters),
  );
}
