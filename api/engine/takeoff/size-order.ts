/**
 * Orders item ids by their characters, but numbers in them by size: `cable-flat-2.5-1.5` before `cable-flat-10-4`. The
 * same on every machine; for `toSorted`.
 */
export function inSizeOrder(a: string, b: string): number {
  const [partsA, partsB] = [partsOf(a), partsOf(b)];
  for (let i = 0; i < Math.min(partsA.length, partsB.length); i += 1) {
    const order = byPart(partsA[i] ?? '', partsB[i] ?? '');
    if (order !== 0) return order;
  }
  return partsA.length - partsB.length || byPart(a, b);
}

/** Words and numbers in turn. */
const partsOf = (id: string): readonly string[] => id.split(/(\d+(?:\.\d+)?)/);

function byPart(a: string, b: string): number {
  const [sizeA, sizeB] = [Number(a), Number(b)];
  if (a !== '' && b !== '' && sizeA !== sizeB && !Number.isNaN(sizeA) && !Number.isNaN(sizeB))
    return sizeA - sizeB;
  return a === b ? 0 : a < b ? -1 : 1;
}
