import type { NetworkEdge } from '../circuit/network.ts';
import type { CircuitShape, NodePlace } from '../circuit/shape.ts';
import { fuseCarries } from '../proof/fuse-carries.ts';
import { NOMINAL_V } from '../proof/spur-load.ts';
import { deviceMoved } from './device-moved.ts';
import type { Facts } from './facts.ts';
import { installedCapacity } from './installed-capacity.ts';
import { cablesJudged } from './judged-cables.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, nameOf, pointOfNode, rounded, type Wiring, wiringOf } from './wiring.ts';

type Message = 'within' | 'over' | 'unknown' | 'together';

/** A fixed load is no more than every cable, fuse and device before it carries. */
export const fixedLoadWithin = rule<Message>({
  id: 'FL2',
  title: 'Fixed load on its circuit',
  source: 'BS 7671 433.1.1 and 533; which loads run together is a matter of use (common practice)',
  messages: {
    within: '{name} draws {actual} A; of all that feeds it, {what} carries least, {limit} A.',
    over: '{name} draws {actual} A, and {what} carries {limit} A.',
    unknown: '{name} draws {actual} A; what {what} carries is not known.',
    together:
      'The fixed loads named on {circuit} draw {actual} A when they run together, and {what} is {limit} A.',
  },
  remedies: {
    over: 'A circuit of its own for it, with a cable and a device that carry its load.',
    unknown: 'Tell how the cable lies and what the device is.',
    together: 'A circuit of its own for the largest of them, or a recorded decision on what runs together.',
  },
  couldFail: true,
  check: (facts) => {
    const wiring = wiringOf(facts);
    return cablesJudged(facts, (shape) => {
      const loads = fixedLoads(facts, shape, wiring);
      return [...loads.map((load) => judged(facts, wiring, load)), ...togetherJudged(facts, shape, loads)];
    });
  },
});

interface FixedLoad {
  readonly pointId: string;
  readonly watts: number;
  /** Where it hangs: at a fused unit behind the fuse. */
  readonly place: NodePlace;
  readonly isNew: boolean;
}

function fixedLoads(facts: Facts, shape: CircuitShape, { nodes }: Wiring): readonly FixedLoad[] {
  const loads = new Map<string, FixedLoad>();
  for (const place of shape.places) {
    const node = nodes.get(place.nodeId);
    const point = pointOfNode(facts, node);
    if (node === undefined || !point?.load?.fixed || place.role === 'unreached') continue;
    const behindItsFuse = node.kind === 'load-terminals' && point.kind === 'fused-unit';
    if (loads.has(point.id) && !behindItsFuse) continue;
    loads.set(point.id, {
      pointId: point.id,
      watts: point.load.watts,
      place,
      isNew: node.state === 'new',
    });
  }
  return [...loads.values()];
}

/** Something that a load's current passes. */
interface Passed {
  readonly kind: 'cable' | 'fuse' | 'device';
  readonly what: string;
  /** Null where it is not known. */
  readonly limitA: number | null;
  readonly isOver: boolean;
  readonly isOfScheme: boolean;
}

function judged(facts: Facts, wiring: Wiring, load: FixedLoad): CheckResult<Message> {
  const passed = passedBy(facts, wiring, load);
  const name = nameOf(facts, load.place.nodeId);
  const actual = rounded(load.watts / NOMINAL_V);
  const tell = (by: Passed | undefined) => ({
    subjectId: load.pointId,
    origin: load.isNew || by?.isOfScheme ? ('scheme' as const) : ('found' as const),
    actual,
    ...(by?.limitA ? { limit: by.limitA } : {}),
    unit: 'A',
    values: { name, actual, what: by?.what ?? '', limit: by?.limitA ?? 0 },
  });
  const limited = passed
    .filter(({ limitA }) => limitA !== null)
    .toSorted((a, b) => (a.limitA ?? 0) - (b.limitA ?? 0));
  const [least] = limited;
  const over = limited.filter(({ isOver }) => isOver);
  // What the scheme brings is named before what was there, so that its own part is never hidden.
  const worst = over.find(({ isOfScheme }) => isOfScheme) ?? over[0];
  if (worst !== undefined) return { ...tell(worst), outcome: 'fails', messageId: 'over' };
  const untold = passed.find(({ limitA }) => limitA === null);
  return untold === undefined
    ? { ...tell(least), outcome: 'passes', messageId: 'within' }
    : { ...tell(untold), outcome: 'not-proven', messageId: 'unknown' };
}

