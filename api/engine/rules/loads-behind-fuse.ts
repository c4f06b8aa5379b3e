import type { FusedUnit } from '../connections/things.ts';
import { fuseCarries } from '../proof/fuse-carries.ts';
import { NOMINAL_V, PLUG_A } from '../proof/spur-load.ts';
import type { Facts } from './facts.ts';
import { originOfUnit } from './fused-unit-origin.ts';
import { type CheckResult, rule } from './rule.ts';
import { pointOfNode, rounded, wiringOf } from './wiring.ts';

type Message = 'within' | 'byPractice' | 'fixedOver' | 'willOperate' | 'plainOutlets' | 'othersMayCome';

/** All that is behind one fuse together: fixed loads are certain, plug-in loads and plain outlets are not. */
export const loadsBehindFuse = rule<Message>({
  id: 'FU2',
  title: 'Load behind one fuse',
  source: 'BS 7671 433.1.1, BS 1362; plug-in loads are a matter of use (common practice)',
  messages: {
    within: 'All that can be drawn behind the fuse is {actual} A of {limit} A.',
    byPractice:
      'The loads named behind the {limit} A fuse draw {actual} A. Sources differ: the trade fits 3 A up to 700 W, by arithmetic 690 W is its end.',
    fixedOver: 'The fixed loads named behind the fuse draw {actual} A; the fuse is {limit} A.',
    willOperate:
      'The loads named behind the fuse draw {actual} A when used together; the fuse is {limit} A and will operate.',
    plainOutlets:
      'Up to {actual} A can be plugged in behind a {limit} A fuse, and no load is named for some outlets. The fuse will operate when more is used; whether that serves must be decided with the customer.',
    othersMayCome:
      'The loads named behind the fuse draw {named} A of {limit} A; other things plugged in could ask for up to {actual} A, and the fuse would operate.',
  },
  remedies: {
    byPractice: 'Take the maker’s figure.',
    fixedOver: 'A circuit of its own, or the loads shared between two units.',
    willOperate: 'The ring carried out and back through the outlets, a circuit of their own, or agreed use.',
    plainOutlets: 'Name the loads; where they are heavy, carry the ring through the outlets instead.',
    othersMayCome: 'Tell the customer what the fused outlets are for.',
  },
  couldFail: true,
  check: (facts) =>
    facts.things.fusedUnits
      .filter(({ circuitId }) => facts.circuitIds.includes(circuitId))
      .flatMap((unit) => judged(facts, unit)),
});

function judged(facts: Facts, unit: FusedUnit): readonly CheckResult<Message>[] {
  const fuseA = unit.fuseA ?? PLUG_A;
  const fixedA = (unit.fixedW ?? 0) / NOMINAL_V;
  const namedW = (unit.fixedW ?? 0) + (unit.plugInW ?? 0);
  const namedA = namedW / NOMINAL_V;
  const { plugs, unnamed } = outletsBehind(facts, unit);
  if (unit.fixedW === null && unit.plugInW === null && plugs === 0) return [];
  const possibleA = fixedA + plugs * PLUG_A;
  const head = { subjectId: unit.id, origin: originOfUnit(facts, unit, 'all') };
  const figures = (amps: number) => {
    const actual = rounded(amps);
    return { actual, limit: fuseA, unit: 'A', values: { actual, limit: fuseA, named: rounded(namedA) } };
  };
  const carries = fuseCarries(namedW, fuseA);
  if (fuseCarries(unit.fixedW ?? 0, fuseA) === 'over')
    return [
      {
        ...head,
        ...figures(fixedA),
        origin: originOfUnit(facts, unit, 'fixed'),
        outcome: 'fails',
        messageId: 'fixedOver',
      },
    ];
  if (carries === 'over')
    return [{ ...head, ...figures(namedA), outcome: 'decide', messageId: 'willOperate' }];
  if (carries === 'by-practice' && plugs === 0)
    return [{ ...head, ...figures(namedA), outcome: 'advice', messageId: 'byPractice' }];
  if (possibleA <= fuseA)
    return [{ ...head, ...figures(Math.max(namedA, possibleA)), outcome: 'passes', messageId: 'within' }];
  return unnamed > 0
    ? [{ ...head, ...figures(possibleA), outcome: 'decide', messageId: 'plainOutlets' }]
    : [{ ...head, ...figures(possibleA), outcome: 'advice', messageId: 'othersMayCome' }];
}

/** Plugs that fit behind a unit, and outlets for which nobody named a load. */
function outletsBehind(facts: Facts, unit: FusedUnit): { plugs: number; unnamed: number } {
  const { nodes } = wiringOf(facts);
  const points = unit.accessories.flatMap((nodeId) => pointOfNode(facts, nodes.get(nodeId)) ?? []);
  const twins = points.filter(({ kind }) => kind === 'socket-twin');
  const singles = points.filter(({ kind }) => kind === 'socket-single');
  const unnamed = [...twins, ...singles].filter(({ load }) => load === undefined).length;
  return { plugs: 2 * twins.length + singles.length, unnamed };
}
