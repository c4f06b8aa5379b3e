import { HALF_PLATE_HEIGHT_MM } from './clearance.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { fixturesNear, newAccessories, type PlacedAccessory, plateToFixtureMm } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** From a worktop to the accessory above it, mm. Source: IET guide to the Building Regulations; Scottish Technical Handbook. */
const WORKTOP_MM = 150;
/** A wall behind a worktop is at most this far from the outline as drawn, mm: its upstand and its scribe. */
const AGAINST_MM = 50;
/** Worktops are about this high, mm, where nobody measured. Common practice, no source. */
const USUAL_TOP_MM = 900;

type Message = 'clear' | 'underside' | 'near' | 'topUnknown';

/** Outlets above a worktop stand clear of what is spilt on it and leave room for plugs. */
export const worktopClearance = rule<Message>({
  id: 'PO3',
  title: 'Height above the worktop',
  source: 'IET guide to the Building Regulations; Scottish Technical Handbook',
  messages: {
    clear: 'The plate’s underside is {actual} mm above the worktop.',
    underside:
      'The plate’s underside is {actual} mm above the worktop. Sources disagree: {limit} mm to the centre line (kept here) or to the underside (not kept); 100 mm is quoted too.',
    near: 'The plate’s centre is {actual} mm above the worktop; {limit} mm is the guidance.',
    topUnknown: 'The height of the worktop below it is not known; {limit} mm above it is the guidance.',
  },
  remedies: {
    underside: 'Set it higher so that both readings are kept.',
    near: 'Set it higher.',
    topUnknown: 'Measure the worktop.',
  },
  couldFail: false,
  check: (facts) =>
    newAccessories(facts).flatMap((accessory) => {
      const above = fixturesNear(facts, accessory, ['worktop']).filter(
        (worktop) =>
          accessory.position.heightMm > (worktop.toMm ?? USUAL_TOP_MM) &&
          plateToFixtureMm(facts, accessory, worktop) <= AGAINST_MM,
      );
      const tops = above.map(({ toMm }) => toMm ?? null);
      if (tops.length === 0) return [];
      return [{ subjectId: accessory.id, origin: 'scheme', ...judged(facts, accessory, tops) }];
    }),
});

function judged(
  { limits }: Facts,
  { position }: PlacedAccessory,
  topsMm: readonly (number | null)[],
): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const limitMm = limits.worktopClearanceMm ?? WORKTOP_MM;
  const known = topsMm.filter((topMm) => topMm !== null);
  if (known.length < topsMm.length)
    return { outcome: 'not-proven', messageId: 'topUnknown', limit: limitMm, unit: 'mm' };
  const centreMm = position.heightMm - Math.max(...known);
  const undersideMm = centreMm - HALF_PLATE_HEIGHT_MM;
  if (centreMm < limitMm)
    return { outcome: 'decide', messageId: 'near', ...figures(centreMm, limitMm, 'mm') };
  return undersideMm < limitMm
    ? { outcome: 'advice', messageId: 'underside', ...figures(undersideMm, limitMm, 'mm') }
    : { outcome: 'passes', messageId: 'clear', ...figures(undersideMm, limitMm, 'mm') };
}
