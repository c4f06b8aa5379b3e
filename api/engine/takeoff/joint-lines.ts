import { droppedCables } from '../connections/dropped-cables.ts';
import type { CableJoint } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import type { Demand } from './demand.ts';
import type { KitCounts, Sold } from './kit-counts.ts';

/** New joints by their make, the screws that fix their boxes, and what closes off the ends of cables that go out of use. */
export function jointDemands(worked: Worked, counts: KitCounts): readonly Demand[] {
  return [
    ...worked.things.joints
      .filter((joint) => joint.state === 'new')
      .flatMap((joint) => [...partsOf(joint, counts), ...enclosureOf(joint, counts)]),
    ...parkedEnds(worked),
  ];
}

/** Both ends of a dropped cable get a connector each, so that none is bare in a box. Common practice, no source. */
function parkedEnds(worked: Worked): readonly Demand[] {
  return droppedCables(worked).map(({ at, goneIds }) => ({
    ...{ item: 'connector-block', unit: 'each', group: 'joints', measured: 2 },
    causes: [...new Set([...(at?.pointId == null ? [] : [at.pointId]), ...goneIds])].toSorted(),
  }));
}

function part(joint: CableJoint, item: string, measured: number): Demand {
  return { item, unit: 'each', group: 'joints', measured, causes: [joint.id] };
}

function partsOf(joint: CableJoint, counts: KitCounts): Demand[] {
  const { kind, ratingA, cables, conductorAreaMm2 } = joint;
  switch (kind) {
    case 'maintenance-free':
      return [part(joint, ratingA <= 20 ? 'joint-mf-20-4' : 'joint-mf-32-3', 1)];
    case 'screw':
      return [part(joint, `joint-screw-${ratingA <= 20 ? 20 : ratingA <= 30 ? 30 : 60}`, 1)];
    case 'lever':
      return [leverConnectors(joint, counts)];
    case 'crimp': {
      const crimps = 3 * Math.max(1, cables - 1);
      const item = conductorAreaMm2 <= 2.5 ? 'crimp-2.5' : 'crimp-6';
      const sleeve: Demand = {
        ...part(joint, 'heat-shrink', (crimps * counts.crimpSleeveMm) / 1e3),
        unit: 'm',
      };
      return [part(joint, item, crimps), sleeve];
    }
  }
}

/** How many connectors one conductor of every cable wants, and of how many ways. */
interface Levers {
  readonly ways: number;
  readonly count: number;
}

/** The fewest ways that connectors can be linked by: one of either side, and one for a cable. */
const LINKABLE_WAYS = 3;

/**
 * The connectors for one conductor of so many cables: the smallest bought that has a way for each. Past the largest they are
 * linked: each link takes a way of both, so that n of w ways hold n (w − 2) + 2. Two-way ones cannot be linked on, so where
 * nothing larger is bought it is three-way ones all the same.
 */
export function leversFor(cables: number, { leverWays }: Pick<Sold, 'leverWays'>): Levers {
  const fitting = leverWays.find((each) => each >= cables);
  if (fitting !== undefined) return { ways: fitting, count: 1 };
  const ways = Math.max(LINKABLE_WAYS, ...leverWays);
  return { ways, count: Math.max(1, Math.ceil((cables - 2) / (ways - 2))) };
}

/** Line, neutral and protective conductor each have their own; thicker conductors want the larger body. */
function leverConnectors(joint: CableJoint, { leverMostMm2, sold }: KitCounts): Demand {
  const { ways, count } = leversFor(joint.cables, sold);
  const body = joint.conductorAreaMm2 > leverMostMm2 ? '6-' : '';
  return part(joint, `lever-${body}${ways}`, 3 * count);
}

/** Connectors and crimps want an enclosure unless they stay in an accessory's box; boxes want two screws. */
function enclosureOf(joint: CableJoint, { enclosureCables }: KitCounts): Demand[] {
  if (joint.lies === 'box') return [];
  const isBare = joint.kind === 'lever' || joint.kind === 'crimp';
  const screws: Demand = { ...part(joint, 'screw-wood-4x25', 2), group: 'fixings' };
  const size = joint.cables > enclosureCables ? '-large' : '';
  return isBare ? [part(joint, `joint-enclosure${size}`, 1), screws] : [screws];
}
