import type { InferredPoint, Undecidable } from './inferred-circuit.ts';

/** What these readings cannot tell however finely they are taken; nothing where nothing is placed. */
export function undecidable(
  points: readonly InferredPoint[],
  labelOf: (id: string) => string,
): readonly Undecidable[] {
  const spurs = points.filter(({ role, fraction }) => role === 'spur' && fraction !== null);
  return [
    ...spurs.flatMap((spur) => tapOrJoint(spur, labelOf)),
    ...chained(spurs, labelOf),
    ...hidden(points),
  ];
}

function tapOrJoint(
  { point, parents }: InferredPoint,
  labelOf: (id: string) => string,
): readonly Undecidable[] {
  const [likely] = parents;
  if (likely?.point == null) return [];
  const words = `Whether ${labelOf(point)} is joined at ${labelOf(likely.point)} or at a joint beside it reads the same.`;
  return [{ kind: 'tap-or-joint', points: [point, likely.point], words }];
}

/** Spurs that leave the ring at the same place, as far as it is known. */
function chained(spurs: readonly InferredPoint[], labelOf: (id: string) => string): readonly Undecidable[] {
  return spurs.flatMap((spur, i) =>
    spurs.slice(i + 1).flatMap((other): readonly Undecidable[] => {
      const apart = Math.abs((spur.fraction ?? 0) - (other.fraction ?? 0));
      if (apart > (spur.fractionPlusMinus ?? 0) + (other.fractionPlusMinus ?? 0)) return [];
      const words = `Whether ${labelOf(spur.point)} and ${labelOf(other.point)} are one after the other on one spur, or on two, these readings do not tell.`;
      return [{ kind: 'chained-or-separate', points: [spur.point, other.point], words }];
    }),
  );
}

function hidden(points: readonly InferredPoint[]): readonly Undecidable[] {
  if (points.every(({ fraction }) => fraction === null)) return [];
  const words =
    'A point or joint that nobody knows of, and spurs back to back at one plate, do not show in these readings.';
  return [{ kind: 'hidden-point', points: [], words }];
}
