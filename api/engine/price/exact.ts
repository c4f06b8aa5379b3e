/** A whole number: a plain one as long as plain numbers hold it exactly, a big one beyond. */
type Whole = number | bigint;

/** A number as a fraction of whole numbers, so that sums of money never pass through binary fractions. */
export interface Exact {
  readonly num: Whole;
  /** Always above nought. */
  readonly den: Whole;
}

/** The largest number of decimals that is looked for without writing the number out. */
const LOOKED_FOR = 1e6;
/** Decimals of up to fifteen digits each have a binary fraction of their own (IEEE 754 double precision). */
const FIFTEEN_DIGITS = 1e15;

/** A number as a person wrote it: the shortest decimal that reads back as it. Finite numbers only. */
export function exactOf(value: number): Exact {
  // Adding nought turns −0 into 0.
  if (Number.isSafeInteger(value)) return { num: value + 0, den: 1 };
  for (let den = 10; den <= LOOKED_FOR; den *= 10) {
    const num = Math.round(value * den);
    if (Math.abs(num) < FIFTEEN_DIGITS && num / den === value) return { num: num + 0, den };
  }
  return exactAsWritten(value);
}

function exactAsWritten(value: number): Exact {
  const [mantissa = '0', exponent = '0'] = String(value).split('e');
  const [whole = '0', decimals = ''] = mantissa.split('.');
  const digits = BigInt(whole + decimals);
  const shift = Number(exponent) - decimals.length;
  return shift >= 0
    ? { num: digits * 10n ** BigInt(shift), den: 1n }
    : { num: digits, den: 10n ** BigInt(-shift) };
}

/** Nought, to start sums with. */
export const exactZero: Exact = { num: 0, den: 1 };

function product(a: Whole, b: Whole): Whole {
  if (typeof a === 'number' && typeof b === 'number') {
    const plain = a * b;
    if (Number.isSafeInteger(plain)) return plain + 0;
  }
  return BigInt(a) * BigInt(b);
}

function sum(a: Whole, b: Whole): Whole {
  if (typeof a === 'number' && typeof b === 'number') {
    const plain = a + b;
    if (Number.isSafeInteger(plain)) return plain;
  }
  return BigInt(a) + BigInt(b);
}

/** How many times one whole number goes into another; null when there is a rest. */
function timesIn(a: Whole, b: Whole): Whole | null {
  if (typeof a === 'number' && typeof b === 'number') return a % b === 0 ? a / b : null;
  const [bigA, bigB] = [BigInt(a), BigInt(b)];
  return bigA % bigB === 0n ? bigA / bigB : null;
}

/** a + b. */
export function plus(a: Exact, b: Exact): Exact {
  // Decimals mostly have one denominator dividing the other's: so sums of many do not grow theirs.
  const bInA = timesIn(a.den, b.den);
  if (bInA !== null) return { num: sum(a.num, product(b.num, bInA)), den: a.den };
  const aInB = timesIn(b.den, a.den);
  if (aInB !== null) return { num: sum(product(a.num, aInB), b.num), den: b.den };
  return { num: sum(product(a.num, b.den), product(b.num, a.den)), den: product(a.den, b.den) };
}

/** a − b. */
export function minus(a: Exact, b: Exact): Exact {
  return plus(a, { num: product(b.num, -1), den: b.den });
}

/** a × b. */
export function times(a: Exact, b: Exact): Exact {
  return { num: product(a.num, b.num), den: product(a.den, b.den) };
}

/** a ÷ b, for b above nought. */
export function over(a: Exact, b: Exact): Exact {
  if (b.num <= 0) throw new Error(`Division by ${b.num}/${b.den}: the divisor must be above nought.`);
  return { num: product(a.num, b.den), den: product(a.den, b.num) };
}

/** The greatest whole number that is not above the value. */
function floorOf({ num, den }: Exact): number {
  if (typeof num === 'number' && typeof den === 'number') {
    // The rest is exact, and so is the quotient of what is left; a plain division may round up to a whole number.
    const rest = num % den;
    return (num - rest) / den - (rest < 0 ? 1 : 0);
  }
  const [bigNum, bigDen] = [BigInt(num), BigInt(den)];
  const quotient = bigNum / bigDen;
  return Number(bigNum < 0n && quotient * bigDen !== bigNum ? quotient - 1n : quotient);
}

/** The nearest whole number, halves upwards. */
export function roundHalfUp({ num, den }: Exact): number {
  return floorOf({ num: sum(product(2, num), den), den: product(2, den) }) + 0;
}

/** The least whole number that is not below the value. */
export function ceiling({ num, den }: Exact): number {
  return 0 - floorOf({ num: product(num, -1), den });
}

/** The value as an ordinary number, rounded half up to so many decimal places. */
export function decimalOf({ num, den }: Exact, places: number): number {
  const scale = 10 ** places;
  return roundHalfUp({ num: product(num, scale), den }) / scale;
}
