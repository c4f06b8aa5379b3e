import { droppedCables } from '../connections/dropped-cables.ts';
import type { CableJoint } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import type { Demand } from './demand.ts';

/** Sleeve over one crimp, m. Common practice, no source. */
const SLEEVE_M = 0.1;

/** New joints by their make, the screws that fix their boxes, and what closes off the ends of cables that go out of use. */
export function jointDemands(worked: Worked): readonly Demand[] {
  return [
    ...worked.things.joints
      .filter((joint) => joint.state === 'new')
      .flatMap((joint) => [...partsOf(joint), ...enclosureOf(joint)]),
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

function partsOf(joint: CableJoint): Demand[] {
  const { kind, ratingA, cables, conductorAreaMm2 } = joint;
  switch (kind) {
    case 'maintenance-free':
      return [part(joint, ratingA <= 20 ? 'joint-mf-20-4' : 'joint-mf-32-3', 1)];
    case 'screw':
      return [part(joint, `joint-screw-${ratingA <= 20 ? 20 : ratingA <= 30 ? 30 : 60}`, 1)];
    case 'lever':
      return [leverConnectors(joint)];
    case 'crimp': {
      const crimps = 3 * Math.max(1, cables - 1);
      const item = conductorAreaMm2 <= 2.5 ? 'crimp-2.5' : 'crimp-6';
      const sleeve: Demand = { ...part(joint, 'heat-shrink', crimps * SLEEVE_M), unit: 'm' };
      return [part(joint, item, crimps), sleeve];
    }
  }
}

/** Ways of lever connectors as they are sold, and the largest conductor of the smaller body, mm². Makers' ranges, from memory. */
const LEVER_WAYS = [2, 3, 5] as const;
const SMALL_LEVER_MM2 = 4;

/** How many connectors one conductor of every cable wants, and of how many ways. */
interface Levers {
  readonly ways: number;
  readonly count: number;
}

/**
 * The connectors for one conductor of so many cables: the smallest that has a way for each. Past the largest they are linked:
 * each link takes a way of both, so that n of five ways hold 3n + 2.
 */
export function leversFor(cables: number): Levers {
  const ways = LEVER_WAYS.find((each) => each >= cables);
  return ways === undefined ? { ways: 5, count: Math.ceil((cables - 2) / 3) } : { ways, count: 1 };
}

/** Line, neutral and protective conductor each have their own; thicker conductors want the larger body. */
function leverConnectors(joint: CableJoint): Demand {
  const { ways, count } = leversFor(joint.cables);
  const body = joint.conductorAreaMm2 > SMALL_LEVER_MM2 ? '6-' : '';
  return part(joint, `lever-${body}${ways}`, 3 * count);
}

/** Cables that the usual enclosure takes through its clamps and has room for; more want the large one. Common practice, no source. */
const CABLES_IN_ENCLOSURE = 3;

/** Connectors and crimps want an enclosure unless they stay in an accessory's box; boxes want two screws. */
function enclosureOf(joint: CableJoint): Demand[] {
  if (joint.lies === 'box') return [];
  const isBare = joint.kind === 'lever' || joint.kind === 'crimp';
  const screws: Demand = { ...part(joint, 'screw-wood-4x25', 2), group: 'fixings' };
  const size = joint.cables > CABLES_IN_ENCLOSURE ? '-large' : '';
  return isBare ? [part(joint, `joint-enclosure${size}`, 1), screws] : [screws];
}
