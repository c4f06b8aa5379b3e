import type { Point } from '#model/installation.ts';
import { ADDITIONAL_PROTECTION_MA, circuitRcd, localRcd } from '../proof/rcd-cover.ts';
import type { Facts } from './facts.ts';
import { rcboFor } from './rcbo-for.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, nameOf, pointOfNode, wiringOf } from './wiring.ts';

type Message =
  | 'covered'
  | 'missing'
  | 'notSensitive'
  | 'unknown'
  | 'assumedNone'
  | 'localOnly'
  | 'replacement';

interface NewOutlet {
  readonly nodeId: string;
  /** True where it takes the place of what gave fewer outlets. */
  readonly isReplacement: boolean;
}

/** New socket-outlets are protected by an RCD of 30 mA or less. */
export const rcdForOutlets = rule<Message>({
  id: 'RC1',
  title: 'RCD for new socket-outlets',
  source: 'BS 7671 411.3.3, 415.1.1, 531.3',
  messages: {
    covered:
      'The new outlets of {circuit} ({names}) are behind an RCD of {actual} mA, {limit} mA at the most.',
    missing: 'The new outlets of {circuit} ({names}) have no RCD of {limit} mA or less.',
    notSensitive:
      'The new outlets of {circuit} ({names}) are behind an RCD of {actual} mA; {limit} mA at the most is what they need.',
    unknown:
      'Whether {circuit} has an RCD of {limit} mA or less is not known; the new outlets ({names}) need one.',
    assumedNone:
      'It is assumed that {circuit} has no RCD of {limit} mA or less: not proven; the new outlets ({names}) need one.',
    localOnly:
      '{name} has only a local RCD (BS 7288). Its standard is reported to be meant for circuits that have an RCD already, and the device lists of 531.3 left it out; sources differ, and a designer must decide.',
    replacement:
      '{name} gives more outlets than there were, on a circuit without an RCD of {limit} mA. Engineers differ whether a single changed for a twin is an addition; the stricter reading asks for the RCD.',
  },
  remedies: {
    notSensitive: 'An RCBO of type A and 30 mA at the board, if its maker has one for it.',
    missing:
      'An RCBO of type A at the board, if its maker has one for it; else an enclosure with an RCD beside it.',
    unknown: 'Look at the board and press the test button of what is there.',
    assumedNone:
      'Look at the board. If there is none: an RCBO of type A at the board, if its maker has one for it; else an enclosure with an RCD beside it.',
    localOnly: 'An RCBO at the board covers the outlet and its cable.',
    replacement: 'An RCBO of type A at the board.',
  },
  couldFail: true,
  check: (facts) =>
    (facts.scheme === null ? [] : [...facts.shapes.keys()].sort()).flatMap((circuitId) =>
      ofCircuit(facts, circuitId),
    ),
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
  if (cover.state === 'assumed-none') {
    const values = { circuit, names: named(outlets), limit };
    const fix = rcboFor(facts, circuitId);
    return [{ ...head, outcome: 'not-proven', messageId: 'assumedNone', ...fix, values }];
  }
  const added = bare.filter(({ isReplacement }) => !isReplacement);
  const replaced = bare.filter(({ isReplacement }) => isReplacement);
  const fix = rcboFor(facts, circuitId);
  const weakMA = cover.mA === null ? {} : { actual: cover.mA };
  const missing: readonly CheckResult<Message>[] =
    added.length === 0
      ? []
      : [
          {
            ...head,
            outcome: 'fails',
            messageId: cover.mA === null ? 'missing' : 'notSensitive',
            ...weakMA,
            ...fix,
            values: { circuit, names: named(added), limit, ...weakMA },
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

/** Outlets that the scheme brings to a circuit, in the order of its places. */
function newOutlets(facts: Facts, circuitId: string): readonly NewOutlet[] {
  const { nodes } = wiringOf(facts);
  const places = facts.shapes.get(circuitId)?.places ?? [];
  return places.flatMap(({ nodeId }): readonly NewOutlet[] => {
    const node = nodes.get(nodeId);
    const point = pointOfNode(facts, node);
    if (point === undefined || node?.kind !== 'terminals') return [];
    if (isMadeTwin(facts, point)) return [{ nodeId, isReplacement: true }];
    if (node.state !== 'new' || outletsOf(point) === 0) return [];
    const old = point.replaces === undefined ? undefined : facts.plan.pointById.get(point.replaces);
    if (old === undefined) return [{ nodeId, isReplacement: point.replaces !== undefined }];
    // Like for like is upkeep: nothing is added.
    return outletsOf(point) > outletsOf(old) ? [{ nodeId, isReplacement: true }] : [];
  });
}

/** Whether a remedy of the scheme changes a single outlet for a twin. */
function isMadeTwin({ scheme }: Facts, point: Point): boolean {
  const remedies = scheme?.remedies ?? [];
  return (
    point.kind === 'socket-single' &&
    remedies.some(({ kind, at }) => kind === 'single-to-twin' && at === point.id)
  );
}

function outletsOf({ kind }: Point): number {
  if (kind === 'socket-twin') return 2;
  return kind === 'socket-single' ? 1 : 0;
}
