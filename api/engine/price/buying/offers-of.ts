import type { Pack, Price } from '#model/library.ts';
import { remembered } from '../../plan/remembered.ts';
import { exactOf, over, roundHalfUp, times } from '../exact.ts';
import type { Offer, PackKind } from './purchase.ts';

/** Cut lengths go up to whole metres where the list says nothing, other things to what the take-off rounds to. */
const STEP_UNTOLD = { m: 1, kg: 0.1, each: 1, set: 1 } as const;

/** One size that an item is sold in. */
interface Size extends Pick<Pack, 'kind' | 'quantity' | 'leastQuantity'> {
  readonly millipence: number;
}

/** An offer of one unbroken length: a coil, a drum, a tube. */
export const isOneLength = ({ kind }: Offer): boolean =>
  kind === 'length' || kind === 'coil' || kind === 'drum' || kind === 'each';

/** Every way to buy an item that its row of the list tells: the row itself first, then its further sizes. */
export const offersOf = remembered((price: Price): readonly Offer[] => {
  const further = (price.packs ?? []).map((pack): Size => ({ ...pack, millipence: pack.pricePence * 1000 }));
  const seen = new Map<string, number>();
  return [rowSize(price), ...further].map((size) => {
    const name = `${size.kind}-${size.quantity}`;
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return offerOf(size, count === 1 ? name : `${name}-no-${count}`, price.unit);
  });
});

function rowSize(price: Price): Size {
  const kind = price.kind ?? usualKind(price);
  const isWhole = kind === 'length' || kind === 'coil' || kind === 'drum';
  const quantity = price.packQuantity ?? (isWhole ? price.perQuantity : STEP_UNTOLD[price.unit]);
  const listed = over(times(exactOf(price.pricePence), exactOf(quantity)), exactOf(price.perQuantity));
  return { kind, quantity, millipence: roundHalfUp(times(listed, exactOf(1000))) };
}

function usualKind({ unit, packQuantity }: Price): PackKind {
  if (unit === 'm') return packQuantity === undefined || packQuantity <= 1 ? 'cut' : 'length';
  return packQuantity === undefined || packQuantity === 1 ? 'each' : 'pack';
}

function offerOf(
  { kind, quantity, leastQuantity, millipence }: Size,
  key: string,
  unit: Price['unit'],
): Offer {
  const told = unit === 'm' ? Math.max(1, Math.round(quantity * 1e3)) : quantity;
  if (kind !== 'cut') return { key, kind, quantity: told, millipence, least: null };
  const leastTold = (leastQuantity ?? quantity) * (unit === 'm' ? 1e3 : 1);
  // A hair over, from dividing decimals, is not over.
  const steps = Math.max(1, Math.ceil(leastTold / told - 1e-6));
  return { key, kind, quantity: told, millipence, least: steps * told };
}
