import { bindsAsRing } from '../circuit/binds-as.ts';
import type { NetworkEdge } from '../circuit/network.ts';
import { RING_CABLE_A, RING_CABLE_MM2 } from '../circuit/ring-cable-limits.ts';
import { type SpurLoad, spurLoads } from '../proof/spur-load.ts';
import type { Facts } from './facts.ts';
import { installedCapacity, subjectOfEdge } from './installed-capacity.ts';
import { cablesJudged, shapesJudged } from './judged-cables.ts';
import { type CheckResult, rule } from './rule.ts';
import { cableOf, nameOf, wiringOf } from './wiring.ts';

/** From this area on a spur to several outlets is argued for by some. */
const ARGUED_MM2 = 4;

type Message =
  | 'within'
  | 'tooThin'
  | 'tooThinToUnit'
  | 'tooLittle'
  | 'sizeUnknown'
  | 'methodUnknown'
  | 'needsDesign';

/** The cable of an unfused spur is at least that of the ring: 2.5 mm², and 20 A as installed. */
export const spurCable = rule<Message>({
  id: 'SP5',
  title: 'Cable of an unfused spur',
  source: 'BS 7671 433.1.204, Table 4D5; Appendix 15',
  messages: {
    within: 'The cable to {to} carries {actual} A as installed ({how}), {limit} A needed.',
    tooThin:
      'The cable to {to} is {actual} mm², {limit} mm² needed. Sources differ: some hold 1.5 mm² to one single outlet defensible by calculation; it is not what 433.1.204 and Appendix 15 describe, and the stricter reading decides.',
    tooThinToUnit:
      'The cable to {to} is {actual} mm², {limit} mm² needed: up to the fuse it is an unfused spur.',
    tooLittle: 'The cable to {to} carries {actual} A as installed ({how}{along}), {limit} A needed.',
    sizeUnknown: 'The size of the cable to {to} is not known; {limit} mm² is needed.',
    methodUnknown:
      'How the cable to {to} lies is not told everywhere (insulation of a stud wall, a loft or a void), so it is not proved that it carries {limit} A.',
    needsDesign:
      'The spur to {to} is {actual} mm² and feeds several accessories; it carries {carries} A as installed. Some hold that it can meet 433.1.1; it is no arrangement of Appendix 15 and needs a designer. What a spur may feed is judged apart, by the stricter reading.',
  },
  remedies: {
    tooThin: 'Cable of 2.5 mm² or more, or a fused unit before it.',
    tooThinToUnit: 'Cable of 2.5 mm² or more as far as the fused unit; thinner cable may follow its fuse.',
    tooLittle: 'A larger cable{otherWay}.',
    sizeUnknown: 'Look at the cable in the plate.',
    methodUnknown: 'Look, and say what insulation the cable would touch and how thick it is.',
    needsDesign: 'A fused unit before the first outlet, or a designer’s calculation kept with the papers.',
  },
  couldFail: true,
  applies: (facts) => shapesJudged(facts).some(bindsAsRing),
  check: (facts) => {
    const { edges } = wiringOf(facts);
    return cablesJudged(facts, (shape) =>
      (bindsAsRing(shape) ? spurLoads(facts, shape.circuitId) : []).flatMap((load) =>
        load.spur.edgeIds.flatMap((id) => {
          const edge = edges.get(id);
          return edge?.kind === 'cable' ? judged(facts, load, edge) : [];
        }),
      ),
    );
  },
});

function judged(facts: Facts, load: SpurLoad, edge: NetworkEdge): readonly CheckResult<Message>[] {
  const cable = cableOf(facts, edge);
  const subject = subjectOfEdge(edge);
  const to = nameOf(facts, edge.to);
  const size = { ...subject, limit: RING_CABLE_MM2, unit: 'mm²' };
  const values = { to, limit: RING_CABLE_MM2, actual: cable?.lineMm2 ?? 0 };
  if (cable === null) return [{ ...size, outcome: 'not-proven', messageId: 'sizeUnknown', values }];
  const actual = cable.lineMm2;
  if (actual < RING_CABLE_MM2) {
    const isToUnit = load.accessories.every(({ kind }) => kind === 'fused-unit');
    const messageId = isToUnit ? 'tooThinToUnit' : 'tooThin';
    return [{ ...size, actual, outcome: 'fails', messageId, values }];
  }
  const byCurrent = currentJudged(facts, edge);
  const isArgued = load.accessories.length > 1 && actual >= ARGUED_MM2;
  if (!isArgued || byCurrent.outcome !== 'passes') return [byCurrent];
  const carries = byCurrent.actual ?? 0;
  const designed = { outcome: 'decide', messageId: 'needsDesign', values: { ...values, carries } } as const;
  return [{ ...subject, actual, unit: 'mm²', ...designed }];
}

function currentJudged(facts: Facts, edge: NetworkEdge): CheckResult<Message> {
  const installed = installedCapacity(facts, edge, RING_CABLE_A);
  const { verdict, izA, how, along, otherWay } = installed;
  const head = {
    ...subjectOfEdge(edge, installed),
    limit: RING_CABLE_A,
    unit: 'A',
    values: { to: nameOf(facts, edge.to), limit: RING_CABLE_A, actual: izA ?? 0, how, along, otherWay },
  };
  if (verdict === 'unknown' || izA === null)
    return { ...head, outcome: 'not-proven', messageId: 'methodUnknown' };
  return verdict === 'short'
    ? { ...head, actual: izA, outcome: 'fails', messageId: 'tooLittle' }
    : { ...head, actual: izA, outcome: 'passes', messageId: 'within' };
}
