import type { Job } from '#model/job.ts';
import { circuitShapes } from '../../circuit/circuit-shapes.ts';
import { foundNetwork } from '../../circuit/found-network.ts';
import type { CircuitFit } from './circuit-fit.ts';
import { beforeConfidence } from './confidence.ts';
import type { Contradiction, InferredCircuit, InferredLeg } from './inferred-circuit.ts';
import { openConductors } from './loop-readings.ts';

/** As sure as this a reading must be before it contradicts what is recorded. */
const SURE = 0.8;
/** A recorded length may differ by so much besides the reading's own doubt, mm: drops and ends are measured differently. */
const ENDS_MM = 500;

/** What is recorded of the circuit, in points. */
interface Recorded {
  readonly ring: readonly string[];
  /** By spur point: the ring's point that the spur starts from; null where it starts elsewhere. */
  readonly parents: ReadonlyMap<string, string | null>;
}

type Told = Pick<InferredCircuit, 'points' | 'legs' | 'order' | 'loop'>;

/** Where the readings and the recorded cables differ; nothing where no cable is recorded. */
export function contradictions(
  job: Job,
  { circuitId, fit, told, labelOf }: Question,
): readonly Contradiction[] {
  const recorded = recordedOf(job, circuitId);
  return [
    ...notARing(fit, circuitId),
    ...orderDiffers(recorded, told, fit),
    ...roleDiffers(recorded, told, labelOf),
    ...parentDiffers(recorded, told, labelOf),
    ...lengthDiffers(job, told, labelOf),
    ...countDiffers(job, told, labelOf),
    ...cpcDiffers(job, circuitId, told),
  ];
}

/** What is compared. */
export interface Question {
  readonly circuitId: string;
  readonly fit: CircuitFit;
  readonly told: Told;
  readonly labelOf: (id: string) => string;
}

function recordedOf(job: Job, circuitId: string): Recorded {
  const network = foundNetwork(job);
  const shape = circuitShapes(job, network).get(circuitId);
  const pointOf = new Map(network.nodes.map(({ id, pointId }) => [id, pointId]));
  const ring = (shape?.ringNodes ?? []).flatMap((node) => pointOf.get(node) ?? []);
  const spurs = (shape?.spurs ?? []).flatMap(({ rootNode, accessoryNodes }) =>
    accessoryNodes.flatMap((node) => {
      const point = pointOf.get(node);
      return point == null ? [] : [[point, pointOf.get(rootNode) ?? null] as const];
    }),
  );
  return { ring, parents: new Map(spurs) };
}

function notARing({ readings }: CircuitFit, circuitId: string): readonly Contradiction[] {
  const open = openConductors(readings);
  if (open.length === 0) return [];
  const words = `${open.join(', ')} does not close from end to end: as read it is no ring.`;
  return [{ kind: 'not-a-ring', subjects: [circuitId], confidence: 0.95, words }];
}

function orderDiffers({ ring }: Recorded, { order }: Told, fit: CircuitFit): readonly Contradiction[] {
  const shared = new Set(order.points);
  const recorded = ring.filter((point) => shared.has(point));
  const read = order.points.filter((point) => recorded.includes(point));
  if (recorded.length < 2 || same(read, recorded)) return [];
  if (same(read, recorded.toReversed()))
    return [
      {
        kind: 'ends-swapped',
        subjects: read,
        confidence: order.confidence,
        words: 'The order is as recorded, but from the other end: ends A and B are swapped.',
      },
    ];
  const moved = outOfPlace(read, recorded);
  return [
    {
      kind: 'order',
      subjects: moved,
      confidence: otherWayConfidence(read, recorded, fit),
      words: 'By the readings the ring runs in another order than recorded.',
    },
  ];
}

/** How sure the readings are of the pair that most surely stands the other way round than recorded. */
function otherWayConfidence(
  read: readonly string[],
  recorded: readonly string[],
  { ring }: CircuitFit,
): number {
  const placed = new Map(ring.map((each) => [each.point.id, each.placed]));
  const sure = read.flatMap((first, i) =>
    read.slice(i + 1).flatMap((second) => {
      const [a, b] = [placed.get(first), placed.get(second)];
      const isOther = recorded.indexOf(first) > recorded.indexOf(second);
      return isOther && a !== undefined && b !== undefined ? [beforeConfidence(a, b)] : [];
    }),
  );
  return Math.max(0, ...sure);
}

const same = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((id, i) => id === b[i]);

