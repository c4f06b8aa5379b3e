import type { End } from '#model/cable.ts';
import type { Connection } from '#model/scheme.ts';
import type { EditProblem } from '../circuit/network.ts';
import { openedCircuit } from '../circuit/opened-circuit.ts';
import { remedyNames } from '../circuit/remedy-names.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { nameOf } from './wiring.ts';

/** What a scheme asks for can be done with what is there. */
export const connectionPossible = rule<EditProblem['code']>({
  id: 'CN1',
  title: 'Connections as written',
  source: 'the job itself: what is there against what the scheme asks for',
  messages: {
    'leg-gone':
      'The leg that {connection} needs ({subject}) is not there, or another connection has taken it out.',
    'leg-too-short': 'The leg {subject} is cut beyond its end by {connection}.',
    'leg-elsewhere': 'The leg named for {connection} is {subject}, which runs elsewhere.',
    'leg-of-other-circuit':
      'The leg named for {connection} ({subject}) is of another circuit than the one that is to be opened.',
    'not-neighbours':
      'No leg runs between the two ends of {connection}: they are no neighbours on its circuit.',
    'point-not-connected-here':
      '{subject} is not, or not any more, on the circuit that is opened by {connection}.',
    'feed-not-reached':
      'A cable of {connection} starts at {subject}, which none of its other cables reaches.',
    'not-a-spur': '{subject} is not on an unfused spur, so there is nothing to fuse down or to close.',
    'cut-order': 'The two cuts that {connection} makes in the leg {subject} are the wrong way round.',
    'joint-cut-away':
      'The stretch of {subject} that {connection} takes out holds a joint of another connection.',
    'already-connected': '{subject} is connected already, so connecting it again would make a second feed.',
    'unit-is-no-fused-unit': '{subject} is to be the fused unit of a spur and is none.',
    'unit-by-spur':
      '{subject} is a fused unit and is joined by a plain spur: what its fuse feeds is then not told.',
    'not-from-source': 'The leg that is to close the spur ({subject}) does not start where the spur does.',
    'nothing-to-connect': 'Nothing is joined on by {connection}.',
    'no-existing-point': '{subject} is not there for {connection}: it is taken out, or not joined on itself.',
    'remedy-without-target':
      'The scheme wants {subject} and does not say where, and there is not just one place that it can mean.',
  },
  remedies: {
    'leg-gone': 'Choose a leg that stays.',
    'leg-too-short': 'Move the cut within the measured length of the leg.',
    'leg-elsewhere': 'Choose the leg that runs between the two places, or leave it to them.',
    'leg-of-other-circuit': 'Choose a leg of that circuit.',
    'not-neighbours': 'Choose two neighbours on the circuit.',
    'point-not-connected-here': 'Choose a point of that circuit.',
    'feed-not-reached': 'Start it from a point that the connection reaches, and let that cable come first.',
    'not-a-spur': 'Choose a leg of a spur.',
    'cut-order': 'Exchange the two cuts.',
    'joint-cut-away': 'Move the joint or the cuts, so that the joint lies in a stretch that stays.',
    'already-connected': 'Take one of the connections out.',
    'unit-is-no-fused-unit': 'Name a fused unit, or let the connection bring one along.',
    'unit-by-spur': 'Join it by a fused spur whose unit it is.',
    'not-from-source': 'Choose a ring leg at the source of the spur.',
    'nothing-to-connect': 'Name the points, or take the connection out.',
    'no-existing-point': 'Choose a point that stays or that another connection of the scheme brings in.',
    'remedy-without-target': 'Name the circuit, the board or the point.',
  },
  couldFail: true,
  applies: (facts) => facts.proposed.problems.length > 0,
  check: (facts) =>
    facts.proposed.problems.map((problem): CheckResult<EditProblem['code']> => {
      const { code, subjectId, connectionId } = problem;
      const connection = connectionName(facts, connectionId);
      const values = { subject: subjectName(facts, problem, connection), connection };
      return { outcome: 'fails', messageId: code, subjectId, origin: 'scheme', values };
    }),
});

function subjectName(facts: Facts, { subjectId, connectionId }: EditProblem, connection: string): string {
  if (subjectId === connectionId) return connection;
  const remedy = Object.entries(remedyNames).find(([kind]) => `${subjectId}/`.startsWith(`remedy/${kind}/`));
  return remedy?.[1] ?? nameOf(facts, subjectId);
}

/** What a person calls a connection: by the points that it is for. */
function connectionName(facts: Facts, connectionId: string | null): string {
  const connection = facts.scheme?.connections.find(({ id }) => id === connectionId);
  return connection ? nameOfConnection(facts, connection) : 'the connection';
}

function nameOfConnection(facts: Facts, connection: Connection): string {
  const names = (ids: readonly string[]): string => ids.map((id) => nameOf(facts, id)).join(', ');
  const toAll = (head: string, ids: readonly string[]): string =>
    ids.length === 0 ? head : `${head} to ${names(ids)}`;
  const endId = (end: End): string => ('origin' in end ? end.origin : end.point);
  switch (connection.kind) {
    case 'spur':
      return toAll('the spur', [connection.to]);
    case 'fused-spur': {
      const unit = typeof connection.unit === 'string' ? [connection.unit] : [];
      return toAll('the fused spur', [...unit, ...connection.feeds.map(({ to }) => to)]);
    }
    case 'ring-extension':
      return `the ${openedCircuit(facts.foundShapes, connection.circuit)} extension between ${connection.between.map((end) => nameOf(facts, endId(end))).join(' and ')}`;
    case 'radial':
      return toAll(
        'the new radial',
        connection.feeds.map(({ to }) => to),
      );
    case 'fuse-down':
      return `the fusing down of ${names([connection.leg])}`;
    case 'close-spur':
      return `the closing of the spur at ${names([connection.point])}`;
  }
}
