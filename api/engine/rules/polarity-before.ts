import { readingsBefore } from '../circuit/readings-before.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'wrong' | 'right' | 'hold';

/** Line and neutral are the right way round before anything is added. */
export const polarityBefore = rule<Message>({
  id: 'ST5',
  title: 'Polarity before the work',
  source: 'BS 7671 643.6, 132.16',
  messages: {
    wrong: 'Polarity was found wrong at {actual}.',
    right: 'Polarity was found right where it was tested.',
    hold: 'Hold point: polarity of the circuit was not tested yet.',
  },
  remedies: {
    wrong: 'Stop. Mend it first; wrong polarity at the intake is the distributor’s, at once.',
    hold: 'Test before anything is joined on.',
  },
  couldFail: true,
  check: (facts) =>
    facts.circuitIds
      .filter((id) => facts.job.circuits.some((circuit) => circuit.id === id))
      .map((id) => ({ subjectId: id, origin: 'found', ...judged(facts, id) })),
});

function judged({ job }: Facts, circuitId: string): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const circuit = job.circuits.find(({ id }) => id === circuitId);
  const here = new Set([
    ...job.points.filter((point) => point.circuit === circuitId).map(({ id }) => id),
    ...(circuit ? [circuit.board] : []),
  ]);
  const readings = readingsBefore(job, 'polarity').filter(
    ({ circuit: of, at }) => of === circuitId || (of === undefined && here.has(at)),
  );
  if (readings.length === 0) return { outcome: 'advice', messageId: 'hold' };
  const labelOf = (id: string) => [...job.points, ...job.boards].find((each) => each.id === id)?.label ?? id;
  const wrong = readings.filter(({ ok }) => !ok).map(({ at }) => labelOf(at));
  return wrong.length > 0
    ? { outcome: 'fails', messageId: 'wrong', stopGate: true, actual: wrong.sort().join(', ') }
    : { outcome: 'passes', messageId: 'right' };
}
