import type { TakeBackLine } from '#engine/price/packing/take-back.ts';
import { counted } from '#engine/rules/counted.ts';
import type { KitDifference } from '#engine/schemes/outcomes/kit-differences.ts';
import type { TakeoffGroup } from '#engine/takeoff/line.ts';
import { amountOf } from './back-words.ts';

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

/** What of a line stays in the van. */
export const staysWords = (line: TakeBackLine): string => amountOf(line.stays, line);

/** What of a line a case asks for and nobody bought. */
export const lackingWords = (line: TakeBackLine): string => amountOf(line.lacking, line);
