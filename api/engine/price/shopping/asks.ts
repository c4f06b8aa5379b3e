import type { TakeoffLine } from '../../takeoff/line.ts';
import { QUANTITY_PLACES } from '../bought.ts';
import { MM_A_METRE } from '../buying/line-parts.ts';
import type { BoughtPacks, CutFrom, PackKind } from '../buying/purchase.ts';
import { decimalOf, exactOf, times } from '../exact.ts';
import type { Ask } from './shopping-list.ts';

type Unit = TakeoffLine['unit'];

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

/** A quantity as it is written: "4", "12 m", "2.3 kg", "1 set". */
export function quantityWords(quantity: number, unit: Unit): string {
  if (unit === 'set') return counted(quantity, 'set');
  return unit === 'each' ? String(quantity) : `${quantity} ${unit}`;
}

/** What is had loose, in any pieces. */
export function looseAsk(quantity: number, unit: Unit): Ask {
  const isSingle = unit === 'each' || unit === 'set';
  const words = quantityWords(quantity, unit);
  return isSingle && Number.isInteger(quantity)
    ? { kind: 'each', count: quantity, quantity: 1, words, code: '' }
    : { kind: 'each', count: 1, quantity, words, code: '' };
}

/** Lengths that are each in one, equal ones together; the longest first. */
export function lengthAsks(lengthsMm: readonly number[]): readonly Ask[] {
  const counts = new Map<number, number>();
  for (const lengthMm of lengthsMm.toSorted((a, b) => b - a))
    counts.set(lengthMm, (counts.get(lengthMm) ?? 0) + 1);
  return [...counts].map(([lengthMm, count]): Ask => {
    const quantity = lengthMm / MM_A_METRE;
    const words = count === 1 ? `${quantity} m in one length` : `${count} lengths of ${quantity} m`;
    return { kind: 'length', count, quantity, words, code: '' };
  });
}

/** What a line is bought in. */
interface BoughtLine {
  readonly unit: Unit;
  readonly packs: readonly BoughtPacks[];
  readonly cuts: readonly CutFrom[];
}

/** What to ask for of packs; `codeOf` tells the merchant's number of an offer by its key. The largest first. */
export function packAsks(
  { unit, packs, cuts }: BoughtLine,
  codeOf: (offerKey: string) => string,
): readonly Ask[] {
  const isCutToLength = cuts.length > 0;
  return packs
    .map((bought): Ask => ({ ...packAsk(bought, unit, isCutToLength), code: codeOf(bought.offer.key) }))
    .toSorted((a, b) => b.quantity - a.quantity);
}

function packAsk({ offer, count }: BoughtPacks, unit: Unit, isCutToLength: boolean): Ask {
  const one = unit === 'm' ? offer.quantity / MM_A_METRE : offer.quantity;
  const all = decimalOf(times(exactOf(one), exactOf(count)), QUANTITY_PLACES);
  if (offer.kind === 'cut') return cutAsk(all, unit, isCutToLength);
  if (offer.kind === 'each' && unit !== 'm') return looseAsk(all, unit);
  const kind = offer.kind === 'each' ? 'length' : offer.kind;
  return {
    kind,
    count,
    quantity: one,
    words: `${counted(count, kind)} of ${quantityWords(one, unit)}`,
    code: '',
  };
}

/** Cut off to measure: as one unbroken length where pieces are cut from it. */
function cutAsk(quantity: number, unit: Unit, isCutToLength: boolean): Ask {
  if (unit !== 'm') return looseAsk(quantity, unit);
  const kind: PackKind = 'cut';
  const words = isCutToLength ? `${quantity} m in one length` : `${quantity} m off the reel`;
  return { kind, count: 1, quantity, words, code: '' };
}
