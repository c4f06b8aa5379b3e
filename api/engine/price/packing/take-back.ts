import type { TakeoffLine } from '../../takeoff/line.ts';
import { QUANTITY_PLACES } from '../bought.ts';
import { isOfVan, longestSoldMm, metres, vanLengthsMm } from '../buying/cut-line.ts';
import { isCutToLength, rowFor, type Supplies } from '../buying/line-for-all.ts';
import { MM_A_METRE, penceOf } from '../buying/line-parts.ts';
import { offersOf } from '../buying/offers-of.ts';
import { type CutPiece, piecesToCut } from '../buying/pieces-of.ts';
import type { BoughtPacks, CutFrom, PurchaseLine, PurchasePlan } from '../buying/purchase.ts';
import { decimalOf, exactOf, minus } from '../exact.ts';
import { type HeldLength, openedLengths } from './opened-lengths.ts';
import { canGoBack, openedPacks } from './opened-packs.ts';

/** What becomes of what was bought of one item once the job has turned out one way. Quantities in the line's unit. */
export interface TakeBackLine extends Pick<PurchaseLine, 'item' | 'description' | 'unit' | 'counter'> {
  /** Whole packs and lengths that were not opened, at what they cost. */
  readonly back: readonly BoughtPacks[];
  readonly backPence: number;
  /** Bought, but opened or cut to measure, and not used: it stays in the van. */
  readonly stays: number;
  /** What is cut from which length in this case; empty where nothing is cut to length. */
  readonly cuts: readonly CutFrom[];
  /** What this case asks for and neither the van nor what was bought holds; 0 for every case that was bought for. */
  readonly lacking: number;
}

/** What goes back to the merchant, what stays. Restocking terms are not known: pence are what was paid. */
export interface TakeBack {
  /** What goes back, stays or is lacking, by counter as in the plan; then what was not bought at all. */
  readonly lines: readonly TakeBackLine[];
  readonly pence: number;
  /** Whether everything that this case asks for, and that is on sale, is at hand. */
  readonly isServed: boolean;
}

/** What of a plan goes back, if the job turns out to take this. */
export function takeBack(plan: PurchasePlan, takeoff: readonly TakeoffLine[], supplies: Supplies): TakeBack {
  const asked = new Map(takeoff.filter(({ quantity }) => quantity > 0).map((line) => [line.item, line]));
  const ofPlan = plan.lines.map((bought) => lineBack(bought, asked.get(bought.item) ?? null, supplies));
  const planned = new Set(plan.lines.map(({ item }) => item));
  const unplanned = [...asked.values()]
    .filter((line) => !planned.has(line.item) && rowFor(line, supplies) !== undefined)
    .map((line) => notBought(line, supplies));
  const lines = [...ofPlan, ...unplanned].filter(
    ({ back, stays, lacking, cuts }) => back.length > 0 || stays > 0 || lacking > 0 || cuts.length > 0,
  );
  return {
    lines,
    pence: lines.reduce((sum, { backPence }) => sum + backPence, 0),
    isServed: lines.every(({ lacking }) => lacking === 0),
  };
}

function lineBack(bought: PurchaseLine, line: TakeoffLine | null, supplies: Supplies): TakeBackLine {
  const { item, description, unit, counter } = bought;
  const isCut = bought.cuts.length > 0 || (line !== null && isCutToLength(line));
  const back = isCut ? lengthsBack(bought, line, supplies) : packsBack(bought, line, supplies);
  const backPence = back.back.reduce((sum, { pence }) => sum + pence, 0);
  return { item, description, unit, counter, backPence, ...back };
}

type Back = Pick<TakeBackLine, 'back' | 'stays' | 'cuts' | 'lacking'>;

const difference = (a: number, b: number): number =>
  decimalOf(minus(exactOf(a), exactOf(b)), QUANTITY_PLACES);

/** What is only counted or weighed. */
function packsBack(bought: PurchaseLine, line: TakeoffLine | null, { stock }: Supplies): Back {
  const inVan = stock.filter(({ item }) => item === bought.item).reduce((sum, one) => sum + one.quantity, 0);
  const needed = Math.max(0, difference(line?.quantity ?? 0, inVan));
  const perUnit = bought.unit === 'm' ? MM_A_METRE : 1;
  const opened = openedPacks(bought.packs, needed * perUnit);
  const back = bought.packs.flatMap((pack, i) => unopened(pack, pack.count - (opened[i] ?? 0)));
  const backQuantity = back.reduce((sum, { offer, count }) => sum + offer.quantity * count, 0) / perUnit;
  const rest = difference(difference(bought.boughtQuantity, backQuantity), needed);
  const isLacking = bought.priced && rest < 0;
  return { back, stays: Math.max(0, rest), cuts: [], lacking: isLacking ? -rest : 0 };
}

function unopened({ offer }: BoughtPacks, count: number): readonly BoughtPacks[] {
  if (count <= 0 || !canGoBack({ offer })) return [];
  return [{ offer, count, pence: penceOf(offer.millipence * count) }];
}

/** What is cut to length: the van's lengths and those cut to measure first, then as little as can be of what goes back. */
function lengthsBack(bought: PurchaseLine, line: TakeoffLine | null, supplies: Supplies): Back {
  const { packs, item } = bought;
  const price = line === null ? undefined : rowFor(line, supplies);
  const pieces =
    line === null ? [] : piecesToCut(line, longestSoldMm(price === undefined ? [] : offersOf(price)));
  const inVan = vanLengthsMm(supplies.stock.filter((one) => one.item === item)).map(
    (lengthMm, i): HeldLength => ({ from: `van/${i + 1}`, lengthMm, millipence: null }),
  );
  const held = packs.flatMap(heldLengths);
  const opened = openedLengths(pieces, [...inVan, ...held]);
  const back = packs.flatMap((pack) =>
    unopened(pack, opened.unopened.filter(({ from }) => from.startsWith(`${pack.offer.key}/`)).length),
  );
  const usedM = metres(opened.cuts.filter(({ from }) => !isOfVan(from)).flatMap(({ cuts }) => cuts));
  return {
    back,
    stays: difference(difference(bought.boughtQuantity, metres(opened.unopened)), usedM),
    cuts: opened.cuts,
    lacking: bought.priced ? metres(opened.lacking.filter((piece) => canBeBought(piece, price))) : 0,
  };
}

/** Pieces that nothing on the list is long enough for were never bought for. */
function canBeBought({ lengthMm }: CutPiece, price: ReturnType<typeof rowFor>): boolean {
  const offers = price === undefined ? [] : offersOf(price);
  return offers.some(({ kind, quantity }) => kind === 'cut' || quantity >= lengthMm);
}

/** The lengths that packs are: each whole one by itself, steps cut to measure as one. */
function heldLengths({ offer, count }: BoughtPacks): readonly HeldLength[] {
  const { key, quantity, millipence } = offer;
  if (!canGoBack({ offer })) return [{ from: `${key}/1`, lengthMm: quantity * count, millipence: null }];
  return Array.from({ length: count }, (_, i) => ({
    from: `${key}/${i + 1}`,
    lengthMm: quantity,
    millipence,
  }));
}

function notBought(line: TakeoffLine, supplies: Supplies): TakeBackLine {
  const { item, description, unit } = line;
  const inVan = supplies.stock.filter((one) => one.item === item).reduce((sum, one) => sum + one.quantity, 0);
  return {
    ...{ item, description, unit },
    counter: rowFor(line, supplies)?.counter ?? '',
    ...{ back: [], backPence: 0, stays: 0, cuts: [] },
    lacking: Math.max(0, difference(line.quantity, inVan)),
  };
}
