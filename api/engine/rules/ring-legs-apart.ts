import { bindsAsRing } from '../circuit/binds-as.ts';
import { RING_CABLE_A } from '../circuit/ring-cable-limits.ts';
import type { Facts } from './facts.ts';
import { subjectOfEdge } from './installed-capacity.ts';
import { cablesJudged, shapesJudged } from './judged-cables.ts';
import { isShortTogether, type LegsTogether, ringLegsTogether } from './ring-legs-together.ts';
import { type CheckResult, rule } from './rule.ts';
import { metres, nameOf } from './wiring.ts';

type Message = 'within' | 'tooLittle';

/** Two legs of one ring in one tube or channel warm each other; each has to carry 20 A all the same. */
export const ringLegsApart = rule<Message>({
  id: 'RG4',
  title: 'Two legs of a ring in one tube or channel',
  source: 'BS 7671 433.1.204, Tables 4D2A (method B) and 4C1',
  messages: {
    within: '{legs} lie in one tube or channel: {how} leaves {actual} A, {limit} A needed.',
    tooLittle:
      '{legs} lie in one tube or channel for {lengthM} m: {how} leaves each {actual} A; {limit} A needed.',
  },
  remedies: { tooLittle: 'A tube or channel for each leg, or the two legs clipped apart.' },
  couldFail: true,
  applies: (facts) => shapesJudged(facts).some(bindsAsRing),
  check: (facts) =>
    cablesJudged(facts, (shape) =>
      bindsAsRing(shape)
        ? (ringLegsTogether(facts).get(shape.circuitId) ?? []).flatMap((together) => judged(facts, together))
        : [],
    ),
});

/** Nothing where it is not told how they lie, or where they fall short for another reason: CA1 says that of each. */
function judged(facts: Facts, { legs, lengthMm }: LegsTogether): readonly CheckResult<Message>[] {
  const short = legs.filter(isShortTogether);
  const isWithin = legs.every(({ installed }) => installed.verdict === 'within');
  const worst = (short.length > 0 ? short : legs).toSorted(
    (a, b) => (a.installed.izA ?? 0) - (b.installed.izA ?? 0),
  )[0];
  if (worst === undefined || worst.installed.izA === null || (short.length === 0 && !isWithin)) return [];
  // What the scheme lays there is to be changed, not what lay there before.
  const told = short.find(({ edge }) => edge.state === 'new') ?? worst;
  const isScheme = short.some(({ edge, installed }) => edge.state === 'new' || installed.isCrowded);
  const names = legs.map(({ edge }) => `${nameOf(facts, edge.from)} – ${nameOf(facts, edge.to)}`);
  return [
    {
      ...subjectOfEdge(told.edge),
      ...(short.length > 0 ? { origin: isScheme ? ('scheme' as const) : ('found' as const) } : {}),
      outcome: short.length > 0 ? 'fails' : 'passes',
      messageId: short.length > 0 ? 'tooLittle' : 'within',
      actual: worst.installed.izA,
      limit: RING_CABLE_A,
      unit: 'A',
      values: {
        legs: `The ring’s legs ${names.join(' and ')}`,
        how: worst.installed.how,
        lengthM: metres(lengthMm),
      },
    },
  ];
}
