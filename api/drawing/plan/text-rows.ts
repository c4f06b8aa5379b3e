import { textWidthMm } from '../label-placer.ts';

/** Breaks text into rows that fit a width; a longer word stands alone. */
export function wrapped(text: string, widthMm: number, sizeMm: number): readonly string[] {
  const rows: string[] = [];
  let current = '';
  for (const word of text.split(/\s+/)) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (current !== '' && textWidthMm(longer, sizeMm) > widthMm) {
      rows.push(current);
      current = word;
    } else current = longer;
  }
  return current === '' ? rows : [...rows, current];
}
