import type { Plan } from '../plan/plan.ts';
import type { Segment } from '../ways/run.ts';

/** Reference methods that a figure is held for. */
export type ReferenceMethod = 'C' | 'A' | 'B' | '100' | '101' | '102' | '103';

/** How a stretch of cable is installed, as far as it counts for what the cable may carry. */
export interface Installed {
  readonly method: ReferenceMethod;
  /** True where thermal insulation lies all round the cable. */
  readonly surrounded: boolean;
}

/** Insulation above a ceiling up to which method 100 counts, mm; beyond it is method 101. */
const METHOD_100_INSULATION_MM = 100;

/**
 * The reference method of one stretch, from its medium, tube and insulation.
 *
 * @returns null where it cannot be told (a stud wall or a loft of unknown insulation) or where no figure for
 *   flat twin cable is held (in the ground).
 * Source: BS 7671 Table 4A2 and the notes of Table 4D5. Common practice: capping is no tube, so cable capped
 * in plaster is C. Hollows without insulation are taken as B (Table 4A2 on building voids, from memory) and not
 * as C: a clip on a joist may be C, but nobody sees it. A floor void that nobody described is taken as 100,
 * as under up to 100 mm of insulation.
 */
export function installedMethod(segment: Segment, plan: Plan): Installed | null {
  // An insulated stud wall has methods of its own, which hold for a short stretch as well.
  if (segment.insulation === 'surrounded' && segment.medium !== 'stud-cavity')
    return { method: 'C', surrounded: true };
  const method = openMethod(segment, plan);
  return method === null ? null : { method, surrounded: false };
}

const inTube = (segment: Segment): boolean =>
  segment.containment === 'oval' || segment.containment === 'conduit' || segment.containment === 'channel';

function openMethod(segment: Segment, plan: Plan): ReferenceMethod | null {
  switch (segment.medium) {
    case 'wall-chase':
    case 'through-wall':
    case 'surface-clipped':
    case 'outside':
      return inTube(segment) ? 'B' : 'C';
    case 'surface-channel':
    case 'riser':
      return 'B';
    case 'stud-cavity':
      return studMethod(segment, plan);
    case 'void-along':
    case 'void-across':
    case 'void-open':
      return floorVoidMethod(segment, plan);
    case 'loft':
      return loftMethod(segment, plan);
    case 'buried':
      return null;
  }
}

function studMethod(segment: Segment, plan: Plan): ReferenceMethod | null {
  const insulated = segment.wallId === null ? undefined : plan.wallById.get(segment.wallId)?.wall.insulated;
  if (segment.insulation === 'none' || (segment.insulation === null && insulated === false)) return 'B';
  // A tube in an insulated wall keeps the cable off the inner face, which is what method A describes.
  if (segment.insulation === 'touching') return inTube(segment) ? 'A' : '102';
  if (segment.insulation === 'surrounded' || insulated === true) return inTube(segment) ? 'A' : '103';
  return null;
}

function floorVoidMethod(segment: Segment, plan: Plan): ReferenceMethod {
  const insulationMm = plan.storeyById.get(segment.storeyId)?.storey.floor.insulationMm;
  if (segment.insulation === 'none' || (segment.insulation === null && insulationMm === 0)) return 'B';
  if (insulationMm !== undefined) return byThickness(insulationMm);
  return segment.insulation === 'touching' ? '101' : '100';
}

function loftMethod(segment: Segment, plan: Plan): ReferenceMethod | null {
  const insulationMm = loftInsulationMm(segment.storeyId, plan);
  // In the open air of a loft, clipped to timber where it is seen.
  if (segment.insulation === 'none' || (segment.insulation === null && insulationMm === 0))
    return inTube(segment) ? 'B' : 'C';
  if (insulationMm !== undefined) return byThickness(insulationMm);
  return segment.insulation === 'touching' ? '101' : null;
}

/** The ceiling under the loft is of the storey named, or of the one below where the loft is a storey itself. */
function loftInsulationMm(storeyId: string, plan: Plan): number | undefined {
  const own = plan.storeyById.get(storeyId);
  if (own?.storey.ceiling.loft) return own.storey.ceiling.insulationMm;
  const below = own?.belowId ? plan.storeyById.get(own.belowId) : undefined;
  return below?.storey.ceiling.insulationMm;
}

const byThickness = (insulationMm: number): ReferenceMethod =>
  insulationMm > METHOD_100_INSULATION_MM ? '101' : '100';
