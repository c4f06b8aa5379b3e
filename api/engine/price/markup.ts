/**
 * The mark-up on cost that gives a margin of the selling price, m = g / (1 − g); both in percent, the margin
 * below 100.
 */
export function markupOfMargin(marginPercent: number): number {
  return (100 * marginPercent) / (100 - marginPercent);
}

/** The margin of the selling price that a mark-up on cost gives, g = m / (1 + m); both in percent. */
export function marginOfMarkup(markupPercent: number): number {
  return (100 * markupPercent) / (100 + markupPercent);
}
