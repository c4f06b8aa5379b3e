import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { foundAccessories, isSocket, newAccessories, type PlacedAccessory } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** Heights for new dwellings, mm above floor. Source: Approved Documents M and P. */
const ENGLAND_MM = { low: 450, high: 1200 };
/** Source: Scottish Building Standards Technical Handbook 4.8.5 (the lower figure from memory). */
const SCOTLAND_MM = { low: 400, high: 1200 };
/** As near as one takes two heights in a room for the same, mm. Common practice, no source. */
const ALIKE_MM = 50;

type Message = 'within' | 'low' | 'high' | 'matches';

/** New outlets stand at heights that people can reach, or at those of the outlets beside them. */
export const height = rule<Message>({
  id: 'PO1',
  title: 'Height of outlets',
  source: 'Approved Documents M and P (new dwellings); Scottish Technical Handbook 4.8.5',
  messages: {
    within: '{actual} mm above floor.',
    low: '{actual} mm above floor; new dwellings have {limit} mm at least. In an existing house that is guidance only.',
    high: '{actual} mm above floor; new dwellings have {limit} mm at most. In an existing house that is guidance only.',
    matches:
      '{actual} mm above floor, as {other} in the same room; matching what is there is usually accepted, though {limit} mm has been asked for in large extensions.',
  },
  remedies: {
    low: 'Set it higher, or agree the height with the customer.',
    high: 'Set it lower, or agree the height with the customer.',
    matches: 'Agree the height with the customer.',
  },
  couldFail: false,
  check: (facts) => {
    const found = foundAccessories(facts);
    return newAccessories(facts).map((accessory) => ({
      subjectId: accessory.id,
      origin: 'scheme' as const,
      ...judged(facts, accessory, found),
    }));
  },
});

function judged(
  facts: Facts,
  accessory: PlacedAccessory,
  found: readonly PlacedAccessory[],
): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const guide = facts.job.site.nation === 'scotland' ? SCOTLAND_MM : ENGLAND_MM;
  const lowMm = facts.limits.minimumHeightMm ?? guide.low;
  const highMm = facts.limits.maximumHeightMm ?? guide.high;
  const { heightMm } = accessory.position;
  const limitMm = heightMm > highMm ? highMm : lowMm;
  if (heightMm >= lowMm && heightMm <= highMm)
    return { outcome: 'passes', messageId: 'within', ...figures(heightMm, limitMm, 'mm') };
  const alike = found.find(
    (other) =>
      isSocket(other) &&
      other.room !== null &&
      other.room === accessory.room &&
      Math.abs(other.position.heightMm - heightMm) <= ALIKE_MM,
  );
  if (alike)
    return {
      outcome: 'advice',
      messageId: 'matches',
      ...figures(heightMm, limitMm, 'mm', { other: alike.label }),
    };
  const messageId = heightMm < lowMm ? 'low' : 'high';
  return { outcome: 'advice', messageId, ...figures(heightMm, limitMm, 'mm') };
}
