import type { Finding } from '../../rules/finding.ts';
import { chargedChoices } from './charged-choices.ts';
import type { BestOfKind, WhyNone } from './found-schemes.ts';
import { EXACT_POINTS } from './least-costs.ts';
import { look } from './look-at-many.ts';
import type { Looked, Passing, ToLookThrough } from './passing.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { kindOf } from './scheme-words.ts';
import { filtered, type SearchSpace } from './search-space.ts';
import { inPlaceOf } from './settled-columns.ts';

type Kind = BestOfKind['kind'];

const kinds: readonly Kind[] = ['spurs', 'fused-branch', 'ring-extension', 'new-radial', 'mend'];

/** How many choices of one kind are looked at before it is given up. */
const CAP = 200;

/** The cheapest of one kind that passes, or why there is none. */
export interface OfKind {
  readonly kind: Kind;
  readonly best: Passing | null;
  readonly why: WhyNone | null;
  readonly reason: string | null;
  readonly examined: number;
  /** Where it was given up: what every other choice of it weighs at least; else null. */
  readonly bound: number | null;
}

/** Searches every kind by itself, with the columns of that kind alone; one kind a step. */
export function* bestOfKinds(
  toLook: ToLookThrough,
  { passing, bound }: Looked,
): Generator<null, readonly OfKind[]> {
  const all: OfKind[] = [];
  for (const kind of kinds) {
    all.push(bestOfKind(toLook, kind, { passing, bound }));
    yield null;
  }
  return all;
}

function bestOfKind(
  toLook: ToLookThrough,
  kind: Kind,
  { passing, bound }: Pick<Looked, 'passing' | 'bound'>,
): OfKind {
  // Whatever costs no more than the bound has been looked at: the first of its kind there is the cheapest of it.
  const found = passing.find(({ columns, cost }) => cost <= bound && kindOf(columns) === kind);
  if (found !== undefined) return { kind, best: found, why: null, reason: null, examined: 0, bound: null };
  const space = ofKind(toLook, kind);
  const looked = look({ ...toLook, space }, { wanted: 1, cap: CAP });
  const best = looked.passing[0] ?? null;
  const { examined } = looked;
  if (best !== null) return { kind, best, why: null, reason: null, examined, bound: null };
  const why = whyNone(toLook, space, kind, looked);
  const reason = reasonOf({ ...toLook, space }, { kind, why, looked });
  return { kind, best, why, reason, examined, bound: why === 'given-up' ? looked.bound : null };
}

/**
 * Whether a kind without a scheme is impossible. Where a choice is left that was not looked at it was given up; where sets of
 * points were left out, a choice of larger ones may be there.
 */
function whyNone(
  { shop, space: whole }: ToLookThrough,
  space: SearchSpace<SchemeColumn>,
  kind: Kind,
  { bound }: Looked,
): WhyNone {
  const { largest, points } = shop.sets;
  const isThere = columnsOf(kind === 'fused-branch' ? whole : space).some((column) => column.kind === kind);
  if (points > largest) return isThere ? 'not-searched' : 'impossible';
  return Number.isFinite(bound) ? 'given-up' : 'impossible';
}

const columnsOf = ({ layers, free }: SearchSpace<SchemeColumn>): readonly SchemeColumn[] => [
  ...layers.flatMap(({ columns }) => columns),
  ...free,
];

function ofKind({ shop, space }: ToLookThrough, kind: Kind): SearchSpace<SchemeColumn> {
  const sockets = shop.ground.wanted.reduce((mask, { isUnit }, i) => (isUnit ? mask : mask | (1 << i)), 0);
  const isIn = (column: SchemeColumn): boolean => {
    if (column.kind === 'unit') return true;
    // One branch for all that may be behind a fuse.
    return column.kind === kind && (kind !== 'fused-branch' || (column.mask & sockets) === sockets);
  };
  return filtered(space, isIn);
}

const nothing: Readonly<Record<Kind, string>> = {
  spurs: 'There are not enough places in the ring that may take a spur and have a place on the plan.',
  'fused-branch': 'There is no place to join a fused unit that could feed all of them.',
  'ring-extension':
    'No leg is told that could be opened: record two neighbours, or the legs between the points.',
  'new-radial': 'No board is known to have a spare way, or it has no place on the plan.',
  mend: 'There is no spur with one point on it that could be fused down or closed into the ring.',
};

function reasonOf(
  toLook: ToLookThrough,
  { kind, why, looked }: { readonly kind: Kind; readonly why: WhyNone; readonly looked: Looked },
): string {
  const first = looked.fails[0] ?? whyPassedOver(toLook);
  const told = first === null ? null : `${first.title}: ${first.message}`;
  if (why !== 'not-searched') return told ?? nothing[kind];
  const { largest, points } = toLook.shop.sets;
  const sets = `With ${points} points wanted, no more than ${largest} are joined at one place.`;
  return told === null ? sets : `${sets} ${told}`;
}

/**
 * What the cheapest choice fails by, where all were passed over for a column that fails by itself; null where there is none. Of
 * many points none is passed over: what failed was looked at.
 */
function whyPassedOver({ shop, space, charges, rank, bad }: ToLookThrough): Finding | null {
  if (space.points > EXACT_POINTS) return null;
  for (const { choice } of chargedChoices(space, charges, rank))
    return (
      choice.columns
        .map((column) => bad.get(inPlaceOf(shop, column)) ?? null)
        .find((finding) => finding !== null) ?? null
    );
  return null;
}
