import type { Cable, Containment } from '#model/cable.ts';
import { flatCableSectionMm2, flatCableSize } from '../ways/flat-cable-size.ts';
import type { Filling } from '../ways/way-tariff.ts';
import type { KitCounts } from './kit-counts.ts';

/** Plaster for a litre of hole, kg: 10 kg of bonding cover 1.5 m² at 8 mm. Source: lets-do-diy.com, "Plastering materials". */
export const BONDING_KG_PER_LITRE = 10 / (1.5 * 8);
/** The same of one-coat plaster: 25 kg cover so many square metres at 11 mm. */
export const oneCoatKgPerLitre = ({ oneCoatM2 }: Pick<KitCounts, 'oneCoatM2'>): number =>
  25 / (oneCoatM2 * 11);
/** The same of finish: 25 kg cover 10 m² at 2 mm. Sources: kentplasterers.co.uk and civilsir.com (10 to 12 m²). */
export const FINISH_KG_PER_LITRE = 25 / (10 * 2);

/** A hole to be filled: what goes in, and the face over which finish is drawn. */
export interface Hole {
  readonly litres: number;
  readonly faceM2: number;
}

/** Item ids and kilograms, waste left out, that fill a hole. */
export type Plaster = readonly (readonly [item: string, kg: number])[];

/** What fills a hole. */
export function plasterFor(
  { litres, faceM2 }: Hole,
  filling: Filling,
  counts: Pick<KitCounts, 'oneCoatM2' | 'finishMm'>,
): Plaster {
  if (filling === 'one-coat') return [['plaster-one-coat', litres * oneCoatKgPerLitre(counts)]];
  return [
    ['plaster-bonding', litres * BONDING_KG_PER_LITRE],
    ['plaster-finish', faceM2 * counts.finishMm * FINISH_KG_PER_LITRE],
  ];
}

/** Section of a tube of 20 mm oval, mm². Common practice, no source. */
const OVAL_20_MM2 = 220;

/**
 * A metre of chase: the slot that is cut for what lies in it, less what lies in it. With more than one cable the slot is
 * wider and deeper; for cable above 4 mm² more both ways.
 */
export function metreOfChase(
  { cables, containment }: { readonly cables: readonly Cable[]; readonly containment: Containment },
  counts: KitCounts,
): Hole {
  const further = Math.max(0, cables.length - 1);
  const extraMm = further * counts.furtherCableMm;
  const thickMm = cables.some((cable) => cable.lineMm2 > 4) ? counts.thickCableMm : 0;
  const isTube = containment === 'oval' || containment === 'conduit';
  const widthMm = (isTube ? counts.tubeChaseWidthMm : counts.chaseWidthMm) + extraMm + thickMm;
  const depthMm =
    (isTube ? counts.tubeChaseDepthMm : counts.chaseDepthMm) +
    (further > 0 ? counts.severalDeeperMm : 0) +
    thickMm;
  const contentMm2 = cables.reduce(
    (sum, cable) => sum + (isTube ? OVAL_20_MM2 : flatCableSectionMm2(flatCableSize(cable.lineMm2))),
    0,
  );
  // mm² × 1 m = 1e-3 litre; mm × 1 m = 1e-3 m².
  return {
    litres: Math.max(0, widthMm * depthMm - contentMm2) / 1e3,
    faceM2: (widthMm + counts.finishPastMm) / 1e3,
  };
}

/** What is left open round a steel box in its hole; it is pressed against the back. Box bodies 75 mm high, 75 and 60 mm a further gang wide. */
export function roundBox(
  gangs: number,
  depthMm: number,
  { boxHoleMm, finishPastMm }: Pick<KitCounts, 'boxHoleMm' | 'finishPastMm'>,
): Hole {
  const heightMm = 75;
  const widthMm = 75 + 60 * (gangs - 1);
  const holeMm2 = (heightMm + 2 * boxHoleMm) * (widthMm + 2 * boxHoleMm);
  const boxMm2 = heightMm * widthMm;
  const pastMm2 = (heightMm + 2 * boxHoleMm + finishPastMm) * (widthMm + 2 * boxHoleMm + finishPastMm);
  return {
    litres: ((holeMm2 - boxMm2) * depthMm) / 1e6,
    faceM2: (pastMm2 - boxMm2) / 1e6,
  };
}
