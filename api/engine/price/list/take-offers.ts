import type { Pack, Price } from '#model/library.ts';
import type { Item } from '../../takeoff/items.ts';
import type { Offer } from './row-offer.ts';

/** An offer with the row that it stands in. */
export interface RowedOffer {
  readonly row: number;
  readonly offer: Offer;
}

/** Where an offer goes: the row that prices jobs, or a further size of the same thing. */
export interface PlacedOffer extends RowedOffer {
  readonly place: 'priced-by' | 'also-sold';
  /** The size that it takes the place of; null for one that was not there. */
  readonly pack: Pack | null;
}

/** Whether an offer may be of the same kind of pack as one that is known; what is only called a pack may be any. */
const kindsFit = (offered: Pack['kind'] | null, known: Pack['kind'] | undefined): boolean =>
  offered === null || known === undefined || offered === 'pack' || offered === known;

/** The further size that an offer is of: told outright, or by the quantity that its price is for. */
function packFor({ packQuantity, perQuantity, kind }: Offer, packs: readonly Pack[]): Pack | null {
  const quantity = packQuantity ?? (perQuantity === 1 ? null : perQuantity);
  if (quantity === null) return null;
  return packs.find((pack) => pack.quantity === quantity && kindsFit(kind, pack.kind)) ?? null;
}

function placeKnown(rowed: RowedOffer, known: Price): PlacedOffer | null {
  const { offer } = rowed;
  const isItsSize = offer.packQuantity !== null && offer.packQuantity === known.packQuantity;
  if (isItsSize && kindsFit(offer.kind, known.kind)) return { ...rowed, place: 'priced-by', pack: null };
  const pack = packFor(offer, known.packs ?? []);
  if (pack !== null) return { ...rowed, place: 'also-sold', pack };
  return offer.packQuantity === null ? { ...rowed, place: 'priced-by', pack: null } : null;
}

const sizeOf = ({ offer }: RowedOffer): number => offer.packQuantity ?? 0;

/** Our own lists say which row prices jobs. */
function placeOwn(rowed: RowedOffer, known: Price | null): PlacedOffer {
  if (rowed.offer.place === 'pricedBy') return { ...rowed, place: 'priced-by', pack: null };
  const packs = known?.packs ?? [];
  const pack = packs.find(
    ({ quantity, kind }) => quantity === rowed.offer.packQuantity && kind === rowed.offer.kind,
  );
  return { ...rowed, place: 'also-sold', pack: pack ?? null };
}

/**
 * Says of a list's offers of one item which prices jobs and which are further sizes. What is of a known size takes its
 * place. Of a thing that is on the list in no size that is offered, the smallest offered prices jobs from now on.
 */
export function placeOffers(offers: readonly RowedOffer[], known: Price | null): readonly PlacedOffer[] {
  const [first] = offers;
  if (first === undefined) return [];
  if (first.offer.place !== null) return offers.map((rowed) => placeOwn(rowed, known));
  const placed = offers.map((rowed) => (known === null ? null : placeKnown(rowed, known)));
  const isKnown = placed.some((one) => one !== null) || (known?.packs ?? []).length > 0;
  const smallest = offers.toSorted((a, b) => sizeOf(a) - sizeOf(b) || a.row - b.row)[0];
  return offers.map((rowed, index) => {
    const place = !isKnown && rowed === smallest ? 'priced-by' : 'also-sold';
    return placed[index] ?? { ...rowed, place, pack: null };
  });
}

const isIn = <T>(value: T | null | undefined | ''): value is T =>
  value !== null && value !== undefined && value !== '';

/** A group without the keys that hold nothing. */
function without<T extends object>(group: { readonly [Key in keyof T]: T[Key] | null | '' | undefined }): T {
  return Object.fromEntries(Object.entries(group).filter(([, value]) => isIn(value))) as T;
}

interface Taking {
  /** The day of the file's prices that name none. */
  readonly date: string;
  /** The day that prices of the list are of where they name none. */
  readonly listDate: string;
  readonly isOwn: boolean;
}

const ownDate = ({ date }: Offer, taking: Taking): string | null => {
  const day = date ?? taking.date;
  return day === taking.listDate ? null : day;
};

/** The price that jobs are priced by, once an offer has taken its place; what the offer says nothing of stays. */
export function pricedBy(item: Item, known: Price | null, { offer }: PlacedOffer, taking: Taking): Price {
  const says = <T>(offered: T | null, before: T | undefined): T | null | undefined =>
    offered !== null || taking.isOwn ? offered : before;
  const isCounted = item.unit === 'each' || item.unit === 'set';
  const isOtherSize =
    known !== null && offer.packQuantity !== null && offer.packQuantity !== known.packQuantity;
  return without<Price>({
    item: item.id,
    unit: item.unit,
    pricePence: offer.pricePence,
    perQuantity: offer.perQuantity,
    packQuantity: says(offer.packQuantity, known === null ? (isCounted ? 1 : undefined) : known.packQuantity),
    charge: offer.charge ?? known?.charge ?? 'packs',
    kind: isOtherSize ? offer.kind : taking.isOwn ? offer.kind : (known?.kind ?? offer.kind),
    packs: known?.packs,
    counter: taking.isOwn ? offer.counter : known?.counter,
    supplier: offer.supplier,
    code: offer.code,
    supplierWords: offer.words,
    discountPercent: offer.discountPercent,
    date: ownDate(offer, taking),
    origin: undefined,
  });
}

/** A further size as an offer has it. */
export function alsoSold({ unit }: Item, { offer, pack }: PlacedOffer, taking: Taking): Pack {
  const quantity = offer.packQuantity ?? offer.perQuantity;
  return without<Pack>({
    kind: pack?.kind ?? offer.kind ?? (unit === 'm' ? 'length' : 'pack'),
    quantity,
    pricePence: Math.round((offer.pricePence * quantity) / offer.perQuantity),
    leastQuantity: taking.isOwn ? offer.leastQuantity : pack?.leastQuantity,
    code: offer.code,
    date: ownDate(offer, taking),
    origin: undefined,
  });
}
