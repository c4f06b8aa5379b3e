import type { TakeoffLine } from '../../takeoff/line.ts';
import type { Offer } from './purchase.ts';

/** A length that is bought in one: "25 m coil", "3 m length". The offer's quantity is in mm. */
export const lengthWords = ({ kind, quantity }: Pick<Offer, 'kind' | 'quantity'>): string =>
  `${quantity / 1e3} m ${kind === 'each' ? 'length' : kind}`;

/** What one of an offer is: "25 m coil", "cut to measure, 1 m a step", "pack of 100", "one", "pack of 25 kg". */
export function offerWords(offer: Offer, unit: TakeoffLine['unit']): string {
  if (unit === 'm')
    return offer.kind === 'cut' ? `cut to measure, ${offer.quantity / 1e3} m a step` : lengthWords(offer);
  const measure = unit === 'kg' ? ' kg' : '';
  if (offer.kind === 'cut') return `loose, ${offer.quantity}${measure} a step`;
  return offer.quantity === 1 && unit !== 'kg' ? 'one' : `${offer.kind} of ${offer.quantity}${measure}`;
}
