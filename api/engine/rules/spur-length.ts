import type { UnfusedSpur } from '../circuit/shape.ts';
import { proofCircuit } from '../proof/proof-circuit.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { nameOf, pointOfNode, touchedShapes, wiringOf } from './wiring.ts';

/** Part of the way to the furthest point of the ring that an unfused spur is long at most. Source: IET On-Site Guide 7.2.2 (a rule of thumb). */
const SPUR_RATIO = 1 / 8;

/** Unfused spurs stay short against the ring that they hang from. */
export const spurLength = rule<'long'>({
  id: 'SP6',
  title: 'Length of unfused spurs',
  source: 'IET On-Site Guide 7.2.2, a rule of thumb',
  messages: {
    long: 'The spur to {name} is {actual} m long; a rule of thumb allows {limit} m there, an eighth of the way from {from} to the furthest point of the ring. The volt drop is worked out apart.',
  },
  remedies: { long: 'Nothing, where the volt drop is within its limit.' },
  couldFail: false,
  check: (facts) =>
    touchedShapes(facts)
      .filter(({ shape }) => shape === 'ring')
      .flatMap(({ spurs, circuitId }) => {
        const ways = wayToFurthestMm(facts, circuitId);
        return ways === null ? [] : spurs.flatMap((spur) => judged(facts, spur, ways));
      }),
});

interface Ways {
  /** From each node of the ring, and from the origin, along the cable to the ring's furthest point, mm. */
  readonly toFurthestMm: ReadonlyMap<string, number>;
  readonly legMm: ReadonlyMap<string, number>;
}

/** Null where some length of the ring is not known. */
function wayToFurthestMm(facts: Facts, circuitId: string): Ways | null {
  const circuit = proofCircuit(facts, circuitId);
  if (circuit === null || circuit.withoutLength.length > 0) return null;
  const legMm = new Map(circuit.legs.map(({ id, lengthMm }) => [id, lengthMm]));
  const lengths = circuit.shape.ringEdges.map(({ id }) => legMm.get(id) ?? 0);
  const wholeMm = lengths.reduce((sum, mm) => sum + mm, 0);
  const toFurthestMm = new Map([[circuitId, wholeMm / 2]]);
  let fromAMm = 0;
  circuit.shape.ringNodes.forEach((node, i) => {
    fromAMm += lengths[i] ?? 0;
    toFurthestMm.set(node, Math.abs(wholeMm / 2 - fromAMm));
  });
  return { toFurthestMm, legMm };
}

/** A fused unit, whether a point of the job or brought along by a connection: what is beyond it has its fuse. */
function isUnit(facts: Facts, nodeId: string): boolean {
  const node = wiringOf(facts).nodes.get(nodeId);
  const point = pointOfNode(facts, node);
  return point === undefined ? node?.connectionId != null : point.kind === 'fused-unit';
}

function judged(facts: Facts, spur: UnfusedSpur, ways: Ways): readonly CheckResult<'long'>[] {
  const wayMm = ways.toFurthestMm.get(spur.rootNode);
  const lengthMm = spur.edgeIds.reduce((sum, id) => sum + (ways.legMm.get(id) ?? 0), 0);
  const isFused = spur.accessoryNodes.every((id) => isUnit(facts, id));
  if (wayMm === undefined || isFused || lengthMm <= wayMm * SPUR_RATIO) return [];
  const inMetres = (mm: number): number => Math.round(mm / 10) / 100;
  const last = spur.accessoryNodes.at(-1) ?? spur.jointNodes.at(-1) ?? spur.rootNode;
  return [
    {
      outcome: 'advice',
      messageId: 'long',
      subjectId: wiringOf(facts).nodes.get(last)?.pointId ?? last,
      origin: spur.isNew ? 'scheme' : 'found',
      actual: inMetres(lengthMm),
      limit: inMetres(wayMm * SPUR_RATIO),
      unit: 'm',
      values: { name: nameOf(facts, last), from: nameOf(facts, spur.rootNode) },
    },
  ];
}
