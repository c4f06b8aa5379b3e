/** So many of one length. */
export interface SameLengths {
  readonly lengthMm: number;
  readonly count: number;
}

/** One filled length: which of `lengths` it is, and how many of each of `pieces` are cut from it. */
export interface Filled {
  readonly length: number;
  readonly takes: readonly number[];
}

/** Kinds of pieces times lengths beyond which no search is begun: it would go too deep. */
const MOST_DEEP = 2500;

/** Steps that a search may still take; counted down while it runs. */
export interface Steps {
  left: number;
}

/**
 * Cuts all pieces from lengths that are at hand, each piece from one; or finds that it cannot be done.
 *
 * Length by length, each begun with the longest piece that is left, so that equal lengths are never told apart. The
 * longest length of all, where there is one of it, is the rest: a piece that begins no other goes there. What is lost of
 * a length comes out of what may be lost in all; a filling into which a further piece fits, or a longer one in place of
 * a shorter, need not be tried: with those swapped the rest is no harder. What failed is kept by what was left.
 *
 * @param pieces the longest first, no length twice, counts above nought.
 * @param lengths the shortest first; of each the most that pieces can fill.
 * @returns null where it cannot be done, `spent` where the steps ran out before that was known.
 */
export function fillLengths(
  pieces: readonly SameLengths[],
  lengths: readonly SameLengths[],
  steps: Steps,
): readonly Filled[] | null | 'spent' {
  const count = lengths.reduce((sum, length) => sum + length.count, 0);
  if (pieces.length * count > MOST_DEEP) return 'spent';
  const longest = lengths.at(-1);
  const hasRest = longest !== undefined && longest.count === 1;
  const others = hasRest ? lengths.slice(0, -1) : lengths;
  const search: Search = {
    pieceMm: pieces.map(({ lengthMm }) => lengthMm),
    left: pieces.map(({ count }) => count),
    inRest: pieces.map(() => 0),
    lengthMm: others.map(({ lengthMm }) => lengthMm),
    free: others.map(({ count }) => count),
    codes: stateCodes([...pieces, ...others]),
    dead: new Map(),
    filled: [],
    steps,
  };
  const neededMm = sumOf(pieces);
  if (cutRest(search, { neededMm, freeMm: sumOf(others), restMm: hasRest ? longest.lengthMm : 0 }))
    return search.inRest.every((count) => count === 0)
      ? search.filled
      : [...search.filled, { length: others.length, takes: search.inRest }];
  return steps.left < 0 ? 'spent' : null;
}

const sumOf = (list: readonly SameLengths[]): number =>
  list.reduce((sum, { lengthMm, count }) => sum + lengthMm * count, 0);

/** Where the search stands. Its lists change as it goes forth and back; they are as long as those it began with. */
interface Search {
  readonly pieceMm: readonly number[];
  /** How many of each piece are left, and how many were put into the rest. */
  readonly left: number[];
  readonly inRest: number[];
  readonly lengthMm: readonly number[];
  /** How many of each length are free. */
  readonly free: number[];
  readonly codes: readonly number[] | null;
  /** Codes of what was left where it could not be done, with the room in the rest that did not help. */
  readonly dead: Map<number, number>;
  readonly filled: Filled[];
  readonly steps: Steps;
}

/** What is left to cut, and the lengths that are free for it, mm. */
interface Sums {
  readonly neededMm: number;
  readonly freeMm: number;
  /** The room in the rest. */
  readonly restMm: number;
}

/** Cuts what is left from the lengths that are free. */
function cutRest(search: Search, sums: Sums): boolean {
  const { pieceMm, left, inRest, lengthMm, free, dead, steps } = search;
  if (sums.neededMm <= sums.restMm) {
    left.forEach((count, piece) => {
      left[piece] = 0;
      inRest[piece] = at(inRest, piece) + count;
    });
    return true;
  }
  if (mostHeldMm(search, sums) < sums.neededMm) return false;
  const code = codeOf(search);
  if (code !== null && (dead.get(code) ?? -1) >= sums.restMm) return false;
  const first = left.findIndex((count) => count > 0);
  const longMm = at(pieceMm, first);
  for (let length = 0; length < free.length; length++) {
    if (at(free, length) > 0 && at(lengthMm, length) >= longMm && cutFrom(search, length, first, sums))
      return true;
    if (steps.left < 0) return false;
  }
  if (longMm <= sums.restMm) {
    left[first] = at(left, first) - 1;
    inRest[first] = at(inRest, first) + 1;
    if (cutRest(search, { ...sums, neededMm: sums.neededMm - longMm, restMm: sums.restMm - longMm }))
      return true;
    left[first] = at(left, first) + 1;
    inRest[first] = at(inRest, first) - 1;
    if (steps.left < 0) return false;
  }
  if (code !== null) dead.set(code, sums.restMm);
  return false;
}

