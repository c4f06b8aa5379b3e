/** The middle value; of an even number of them the upper of the two in the middle. NaN of none. */
export const medianOf = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** The value that such a share of all lie at or below. NaN of none. */
export const shareOf = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.max(0, Math.ceil(share * values.length) - 1)] ?? Number.NaN;

/**
 * The exponent e of time ~ size^e: the slope of the straight line nearest to the logarithms, by least squares.
 *
 * @param samples of at least two sizes; sizes and times above 0.
 */
export function growthExponent(samples: readonly { readonly size: number; readonly ms: number }[]): number {
  const points = samples.map(({ size, ms }) => ({ x: Math.log(size), y: Math.log(ms) }));
  const mean = (pick: (point: { x: number; y: number }) => number): number =>
    points.reduce((sum, point) => sum + pick(point), 0) / points.length;
  const [x, y] = [mean((point) => point.x), mean((point) => point.y)];
  const across = points.reduce((sum, point) => sum + (point.x - x) * (point.y - y), 0);
  return across / points.reduce((sum, point) => sum + (point.x - x) ** 2, 0);
}

/** The time of the clock or of the processor, whichever is less: what else the machine does counts in neither. */
export function timed<R>(work: () => R): { readonly ms: number; readonly result: R } {
  const used = process.cpuUsage();
  const start = performance.now();
  const result = work();
  const clockMs = performance.now() - start;
  const { user, system } = process.cpuUsage(used);
  return { ms: Math.min(clockMs, (user + system) / 1000), result };
}

/** The same of what answers later. */
export async function timedLater<R>(
  work: () => Promise<R>,
): Promise<{ readonly ms: number; readonly result: R }> {
  const used = process.cpuUsage();
  const start = performance.now();
  const result = await work();
  const clockMs = performance.now() - start;
  const { user, system } = process.cpuUsage(used);
  return { ms: Math.min(clockMs, (user + system) / 1000), result };
}
