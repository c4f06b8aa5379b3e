/** A number as a fraction of whole numbers, so that sums of money never pass through binary fractions. */
export interface Exact {
  readonly num: bigint;
  /** Always above nought. */
  readonly den: bigint;
}

/** A number as a person wrote it: the shortest decimal that reads back as it. Finite numbers only. */
export function exactOf(value: number): Exact {
  const [mantissa = '0', exponent = '0'] = String(value).split('e');
  const [whole = '0', decimals = ''] = mantissa.split('.');
  const digits = BigInt(whole + decimals);
  const shift = Number(exponent) - decimals.length;
  return shift >= 0
    ? { num: digits * 10n ** BigInt(shift), den: 1n }
    : { num: digits, den: 10n ** BigInt(-shift) };
}

/** Nought, to start sums with. */
export const exactZero: Exact = { num: 0n, den: 1n };

/** a + b. */
export function plus(a: Exact, b: Exact): Exact {
  // Decimals mostly have one denominator dividing the other's: so sums of many do not grow theirs.
  if (a.den % b.den === 0n) return { num: a.num + b.num * (a.den / b.den), den: a.den };
  if (b.den % a.den === 0n) return { num: a.num * (b.den / a.den) + b.num, den: b.den };
  return { num: a.num * b.den + b.num * a.den, den: a.den * b.den };
}

/** a − b. */
export function minus(a: Exact, b: Exact): Exact {
  return plus(a, { num: -b.num, den: b.den });
}

/** a × b. */
export function times(a: Exact, b: Exact): Exact {
  return { num: a.num * b.num, den: a.den * b.den };
}

/** a ÷ b, for b above nought. */
export function over(a: Exact, b: Exact): Exact {
  if (b.num <= 0n) throw new Error(`Division by ${b.num}/${b.den}: the divisor must be above nought.`);
  return { num: a.num * b.den, den: a.den * b.num };
}

/** The greatest whole number that is not above the value. */
function floorOf({ num, den }: Exact): bigint {
  const quotient = num / den;
  return num < 0n && quotient * den !== num ? quotient - 1n : quotient;
}

/** The nearest whole number, halves upwards. */
export function roundHalfUp(value: Exact): number {
  return Number(floorOf({ num: 2n * value.num + value.den, den: 2n * value.den }));
}

/** The least whole number that is not below the value. */
export function ceiling({ num, den }: Exact): number {
  return Number(-floorOf({ num: -num, den }));
}

/** The value as an ordinary number, rounded half up to so many decimal places. */
export function decimalOf(value: Exact, places: number): number {
  const scale = 10n ** BigInt(places);
  return roundHalfUp({ num: value.num * scale, den: value.den }) / Number(scale);
}
