import type { Cable } from '#model/cable.ts';
import { type CheckResult, rule } from './rule.ts';
import { nameOf } from './wiring.ts';

/** Early metric 2.5 mm² cable has this protective conductor, mm². Source: BS 6004 as first metricated, from memory. */
const SMALL_CPC_MM2 = 1;

type Message = 'perished' | 'imperial' | 'smallCpc' | 'noCpc';

/** Old cable is fit to be added to; the legs are named by the points that they join. */
export const oldCable = rule<Message>({
  id: 'SC5',
  title: 'State of old cable',
  source: 'BS 7671 132.16, 543.1; the ages are common practice',
  messages: {
    perished: 'Rubber or lead-sheathed cable, which has outlived itself, is recorded in: {actual}.',
    noCpc: 'Cable without a protective conductor is recorded in: {actual}.',
    imperial:
      'Imperial cable (7/.029 is 2.98 mm² with 1.28 mm²) is recorded in: {actual}. Count terminals by area, and calculate the protective conductor.',
    smallCpc:
      'A protective conductor of 1.0 mm² or less beside 2.5 mm² is recorded in: {actual}. It is to be shown by calculation to withstand a fault.',
  },
  remedies: {
    perished: 'Renew it before adding to it.',
    noCpc: 'Renew it, or bring a protective conductor, before adding to it.',
    imperial: 'Check the terminals and the fault calculation.',
    smallCpc: 'Check the fault calculation for the device.',
  },
  couldFail: false,
  check: (facts) =>
    facts.circuitIds.flatMap((circuitId) => {
      const legs = facts.job.legs.filter(({ circuit }) => circuit === circuitId);
      return (['perished', 'noCpc', 'imperial', 'smallCpc'] as const).flatMap<CheckResult<Message>>((age) => {
        const old = legs
          .filter(({ cable }) => cable && ageOf(cable) === age)
          .map(({ id }) => nameOf(facts, id));
        if (old.length === 0) return [];
        const grave = age === 'perished' || age === 'noCpc';
        return [
          {
            outcome: grave ? 'decide' : 'advice',
            messageId: age,
            subjectId: circuitId,
            origin: 'found',
            actual: old.sort().join('; '),
          },
        ];
      });
    }),
});

function ageOf({ type, lineMm2, cpcMm2, era }: Cable): Message | null {
  if (/rubber|\bvir\b|lead/i.test(era ?? '')) return 'perished';
  if (cpcMm2 === 0 && type !== 'steel-wire-armoured') return 'noCpc';
  if (type === 'imperial') return 'imperial';
  return lineMm2 >= 2.5 && cpcMm2 <= SMALL_CPC_MM2 ? 'smallCpc' : null;
}
