import type { Joint } from '#model/installation.ts';
import type { CableJoint, JointCapacity } from './things.ts';

type Usual = Omit<JointCapacity, 'isFromSheet'>;

/** Cables that a maintenance-free box takes: two under the clamp at either end. */
const CABLES_IN_BOX = 4;

/**
 * Makers' ranges of maintenance-free boxes: 0.5 to 4 mm², one or two cables under each of two clamps. Source: trade press,
 * https://modbs.co.uk/news/archivestory.php/aid/5054/Maintenance-free_junction_boxes_meet_requirements_of_Wiring_Regulations.html.
 */
const maintenanceFree: Usual = { cables: CABLES_IN_BOX, conductorMm2: 4, areaMm2: null };
/** The larger body of lever connectors; linked they have a way for every cable. From memory. */
const lever: Usual = { cables: null, conductorMm2: 6, areaMm2: null };
/** Butt crimps, yellow: one conductor from either side. From memory. */
const crimp: Usual = { cables: 2, conductorMm2: 6, areaMm2: null };
/** Screw boxes by their rating: 20, 30 and 60 A. From memory. */
const screw20: Usual = { cables: 4, conductorMm2: 4, areaMm2: 8 };
const screw30: Usual = { cables: 4, conductorMm2: 6, areaMm2: 12 };
const screw60: Usual = { cables: 4, conductorMm2: 16, areaMm2: 32 };

function usualOf({ kind, ratingA }: Pick<Joint, 'kind' | 'ratingA'>): Usual {
  switch (kind) {
    case 'maintenance-free':
      return maintenanceFree;
    case 'lever':
      return lever;
    case 'crimp':
      return crimp;
    case 'screw':
      return ratingA <= 20 ? screw20 : ratingA <= 30 ? screw30 : screw60;
  }
}

/** What a joint takes: as its maker says where the job tells, else as its kind and rating usually do. */
export function jointCapacity({
  kind,
  ratingA,
  takes = {},
}: Pick<Joint, 'kind' | 'ratingA' | 'takes'>): JointCapacity {
  const usual = usualOf({ kind, ratingA });
  const isFromSheet = takes.cables !== undefined || takes.mm2 !== undefined;
  return {
    cables: takes.cables ?? usual.cables,
    conductorMm2: takes.mm2 ?? usual.conductorMm2,
    // Who gives a sheet's figures has looked; what is usual in all of a terminal then says nothing.
    areaMm2: isFromSheet ? null : usual.areaMm2,
    isFromSheet,
  };
}

type Held = Pick<CableJoint, 'cables' | 'conductorAreaMm2' | 'areaMm2'>;

/** Whether a joint of some capacity holds what meets in it; an area that is not known is taken to fit. */
export const takesAll = (takes: JointCapacity, { cables, conductorAreaMm2, areaMm2 }: Held): boolean =>
  (takes.cables === null || cables <= takes.cables) &&
  conductorAreaMm2 <= takes.conductorMm2 &&
  (takes.areaMm2 === null || areaMm2 === null || areaMm2 <= takes.areaMm2);

/** The joint that would usually hold what meets there, the smallest first; null where none of these does. */
export function jointFor(held: Held): Pick<Joint, 'kind' | 'ratingA'> | null {
  const kinds = [
    { kind: 'maintenance-free', ratingA: 32 },
    { kind: 'lever', ratingA: 32 },
    { kind: 'screw', ratingA: 60 },
  ] as const;
  return kinds.find((each) => takesAll(jointCapacity(each), held)) ?? null;
}
