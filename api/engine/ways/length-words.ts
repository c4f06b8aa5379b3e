/** A length in trade units: to 10 mm below a metre, else to 0.1 m. */
export function lengthWords(lengthMm: number): string {
  return lengthMm < 1000 ? `${Math.round(lengthMm / 10) * 10} mm` : `${(lengthMm / 1000).toFixed(1)} m`;
}

/** A place along a joist in trade units, to a centimetre: holes are set out by tape. */
const toCentimetre = (mm: number): string =>
  mm < 1000 ? `${Math.round(mm / 10) * 10} mm` : `${(mm / 1000).toFixed(2)} m`;

/** Two places along a joist, or one where they come to the same. */
export function rangeWords(lowMm: number, highMm: number): string {
  const [low, high] = [toCentimetre(lowMm), toCentimetre(highMm)];
  return low === high ? low : `${low} to ${high}`;
}
