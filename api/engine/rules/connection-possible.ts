import type { EditProblem } from '../circuit/network.ts';
import { type CheckResult, rule } from './rule.ts';
import { nameOf } from './wiring.ts';

/** What a scheme asks for can be done with what is there. */
export const connectionPossible = rule<EditProblem['code']>({
  id: 'CN1',
  title: 'Every connection can be made as written',
  source: 'the job itself: what is there against what the scheme asks for',
  messages: {
    'leg-gone':
      'The leg that this connection needs ({subject}) is not there, or another connection has taken it out.',
    'leg-too-short': 'The connection cuts a leg ({subject}) beyond its end.',
    'not-neighbours': 'The ring is to be opened between two places that are no neighbours on it ({subject}).',
    'point-not-connected-here': '{subject} is not on the circuit that this connection opens.',
    'not-a-spur': '{subject} is not on an unfused spur, so there is nothing to fuse down or to close.',
    'cut-order': 'The two cuts in a leg ({subject}) are the wrong way round.',
    'already-connected': '{subject} is connected already, so connecting it again would make a second feed.',
    'unit-is-no-fused-unit': '{subject} is to be the fused unit of a spur and is none.',
    'unit-by-spur':
      '{subject} is a fused unit and is joined by a plain spur: what its fuse feeds is then not told.',
    'not-from-source': 'The leg that is to close the spur ({subject}) does not start where the spur does.',
    'nothing-to-connect': 'The connection ({subject}) connects nothing.',
    'no-existing-point': 'The connection starts at {subject}, which is not there yet.',
  },
  remedies: {
    'leg-gone': 'Choose a leg that stays.',
    'leg-too-short': 'Move the cut within the measured length of the leg.',
    'not-neighbours': 'Choose two neighbours on the ring.',
    'point-not-connected-here': 'Choose a point of that circuit.',
    'not-a-spur': 'Choose a leg of a spur.',
    'cut-order': 'Exchange the two cuts.',
    'already-connected': 'Take one of the connections out.',
    'unit-is-no-fused-unit': 'Name a fused unit, or let the connection bring one along.',
    'unit-by-spur': 'Join it by a fused spur whose unit it is.',
    'not-from-source': 'Choose a ring leg at the source of the spur.',
    'nothing-to-connect': 'Name the points, or take the connection out.',
    'no-existing-point': 'Start from a point that exists or that another connection of the scheme brings in.',
  },
  couldFail: true,
  applies: (facts) => facts.proposed.problems.length > 0,
  check: (facts) =>
    facts.proposed.problems.map(
      ({ code, subjectId }): CheckResult<EditProblem['code']> => ({
        outcome: 'fails',
        messageId: code,
        subjectId,
        origin: 'scheme',
        values: { subject: nameOf(facts, subjectId) },
      }),
    ),
});
