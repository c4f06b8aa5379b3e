/** Millimetres to an inch, exactly, since the international yard and pound agreement of 1959. */
const MM_PER_INCH = 25.4;

const NUMBER = String.raw`(\d+(?:\.\d+)?|\.\d+)`;
const METRIC = new RegExp(`^${NUMBER}(mm|cm|m)$`);
const FEET = `(?:${NUMBER}(?:'|ft|feet|foot))?`;
/** Inches, whole or decimal, with or without a fraction: 6, 6.5, 6-1/2, 1/2. */
const INCHES = String.raw`(?:${NUMBER}?(?:-?(\d+)/(\d+))?(?:"|in|inch|inches)?)?`;
const IMPERIAL = new RegExp(`^${FEET}-?${INCHES}$`);

const MM_PER: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000 };

/** Marks for feet and inches as keyboards and phones write them, as ' and ". */
const plainMarks = (text: string): string =>
  text
    .replace(/[’‘′`]/g, "'")
    .replace(/[”“″]|''/g, '"')
    .replace(/½/g, ' 1/2')
    .replace(/¼/g, ' 1/4')
    .replace(/¾/g, ' 3/4')
    .replace(/⅛/g, ' 1/8');

/**
 * A length with its unit as people type it: "2.4 m", "240 cm", "2400 mm", `8'`, `7' 10½"`, "7 ft 10 1/2 in", to a tenth of a
 * millimetre.
 *
 * @returns null where no unit is said, or it is no length.
 */
export function readLengthMm(typed: string): number | null {
  const marked = plainMarks(typed).trim().toLowerCase();
  // A fraction stands off its whole by a space, which nothing else needs.
  const text = marked.replace(/(\d)\s+(\d+\/\d+)/g, '$1-$2').replace(/\s/g, '');
  const metric = METRIC.exec(text);
  if (metric !== null) return tenth(Number(metric[1]) * (MM_PER[metric[2] ?? ''] ?? Number.NaN));
  if (!/['"]|ft|feet|foot|in/.test(text)) return null;
  const imperial = IMPERIAL.exec(text);
  if (imperial === null) return null;
  const [, feet, inches, above, below] = imperial;
  if (below !== undefined && Number(below) === 0) return null;
  const fraction = above === undefined ? 0 : Number(above) / Number(below);
  return tenth((Number(feet ?? 0) * 12 + Number(inches ?? 0) + fraction) * MM_PER_INCH);
}

const tenth = (mm: number): number => Math.round(mm * 10) / 10;