/** Everything between a load and the board, from the load on; of cable found, only what is known to be short. */
function passedBy(facts: Facts, { places, edges }: Wiring, load: FixedLoad): readonly Passed[] {
  const passed: Passed[] = [];
  const seen = new Set<string>();
  for (let place: NodePlace | undefined = load.place; place && !seen.has(place.nodeId); ) {
    seen.add(place.nodeId);
    const edge = edges.get(place.upstreamEdgeId ?? '');
    if (edge)
      passed.push(...(edge.kind === 'fuse' ? fusePassed(facts, edge, load) : cablePassed(facts, edge, load)));
    place = places.get(place.upstreamNode ?? '');
  }
  // Behind a fuse the load cannot reach what an unseen device carries.
  const device = devicePassed(facts, load);
  const isFused = passed.some(({ kind }) => kind === 'fuse');
  return device.limitA === null && isFused ? passed : [...passed, device];
}

/** A fuse that nobody read is told by the rule of fuses. */
function fusePassed(facts: Facts, edge: NetworkEdge, { watts }: FixedLoad): readonly Passed[] {
  const unit = facts.things.fusedUnits.find(({ loadNode }) => loadNode === edge.to);
  const limitA = unit?.fuseA ?? edge.fuseA;
  if (limitA === null) return [];
  const isOver = fuseCarries(watts, limitA) === 'over';
  return [{ kind: 'fuse', what: 'the fuse', limitA, isOver, isOfScheme: edge.state === 'new' }];
}

function cablePassed(facts: Facts, edge: NetworkEdge, { watts }: FixedLoad): readonly Passed[] {
  const { verdict, izA, how, isCrowded } = installedCapacity(facts, edge, watts / NOMINAL_V);
  if (edge.state === 'found' && verdict !== 'short' && !isCrowded) return [];
  const cable = `the cable ${nameOf(facts, edge.from)} – ${nameOf(facts, edge.to)}`;
  const what = how === '' ? cable : `${cable} (${how})`;
  const isOfScheme = edge.state === 'new' || isCrowded;
  return [{ kind: 'cable', what, limitA: izA, isOver: verdict === 'short', isOfScheme }];
}

function devicePassed(facts: Facts, { watts, place }: FixedLoad): Passed {
  const { circuitId } = place;
  const circuit = facts.proposed.circuits.find(({ id }) => id === circuitId);
  const limitA = circuit?.device?.ratingA ?? null;
  const isOver = limitA !== null && watts / NOMINAL_V > limitA;
  const isOfScheme = circuit?.isNew === true || deviceMoved(facts, circuitId) === 'down';
  return {
    kind: 'device',
    what: `the device of ${circuitName(facts, circuitId)}`,
    limitA,
    isOver,
    isOfScheme,
  };
}

/** All fixed loads of a circuit against its device, once a circuit, where only together they are too much. */
function togetherJudged(
  facts: Facts,
  { circuitId }: CircuitShape,
  loads: readonly FixedLoad[],
): readonly CheckResult<Message>[] {
  const device = facts.proposed.circuits.find(({ id }) => id === circuitId)?.device;
  const totalA = loads.reduce((sum, { watts }) => sum + watts, 0) / NOMINAL_V;
  if (!device || loads.length < 2 || totalA <= device.ratingA) return [];
  const circuit = circuitName(facts, circuitId);
  const figures = { actual: rounded(totalA), limit: device.ratingA };
  const isOfScheme = loads.some(({ isNew }) => isNew) || deviceMoved(facts, circuitId) === 'down';
  return [
    {
      outcome: 'decide',
      messageId: 'together',
      subjectId: circuitId,
      origin: isOfScheme ? 'scheme' : 'found',
      ...figures,
      unit: 'A',
      values: { circuit, what: `the device of ${circuit}`, ...figures },
    },
  ];
}
