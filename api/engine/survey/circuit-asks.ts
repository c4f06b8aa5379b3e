import type { Circuit, Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { readingsBefore } from '../circuit/readings-before.ts';
import type { Worked } from '../connections/worked.ts';
import { isGuess } from '../plan/is-guess.ts';
import { circuitRcd } from '../proof/rcd-cover.ts';
import type { Ask, FactState } from './ask.ts';
import { askOf, fieldOf, isUnsettled } from './fields.ts';

/** The circuits that are there and that the scheme touches; as found, those with sockets. By id. */
const askedCircuits = ({ job, scheme, circuitIds }: Worked): readonly Circuit[] =>
  job.circuits
    .filter(({ id, use }) =>
      scheme === null ? use === 'sockets' || use === 'kitchen' : circuitIds.includes(id),
    )
    .toSorted((a, b) => (a.id < b.id ? -1 : 1));

/** What is told of the circuits at the board: what protects them, and how they run. */
export function circuitAsks(worked: Worked): readonly Ask[] {
  const circuits = askedCircuits(worked);
  if (circuits.length === 0) return [];
  return [deviceAsk(circuits), rcdAsk(worked, circuits), orderAsk(worked, circuits)];
}

const deviceAsk = (circuits: readonly Circuit[]): Ask =>
  askOf({
    id: 'device',
    short: 'device',
    words: 'Read what protects the circuit: kind, curve and rating',
    why: 'The cable, the loop and what may be added are held against it.',
    source: 'BS 7671 433.1, 411.4.4',
    stage: 'board',
    when: 'visit',
    fields: circuits.map((circuit) => fieldOf(circuit.id, circuit, 'device')),
    rules: ['DV1', 'ZS1'],
  });

function rcdAsk(worked: Worked, circuits: readonly Circuit[]): Ask {
  const asFound: Worked = { ...worked, scheme: null, proposed: worked.found };
  const stateOf = (circuitId: string): FactState => {
    const { state } = circuitRcd(asFound, circuitId);
    if (state === 'unknown') return 'open';
    return state === 'assumed-none' ? 'assumed' : 'seen';
  };
  const fields = circuits.map((circuit) => ({
    subjectId: circuit.id,
    fact: tellsItsRcd(circuit) ? 'upstreamRcd' : 'device',
    state: stateOf(circuit.id),
  }));
  return askOf({
    id: 'rcd-found',
    short: 'RCD',
    words: 'Look at the board: is the circuit behind an RCD of 30 mA?',
    why: 'New outlets and cables in walls need one; where there is none it has to be fitted.',
    source: 'BS 7671 411.3.3, 415.1.1, 522.6.202',
    stage: 'board',
    when: 'visit',
    fields,
    rules: ['RC1', 'RC3', 'SU5'],
    ...(fields.some(isUnsettled) ? { closing: { settles: ['rcd-found'] } } : {}),
  });
}

/** Whether the device is read as far as to tell whether an RCD is in it; what is before it is told at the board. */
function tellsItsRcd({ device, certainty }: Circuit): boolean {
  if (device?.standard === undefined || isGuess(certainty?.device)) return false;
  return device.standard !== 'BS-EN-61009' || device.rcd !== undefined;
}

/** Whether somebody has taken readings of the circuit before the work, which would have shown a broken or a joined one. */
const isRead = (job: Pick<Job, 'readings'>, circuitId: string): boolean =>
  readingsBefore(job, 'loop').some(({ circuit }) => circuit === circuitId);

function orderAsk(worked: Worked, circuits: readonly Circuit[]): Ask {
  const stateOf = (id: string): FactState => {
    const evidence = worked.foundShapes.get(id)?.evidence;
    if (evidence === 'proved') return 'measured';
    return evidence === 'recorded' && isRead(worked.job, id) ? 'assumed' : 'open';
  };
  const fields = circuits.map(({ id }) => ({ subjectId: id, fact: null, state: stateOf(id) }));
  const open = fields.filter(isUnsettled).map(({ subjectId }) => subjectId);
  return askOf({
    id: 'ring-order',
    short: 'ring readings',
    words: 'Read the ring end to end and from both ends: that it is whole, and how it runs, is not measured',
    why: 'A broken ring is mended before anything is added; what joins where hangs on its order.',
    source: 'BS 7671 132.16, 433.1.204, 643.2.1',
    stage: 'board',
    when: 'isolated',
    fields,
    rules: ['RG1'],
    ...(open.length > 0
      ? {
          closing: {
            job: (job) => open.reduce(withReadings, job),
            sharedAs: ['order', ...open].join(' '),
          },
        }
      : {}),
  });
}

/** Readings of a ring that is whole, Ω: any that agree serve, since no price hangs on their size. */
const WHOLE_OHM = { L: 0.5, N: 0.5, cpc: 0.8 } as const;

/** The job with a circuit read from end to end and found whole. */
function withReadings(job: Job, circuitId: string): Job {
  const taken = (['L', 'N', 'cpc'] as const).map((loop): Reading => {
    const id = `${circuitId}/${loop}`;
    return {
      id,
      kind: 'loop',
      circuit: circuitId,
      loop,
      from: 'end-to-end',
      phase: 'before',
      ohm: WHOLE_OHM[loop],
      takenOn: '9999-12-31',
    };
  });
  return {
    ...job,
    readings: [...job.readings, ...taken],
    circuits: job.circuits.map((circuit) =>
      circuit.id === circuitId
        ? { ...circuit, certainty: { ...circuit.certainty, order: 'measured' } }
        : circuit,
    ),
  };
}
