import type { TerminalFill } from '../connections/things.ts';
import { counted } from './counted.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { nameOf, rounded } from './wiring.ts';

type Message = 'within' | 'tooMany' | 'tooMuch' | 'notCounted' | 'overIfUsual' | 'sizeUnknown';

/** Conductors in an accessory's terminal, by number and by summed area. */
export const terminals = rule<Message>({
  id: 'TM1',
  title: 'Conductors in terminals',
  source: 'BS 1363-2 and BS 1363-4 (terminals), BS 7671 526.2',
  messages: {
    within: 'A terminal of {name} takes {conductors}, {actual} mm² of {limit} mm².',
    tooMany: 'A terminal of {name} would hold {actual} conductors; {limit} is what any make takes.',
    tooMuch:
      'A terminal of {name} would hold {conductors} of {actual} mm² together; {limit} mm² is what any make takes.',
    notCounted: 'Nobody has counted the cables in {name}; with the new one there may be more than {limit}.',
    overIfUsual:
      'Nobody has counted the cables in {name}. If it has as many as usual, {old}, a terminal would hold {actual} conductors with the new; {limit} is what any make takes. With fewer there it may be right, so it is not proven.',
    sizeUnknown:
      'A terminal of {name} holds {conductors}; the size of one is not known, so nobody can say whether they keep within the {limit} mm² together that any make takes.',
  },
  remedies: {
    tooMany: 'Join on at another point, or make a joint in a leg.',
    tooMuch:
      'Join on at another point, make a joint in a leg, or fit an accessory whose maker allows the area.',
    overIfUsual:
      'Join on at another point, or make a joint in a leg; or take the plate off, dead and proved so, and count.',
    notCounted: 'Take the plate off, dead and proved so, and count.',
    sizeUnknown: 'Look at the cable in the plate.',
  },
  couldFail: true,
  check: (facts) =>
    facts.things.terminals
      .filter(({ circuitId }) => facts.circuitIds.includes(circuitId))
      .flatMap((fill) => judged(facts, fill)),
});

function judged(facts: Facts, fill: TerminalFill): readonly CheckResult<Message>[] {
  const { cables, capacityCables, capacityMm2 } = fill;
  const name = nameOf(facts, fill.nodeId);
  const head = { subjectId: fill.nodeId, origin: fill.affected ? ('scheme' as const) : ('found' as const) };
  const byNumber = { ...head, actual: cables, limit: capacityCables, unit: 'conductors' };
  const numbers = { name, actual: cables, limit: capacityCables };
  // A number that nobody counted is assumed by the point's role: it fails nothing by itself.
  const isOver = cables > capacityCables && (fill.counted || fill.newCables > capacityCables);
  if (isOver) return [{ ...byNumber, outcome: 'fails', messageId: 'tooMany', values: numbers }];
  const areaMm2 = fill.areaMm2 === null ? null : rounded(fill.areaMm2);
  const areas = { name, conductors: counted(cables, 'conductor'), actual: areaMm2 ?? 0, limit: capacityMm2 };
  const byArea = { ...head, limit: capacityMm2, unit: 'mm²', values: areas };
  if (areaMm2 !== null && areaMm2 > capacityMm2)
    return [{ ...byArea, actual: areaMm2, outcome: 'fails', messageId: 'tooMuch' }];
  // What the scheme leaves alone is told only where it is wrong.
  if (!fill.affected) return [];
  if (!fill.counted) {
    const messageId = cables > capacityCables ? 'overIfUsual' : 'notCounted';
    const values = { ...numbers, old: cables - fill.newCables };
    return [{ ...byNumber, outcome: 'not-proven', messageId, values }];
  }
  return areaMm2 === null
    ? [{ ...byArea, outcome: 'not-proven', messageId: 'sizeUnknown' }]
    : [{ ...byArea, actual: areaMm2, outcome: 'passes', messageId: 'within' }];
}
