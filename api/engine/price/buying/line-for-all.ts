import type { Stock } from '#model/job.ts';
import type { Price, Prices } from '#model/library.ts';
import type { TakeoffLine } from '../../takeoff/line.ts';
import { pricesByItem } from '../prices-by-item.ts';
import { countedLine } from './counted-line.ts';
import { cutLine } from './cut-line.ts';
import type { PurchaseLine } from './purchase.ts';

/** What is bought of, and what the van holds. */
export interface Supplies {
  readonly prices: Prices;
  readonly stock: readonly Stock[];
  /** `quick`: for a screen while something moves, the first plan that serves, with its bound. */
  readonly depth: 'whole' | 'quick';
}

/** The row of the price list by which a line is bought; none where the list has it in another unit. */
export function rowFor({ item, unit }: TakeoffLine, { prices }: Pick<Supplies, 'prices'>): Price | undefined {
  const row = pricesByItem(prices).get(item);
  return row?.unit === unit ? row : undefined;
}

/** What is cut to length, of which every piece is one; all else is only so much of it. */
export const isCutToLength = ({ unit, pieces }: TakeoffLine): boolean => unit === 'm' && pieces.length > 0;

/**
 * What is bought of one item at least cost so that each of several cases can be carried out with it: for one case what
 * that case takes.
 *
 * @param lines the item as each case asks for it, at least one; a cut list is that of the first.
 */
export function lineForAll(
  lines: readonly [TakeoffLine, ...TakeoffLine[]],
  supplies: Supplies,
): PurchaseLine {
  const [line] = lines;
  const price = rowFor(line, supplies);
  const held = supplies.stock.filter(({ item }) => item === line.item);
  return lines.some(isCutToLength)
    ? cutLine(lines, price, held, supplies.depth === 'quick')
    : countedLine(lines, price, held);
}

/**
 * The same where the cases are too many to be told apart: lists that hold more than any of them are bought for as well, and
 * what only some of the cases cost is the bound.
 *
 * @param lines some of the cases, at least one.
 * @param over lists that hold all the others.
 */
export function lineForMany(
  lines: readonly [TakeoffLine, ...TakeoffLine[]],
  over: readonly TakeoffLine[],
  supplies: Supplies,
): PurchaseLine {
  if (over.length === 0) return lineForAll(lines, supplies);
  const bought = lineForAll([...lines, ...over], supplies);
  const { proof } = lineForAll(lines, supplies);
  if (!bought.priced) return bought;
  const { boundPence } = proof;
  const isLeast = boundPence >= bought.pence;
  const gap = boundPence === 0 ? null : (bought.pence - boundPence) / boundPence;
  return { ...bought, proof: { optimal: isLeast, boundPence, gap: isLeast ? 0 : gap } };
}
