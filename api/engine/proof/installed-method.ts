import { isGuess } from '../plan/is-guess.ts';
import type { Plan } from '../plan/plan.ts';
import { planPoint } from '../plan/plane.ts';
import { rememberedOfTwo } from '../plan/remembered.ts';
import { surroundingsAt } from '../plan/surroundings.ts';
import type { Segment } from '../ways/run.ts';

/** Reference methods that a figure is held for. */
export type ReferenceMethod = 'C' | 'A' | 'B' | '100' | '101' | '102' | '103';

/** How a stretch of cable is installed, as far as it counts for what the cable may carry. */
export interface Installed {
  /** The method there; where the survey leaves several open, the strictest of them. */
  readonly method: ReferenceMethod;
  /** The kindest of those that the survey leaves open; absent where the method is told. */
  readonly kindest?: ReferenceMethod;
  /** True where thermal insulation lies all round the cable. */
  readonly surrounded: boolean;
}

/** Insulation above a ceiling up to which method 100 counts, mm; beyond it is method 101. */
const METHOD_100_INSULATION_MM = 100;

/**
 * The reference method of one stretch, from its medium, tube and insulation.
 *
 * @returns null where it cannot be told (a stud wall or a loft of unknown insulation) or where no figure for
 *   flat twin cable is held (in the ground). A floor void of unknown insulation has a band of methods.
 * Source: BS 7671 Table 4A2 and the notes of Table 4D5 (100 and 101 are over a ceiling under insulation). Common
 * practice, no source: capping is no tube, so cable capped in plaster is C; so is cable clipped to the joists
 * or lying free in a floor void without insulation. A stud wall without insulation is B (Table 4A2 on building
 * voids, from memory).
 */
export function installedMethod(segment: Segment, plan: Plan): Installed | null {
  // An insulated stud wall has methods of its own, which hold for a short stretch as well.
  if (segment.insulation === 'surrounded' && segment.medium !== 'stud-cavity')
    return { method: 'C', surrounded: true };
  if (segment.medium === 'void-along' || segment.medium === 'void-across' || segment.medium === 'void-open')
    return { ...floorVoidMethod(segment, plan), surrounded: false };
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
    case 'loft':
      return loftMethod(segment, plan);
    default:
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

function floorVoidMethod(segment: Segment, plan: Plan): Pick<Installed, 'method' | 'kindest'> {
  const free = inTube(segment) ? 'B' : 'C';
  const insulationMm = toldInsulationMm(segment, plan);
  if (segment.insulation === 'none' || (segment.insulation === null && insulationMm === 0))
    return { method: free };
  if (insulationMm !== undefined) return { method: byThickness(insulationMm) };
  return { method: '101', kindest: segment.insulation === 'touching' ? '100' : free };
}

/** Insulation in the void under the floor of the room that the stretch lies in, else of the storey; undefined where nobody looked. */
function toldInsulationMm(segment: Segment, plan: Plan): number | undefined {
  const floor = floorOfMiddle(plan, segment) ?? plan.storeyById.get(segment.storeyId)?.storey.floor;
  return isGuess(floor?.certainty?.insulationMm) ? undefined : floor?.insulationMm;
}

/** Many schemes have their stretches in common: where each lies is looked up once. */
const floorOfMiddle = rememberedOfTwo((plan: Plan, { storeyId, from, to }: Segment) => {
  const middle = planPoint((from.at[0] + to.at[0]) / 2, (from.at[1] + to.at[1]) / 2);
  return surroundingsAt(plan, { storeyId, at: middle, heightMm: 0, levelMm: 0 })?.floor ?? null;
});

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