/** The most that the free lengths and the rest can hold of what is left: none of them more than there is in pieces that fit. */
function mostHeldMm({ pieceMm, left, lengthMm, free }: Search, { restMm }: Sums): number {
  let heldMm = 0;
  let fittingMm = 0;
  let piece = left.length - 1;
  for (let length = 0; length < free.length; length++) {
    for (; piece >= 0 && at(pieceMm, piece) <= at(lengthMm, length); piece--)
      fittingMm += at(left, piece) * at(pieceMm, piece);
    heldMm = Math.min(heldMm + at(free, length) * at(lengthMm, length), fittingMm);
  }
  return heldMm + restMm;
}

/** A length that is being filled. */
interface Filling {
  readonly length: number;
  readonly takes: number[];
  /** As they are before it. */
  readonly sums: Sums;
  /** How much of it may be lost. */
  readonly mayLoseMm: number;
}

/** Cuts the longest piece that is left from one length, and tries everything that may be cut beside it. */
function cutFrom(search: Search, length: number, first: number, sums: Sums): boolean {
  const { pieceMm, left, lengthMm, free } = search;
  const mayLoseMm = sums.freeMm + sums.restMm - sums.neededMm;
  const filling: Filling = { length, takes: left.map(() => 0), sums, mayLoseMm };
  const longMm = at(pieceMm, first);
  free[length] = at(free, length) - 1;
  take(search, filling, first, 1);
  if (cutBeside(search, filling, first, at(lengthMm, length) - longMm, sums.neededMm - longMm)) return true;
  take(search, filling, first, -1);
  free[length] = at(free, length) + 1;
  return false;
}

function take({ left }: Search, { takes }: Filling, piece: number, count: number): void {
  left[piece] = at(left, piece) - count;
  takes[piece] = at(takes, piece) + count;
}

/** Cuts of the pieces from this one on what may go beside those taken, most first; `laterMm` of them are left. */
function cutBeside(search: Search, filling: Filling, from: number, roomMm: number, laterMm: number): boolean {
  const { pieceMm, left, steps } = search;
  steps.left -= 1;
  if (steps.left < 0) return false;
  let [piece, restMm] = [from, laterMm];
  // What is longer than the room stays; with all of the rest cut, no more may be left of the length than may be lost.
  for (; restMm > 0 && (at(left, piece) === 0 || at(pieceMm, piece) > roomMm); piece++)
    restMm -= at(left, piece) * at(pieceMm, piece);
  if (roomMm - restMm > filling.mayLoseMm) return false;
  if (restMm === 0) return close(search, filling, roomMm);
  const longMm = at(pieceMm, piece);
  const beyondMm = restMm - at(left, piece) * longMm;
  for (let count = Math.min(at(left, piece), Math.floor(roomMm / longMm)); count >= 0; count--) {
    take(search, filling, piece, count);
    if (cutBeside(search, filling, piece + 1, roomMm - count * longMm, beyondMm)) return true;
    take(search, filling, piece, -count);
  }
  return false;
}

/** Leaves a length as it is filled, and goes on with the rest. */
function close(search: Search, { length, takes, sums }: Filling, roomMm: number): boolean {
  if (couldHoldBetter(search, takes, roomMm)) return false;
  const wholeMm = at(search.lengthMm, length);
  search.filled.push({ length, takes: [...takes] });
  const neededMm = sums.neededMm - (wholeMm - roomMm);
  if (cutRest(search, { ...sums, neededMm, freeMm: sums.freeMm - wholeMm })) return true;
  search.filled.pop();
  return false;
}

/** Whether a piece that is left or in the rest fits beside those taken, or in place of the next shorter one. */
function couldHoldBetter(
  { pieceMm, left, inRest }: Search,
  takes: readonly number[],
  roomMm: number,
): boolean {
  let longerMm = Number.POSITIVE_INFINITY;
  for (let piece = 0; piece < left.length; piece++) {
    if (at(takes, piece) > 0 && longerMm - at(pieceMm, piece) <= roomMm) return true;
    if (at(left, piece) > 0 || at(inRest, piece) > 0) longerMm = at(pieceMm, piece);
  }
  return longerMm <= roomMm;
}

/** The number at a place that the list is known to have. */
const at = (list: readonly number[], place: number): number => list[place] as number;

/** What each count weighs in the number that says what is left; null where there are too many states for one number. */
function stateCodes(counts: readonly SameLengths[]): readonly number[] | null {
  const codes: number[] = [];
  let states = 1;
  for (const { count } of counts) {
    codes.push(states);
    states *= count + 1;
    if (states > Number.MAX_SAFE_INTEGER) return null;
  }
  return codes;
}

function codeOf({ codes, left, free }: Search): number | null {
  if (codes === null) return null;
  let code = 0;
  for (let i = 0; i < codes.length; i++)
    code += at(codes, i) * (i < left.length ? at(left, i) : at(free, i - left.length));
  return code;
}
