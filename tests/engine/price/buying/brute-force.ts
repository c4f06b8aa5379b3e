import type { CutList } from './random-cut-list.ts';

/**
 * The least that a cut list costs, thousandths of a penny, by trying every way to put its pieces together: each piece
 * joins a length that is begun or begins a new one, and each length comes from the van or from the cheapest offer that
 * holds it. It knows nothing of sets, bounds or the order of lengths. Null where some piece fits nothing.
 */
export function leastCostByForce({ pieces, offers, vanMm }: CutList): number | null {
  let least: number | null = null;
  const groups: number[] = [];
  const place = (piece: number): void => {
    if (piece === pieces.length) {
      const cost = cheapestLengths(groups, offers, vanMm);
      if (cost !== null && (least === null || cost < least)) least = cost;
      return;
    }
    const lengthMm = pieces[piece]?.lengthMm ?? 0;
    for (let group = 0; group <= groups.length; group++) {
      const before = groups[group];
      groups[group] = (before ?? 0) + lengthMm;
      place(piece + 1);
      if (before === undefined) groups.pop();
      else groups[group] = before;
    }
  };
  place(0);
  return least;
}

/** Each length from the van, each off-cut once, or bought. */
function cheapestLengths(
  groups: readonly number[],
  offers: CutList['offers'],
  vanMm: readonly number[],
): number | null {
  const [first, ...others] = groups;
  if (first === undefined) return 0;
  const choices: (number | null)[] = [];
  const bought = cheapestOffer(first, offers);
  if (bought !== null) {
    const rest = cheapestLengths(others, offers, vanMm);
    choices.push(rest === null ? null : bought + rest);
  }
  vanMm.forEach((heldMm, i) => {
    if (heldMm >= first) choices.push(cheapestLengths(others, offers, vanMm.toSpliced(i, 1)));
  });
  const known = choices.filter((cost) => cost !== null);
  return known.length === 0 ? null : Math.min(...known);
}

function cheapestOffer(lengthMm: number, offers: CutList['offers']): number | null {
  const costs = offers.flatMap(({ quantity, millipence, least }) => {
    if (least === null) return quantity >= lengthMm ? [millipence] : [];
    return [Math.ceil(Math.max(least, lengthMm) / quantity) * millipence];
  });
  return costs.length === 0 ? null : Math.min(...costs);
}