/** The fewest points that have to be moved to bring one order into the other: those outside the longest run they share. */
function outOfPlace(read: readonly string[], recorded: readonly string[]): readonly string[] {
  const place = new Map(recorded.map((id, i) => [id, i]));
  const runs: { readonly length: number; readonly ids: readonly string[] }[] = [];
  read.forEach((id, i) => {
    let best: { readonly length: number; readonly ids: readonly string[] } = { length: 0, ids: [] };
    for (let k = 0; k < i; k += 1) {
      const before = runs[k];
      const isBefore = (place.get(read[k] ?? '') ?? -1) < (place.get(id) ?? -1);
      if (before !== undefined && isBefore && before.length > best.length) best = before;
    }
    runs.push({ length: best.length + 1, ids: [...best.ids, id] });
  });
  const longest = runs.toSorted((a, b) => b.length - a.length)[0]?.ids ?? [];
  return read.filter((id) => !longest.includes(id));
}

function roleDiffers(
  { ring, parents }: Recorded,
  { points }: Told,
  labelOf: Question['labelOf'],
): readonly Contradiction[] {
  return points.flatMap(({ point, role, confidence }): readonly Contradiction[] => {
    const isOther = (role === 'spur' && ring.includes(point)) || (role === 'ring' && parents.has(point));
    if (!isOther || confidence < SURE) return [];
    const words =
      role === 'spur'
        ? `${labelOf(point)} is recorded on the ring, and reads as a spur.`
        : `${labelOf(point)} is recorded on a spur, and reads as on the ring.`;
    return [{ kind: 'role', subjects: [point], confidence, words }];
  });
}

function parentDiffers(
  { parents }: Recorded,
  { points }: Told,
  labelOf: Question['labelOf'],
): readonly Contradiction[] {
  return points.flatMap(({ point, role, parents: read }): readonly Contradiction[] => {
    const recorded = parents.get(point);
    const [likely] = read;
    if (role !== 'spur' || recorded == null || likely === undefined) return [];
    if (likely.point === recorded || likely.confidence < SURE) return [];
    const words = `${labelOf(point)} is recorded as a spur from ${labelOf(recorded)}, and reads otherwise: ${likely.words}`;
    return [{ kind: 'parent', subjects: [point, recorded], confidence: likely.confidence, words }];
  });
}

function lengthDiffers(job: Job, { legs }: Told, labelOf: Question['labelOf']): readonly Contradiction[] {
  return legs.flatMap((leg): readonly Contradiction[] => {
    const recorded = job.legs.find((each) => joins(each, leg));
    const { lengthMm, plusMinusMm } = leg;
    if (recorded?.lengthMm === undefined || lengthMm === null || plusMinusMm === null) return [];
    if (Math.abs(recorded.lengthMm - lengthMm) <= plusMinusMm + ENDS_MM) return [];
    const name = (id: string | null): string => (id === null ? 'the board' : labelOf(id));
    const words = `${name(leg.from)} to ${name(leg.to)} is recorded with ${(recorded.lengthMm / 1000).toFixed(1)} m, and reads ${(lengthMm / 1000).toFixed(1)} m.`;
    return [{ kind: 'leg-length', subjects: [recorded.id], confidence: 0.95, words }];
  });
}

function joins({ from, to }: Job['legs'][number], leg: InferredLeg): boolean {
  const ends = [from, to].map((end) => ('point' in end ? end.point : null));
  return (ends[0] === leg.from && ends[1] === leg.to) || (ends[0] === leg.to && ends[1] === leg.from);
}

function countDiffers(job: Job, { points }: Told, labelOf: Question['labelOf']): readonly Contradiction[] {
  return points.flatMap(({ point, role, confidence }): readonly Contradiction[] => {
    const cables = job.points.find(({ id }) => id === point)?.asFound?.cablesSeen ?? 0;
    if (role !== 'spur' || cables < 2 || confidence < SURE) return [];
    const words = `${cables} cables were counted at ${labelOf(point)}, and it reads as a spur: a spur may go on from there, or contact is poor.`;
    return [{ kind: 'cable-count', subjects: [point], confidence, words }];
  });
}

function cpcDiffers(job: Job, circuitId: string, { loop }: Told): readonly Contradiction[] {
  const sizes = new Set(
    job.legs.flatMap(({ circuit, cable }) => (circuit === circuitId && cable ? [cable.cpcMm2] : [])),
  );
  if (loop.cpc === null || sizes.size === 0 || sizes.has(loop.cpc.areaMm2)) return [];
  const { areaMm2, confidence } = loop.cpc;
  const words = `Recorded with a protective conductor of ${[...sizes].join(' or ')} mm², and reads like ${areaMm2} mm².`;
  return [{ kind: 'cpc-size', subjects: [circuitId], confidence, words }];
}
