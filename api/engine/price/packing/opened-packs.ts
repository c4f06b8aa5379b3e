import type { BoughtPacks } from '../buying/purchase.ts';

/** How many of each pack are opened, by the order of the packs. */
export type OpenedPacks = readonly number[];

/**
 * Which of the packs that were bought are opened for a need so that what is left whole is worth most; of equal ones the
 * fewest packs. What is cut off at the counter cannot go back, so it is used first and counts as opened.
 *
 * @param needed in the unit of the offers' quantities.
 */
export function openedPacks(packs: readonly BoughtPacks[], needed: number): OpenedPacks {
  const cutOff = packs.reduce((sum, pack) => sum + (canGoBack(pack) ? 0 : quantityOf(pack)), 0);
  const choices = packs.map((pack): readonly number[] =>
    canGoBack(pack) ? Array.from({ length: pack.count + 1 }, (_, count) => count) : [pack.count],
  );
  let best: { readonly opened: OpenedPacks; readonly worth: number } | null = null;
  const choose = (opened: OpenedPacks, worth: number, restNeeded: number): void => {
    const pack = packs[opened.length];
    if (best !== null && worth > best.worth) return;
    if (pack === undefined) {
      if (restNeeded <= HAIR && isBetter({ opened, worth }, best)) best = { opened, worth };
      return;
    }
    for (const count of choices[opened.length] ?? []) {
      const isFree = !canGoBack(pack);
      const more = isFree ? 0 : count * pack.offer.millipence;
      const held = isFree ? 0 : count * pack.offer.quantity;
      choose([...opened, count], worth + more, restNeeded - held);
      // More of what already suffices is opened for nothing.
      if (restNeeded - held <= HAIR) return;
    }
  };
  choose([], 0, needed - cutOff);
  return (best as { readonly opened: OpenedPacks } | null)?.opened ?? packs.map(({ count }) => count);
}

/** Below this a remainder is the dust of binary fractions. */
const HAIR = 1e-6;

const quantityOf = ({ offer, count }: BoughtPacks): number => offer.quantity * count;

/** Whether a merchant could take it again: what was cut off to measure never. */
export const canGoBack = ({ offer }: Pick<BoughtPacks, 'offer'>): boolean => offer.kind !== 'cut';

const total = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0);

const isBetter = (
  one: { readonly opened: OpenedPacks; readonly worth: number },
  best: { readonly opened: OpenedPacks; readonly worth: number } | null,
): boolean =>
  best === null ||
  one.worth < best.worth ||
  (one.worth === best.worth && total(one.opened) < total(best.opened));
