import type { BoughtPacks } from '#engine/price/buying/purchase.ts';
import type { TakeBackLine } from '#engine/price/packing/take-back.ts';
import { counted } from '#engine/rules/counted.ts';

/** To a hundredth: nobody reads more of a length or a weight. */
const tidy = (quantity: number): string => String(Math.round(quantity * 100) / 100);

/** "2 × Open grommet 20 mm", "3.5 m of Flat twin and earth cable 2.5/1.5 mm²". */
export function amountOf(
  quantity: number,
  { description, unit }: { readonly description: string; readonly unit: TakeBackLine['unit'] },
): string {
  return unit === 'each' || unit === 'set'
    ? `${tidy(quantity)} × ${description}`
    : `${tidy(quantity)} ${unit} of ${description}`;
}

/** "1 coil of 25 m", "2 packs of 10", "3". */
function packWords({ offer, count }: BoughtPacks, unit: TakeBackLine['unit']): string {
  const one = unit === 'm' ? offer.quantity / 1e3 : offer.quantity;
  if (unit !== 'm' && one === 1) return String(count);
  const kind = offer.kind === 'each' ? 'length' : offer.kind;
  return `${counted(count, kind)} of ${tidy(one)}${unit === 'each' ? '' : ` ${unit}`}`;
}

/** What of a line goes back, without its name: "2", "1 coil of 25 m and 1 pack of 10". */
export const backPacks = ({ back, unit }: Pick<TakeBackLine, 'back' | 'unit'>): string =>
  back.map((pack) => packWords(pack, unit)).join(' and ');

/** What of a line goes back: "2 × Steel back box", "1 coil of 25 m: Flat twin and earth cable". */
export function backWords(line: TakeBackLine): string {
  const packs = backPacks(line);
  return /^\d+$/.test(packs) ? `${packs} × ${line.description}` : `${packs}: ${line.description}`;
}
