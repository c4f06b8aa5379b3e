import type { BoughtPacks } from '#engine/price/buying/purchase.ts';
import type { TakeBackLine } from '#engine/price/packing/take-back.ts';
import type { KitDifference } from '#engine/schemes/outcomes/kit-differences.ts';
import type { TakeoffGroup } from '#engine/takeoff/line.ts';
import { counted, hundredths } from '../written.ts';

/** "2 × Open grommet 20 mm", "3.5 m of Flat twin and earth cable 2.5/1.5 mm²". */
function amountOf(
  quantity: number,
  { description, unit }: { readonly description: string; readonly unit: TakeBackLine['unit'] },
): string {
  return unit === 'each' || unit === 'set'
    ? `${hundredths(quantity)} × ${description}`
    : `${hundredths(quantity)} ${unit} of ${description}`;
}

/** What is small enough to be told as a number: nobody chooses by it. */
const smallGroups: readonly TakeoffGroup[] = ['fixings', 'making-good', 'sundries', 'papers'];

/** What an outcome takes more and less, each as a sentence without a full stop; both empty where it takes what is counted. */
export function kitWords(kit: readonly KitDifference[]): { readonly more: string; readonly less: string } {
  const words = (some: readonly KitDifference[]): string => {
    const isSmall = ({ group }: KitDifference): boolean => smallGroups.includes(group);
    const large = some.filter((one) => !isSmall(one)).map((one) => amountOf(Math.abs(one.byQuantity), one));
    const small = some.filter(isSmall).length;
    return [...large, ...(small === 0 ? [] : [`${counted(small, 'kind')} of fixings and the like`])].join(
      '; ',
    );
  };
  return {
    more: words(kit.filter(({ byQuantity }) => byQuantity > 0)),
    less: words(kit.filter(({ byQuantity }) => byQuantity < 0)),
  };
}

/** "1 coil of 25 m", "2 packs of 10", "3". */
function packWords({ offer, count }: BoughtPacks, unit: TakeBackLine['unit']): string {
  const one = unit === 'm' ? offer.quantity / 1e3 : offer.quantity;
  if (unit !== 'm' && one === 1) return String(count);
  const kind = offer.kind === 'each' ? 'length' : offer.kind;
  return `${counted(count, kind)} of ${hundredths(one)}${unit === 'each' ? '' : ` ${unit}`}`;
}

/** What of a line goes back: "2 × Steel back box", "1 coil of 25 m: Flat twin and earth cable". */
export function backWords({ back, description, unit }: TakeBackLine): string {
  const packs = back.map((pack) => packWords(pack, unit));
  const isCount = back.length === 1 && /^\d+$/.test(packs[0] ?? '');
  return isCount ? `${packs[0]} × ${description}` : `${packs.join(' and ')}: ${description}`;
}

/** What of a line stays in the van. */
export const staysWords = (line: TakeBackLine): string => amountOf(line.stays, line);

/** What of a line a case asks for and nobody bought. */
export const lackingWords = (line: TakeBackLine): string => amountOf(line.lacking, line);
