import type { CableJoint } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import type { Demand } from './demand.ts';

/** Sleeve over one crimp, m. Common practice, no source. */
const SLEEVE_M = 0.1;

/** New joints by their make, and the screws that fix their boxes. */
export function jointDemands({ things }: Worked): readonly Demand[] {
  return things.joints
    .filter((joint) => joint.state === 'new')
    .flatMap((joint) => [...partsOf(joint), ...enclosureOf(joint)]);
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
      // Line, neutral and protective conductor each have their own.
      return [part(joint, `lever-${cables <= 2 ? 2 : cables === 3 ? 3 : 5}`, 3)];
    case 'crimp': {
      const crimps = 3 * Math.max(1, cables - 1);
      const item = conductorAreaMm2 <= 2.5 ? 'crimp-2.5' : 'crimp-6';
      const sleeve: Demand = { ...part(joint, 'heat-shrink', crimps * SLEEVE_M), unit: 'm' };
      return [part(joint, item, crimps), sleeve];
    }
  }
}

/** Connectors and crimps want an enclosure unless they stay in an accessory's box; boxes want two screws. */
function enclosureOf(joint: CableJoint): Demand[] {
  if (joint.lies === 'box') return [];
  const isBare = joint.kind === 'lever' || joint.kind === 'crimp';
  const screws: Demand = { ...part(joint, 'screw-wood-4x25', 2), group: 'fixings' };
  return isBare ? [part(joint, 'joint-enclosure', 1), screws] : [screws];
}
