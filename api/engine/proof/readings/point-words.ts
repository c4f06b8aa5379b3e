import type { InferredParent, InferredPoint } from './inferred-circuit.ts';

/** What a point's readings are told from, before the words. */
export type UntoldPoint = Omit<InferredPoint, 'words' | 'confidence'>;

const metres = (mm: number): string => `${(mm / 1000).toFixed(1)} m`;

/** What the readings say of a point, in words; never that it may carry a spur. */
export function pointWords(point: UntoldPoint, labelOf: (id: string) => string): string {
  const { role, alongMm } = point;
  const where = alongMm === null ? '' : `, ${metres(alongMm)} from end A`;
  if (role === 'ring') return ringWords(point, where);
  if (role === 'spur') return `${spurWords(point)}${parentWords(point.parents, labelOf)}${where}.`;
  if (point.spurConfidence === null) return 'These readings do not tell where it is.';
  return `${spurWords(point)}, or on the ring: these readings do not decide${where}; open the plate and count cables.`;
}

function ringWords({ by }: UntoldPoint, where: string): string {
  if (by === 'cables') return `On the ring by the cables counted at its plate${where}.`;
  if (by === 'both') return `On the ring by these readings and the cables counted${where}.`;
  return `On the ring by these readings${where}; open the plate and count cables.`;
}

function spurWords({ spurMm, contactMilliohm, by }: UntoldPoint): string {
  if (spurMm === null) return 'On a spur';
  const orContact =
    contactMilliohm === null || by !== 'readings' ? '' : `, or poor contact of ${contactMilliohm} mΩ`;
  return `Spur of ${metres(spurMm)}${orContact}`;
}

function parentWords(parents: readonly InferredParent[], labelOf: (id: string) => string): string {
  const [first] = parents;
  if (first === undefined) return '';
  return first.point === null ? ', by a joint in a cable' : `, most likely from ${labelOf(first.point)}`;
}
