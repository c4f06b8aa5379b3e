import type { Point } from '#model/installation.ts';
import { ADDITIONAL_PROTECTION_MA, circuitRcd, localRcd } from '../proof/rcd-cover.ts';
import type { Facts } from './facts.ts';
import { rcboFor } from './rcbo-for.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, nameOf, pointOfNode, touchedShapes, wiringOf } from './wiring.ts';

type Message = 'covered' | 'missing' | 'unknown' | 'localOnly' | 'replacement';

interface NewOutlet {
  readonly nodeId: string;
  readonly point: Point;
}

/** New socket-outlets are protected by an RCD of 30 mA or less. */
export const rcdForOutlets = rule<Message>({
  id: 'RC1',
  title: 'New socket-outlets have a 30 mA RCD',
  source: 'BS 7671 411.3.3, 415.1.1, 531.3',
  messages: {
    covered:
      'The new outlets of {circuit} ({names}) are behind an RCD of {actual} mA, {limit} mA at the most.',
    missing: 'The new outlets of {circuit} ({names}) have no RCD of {limit} mA or less.',
    unknown:
      'Whether {circuit} has an RCD of {limit} mA or less is not known; the new outlets ({names}) need one.',
    localOnly:
      '{name} has only a local RCD (BS 7288). Its standard is reported to be meant for circuits that have an RCD already, and the device lists of 531.3 left it out; sources differ, and a designer must decide.',
    replacement:
      '{name} takes the place of an outlet on a circuit without RCD of {limit} mA. Engineers differ whether a single changed for a twin is an addition; the stricter reading asks for the RCD.',
  },
  remedies: {
    missing:
      'An RCBO of type A at the board, if its maker has one for it; else an enclosure with an RCD beside it.',
    unknown: 'Look at the board and press the test button of what is there.',
    localOnly: 'An RCBO at the board covers the outlet and its cable.',
    replacement: 'An RCBO of type A at the board.',
  },
  couldFail: true,
  check: (facts) => touchedShapes(facts).flatMap(({ circuitId }) => ofCircuit(facts, circuitId)),
});

function ofCircuit(facts: Facts, circuitId: string): readonly CheckResult<Message>[] {
  const outlets = newOutlets(facts, circuitId);
  if (outlets.length === 0) return [];
  const cover = circuitRcd(facts, circuitId);
  const circuit = circuitName(facts, circuitId);
  const limit = ADDITIONAL_PROTECTION_MA;
  const named = (some: readonly NewOutlet[]) => some.map(({ nodeId }) => nameOf(facts, nodeId)).join(', ');
  const head = { subjectId: circuitId, origin: 'scheme', limit, unit: 'mA' } as const;
  if (cover.state === 'covered') {
    const actual = cover.mA ?? limit;
    const values = { circuit, names: named(outlets), actual, limit };
    return [{ ...head, actual, outcome: 'passes', messageId: 'covered', values }];
  }
  const local = outlets.filter(({ nodeId }) => localRcd(facts, nodeId) !== null);
  const bare = outlets.filter((outlet) => !local.includes(outlet));
  if (cover.state === 'unknown') {
    const values = { circuit, names: named(outlets), limit };
    return [{ ...head, outcome: 'not-proven', messageId: 'unknown', values }];
  }
  const added = bare.filter(({ point }) => point.replaces === undefined);
  const replaced = bare.filter(({ point }) => point.replaces !== undefined);
  const fix = rcboFor(facts, circuitId);
  const missing: readonly CheckResult<Message>[] =
    added.length === 0
      ? []
      : [
          {
            ...head,
            outcome: 'fails',
            messageId: 'missing',
            ...fix,
            values: { circuit, names: named(added), limit },
          },
        ];
  return [
    ...missing,
    ...local.map((outlet) => ofOutlet(facts, outlet, 'localOnly')),
    ...replaced.map((outlet) => ({ ...ofOutlet(facts, outlet, 'replacement'), ...fix })),
  ];
}

function ofOutlet(facts: Facts, { nodeId }: NewOutlet, messageId: Message): CheckResult<Message> {
  const limit = ADDITIONAL_PROTECTION_MA;
  const values = { name: nameOf(facts, nodeId), limit };
  return { outcome: 'decide', messageId, subjectId: nodeId, origin: 'scheme', limit, unit: 'mA', values };
}

/** Outlets that the scheme brings to a circuit, sorted by node id. */
function newOutlets(facts: Facts, circuitId: string): readonly NewOutlet[] {
  const { nodes } = wiringOf(facts);
  const places = facts.shapes.get(circuitId)?.places ?? [];
  return places.flatMap(({ nodeId }) => {
    const node = nodes.get(nodeId);
    const point = pointOfNode(facts, node);
    const isOutlet = point?.kind === 'socket-single' || point?.kind === 'socket-twin';
    return point && isOutlet && node?.state === 'new' ? [{ nodeId, point }] : [];
  });
}
