/** Whole pence as pounds in plain decimals, "12.50", which every spreadsheet takes for a figure. */
export function poundsText(pence: number): string {
  const whole = Math.abs(pence);
  const text = `${Math.floor(whole / 100)}.${String(whole % 100).padStart(2, '0')}`;
  return pence < 0 ? `-${text}` : text;
}
