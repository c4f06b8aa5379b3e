import fc from 'fast-check';
import type { Job } from '#model/job.ts';
import type { Remedy, Scheme } from '#model/scheme.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';

/** What nobody has looked at of the house of the first demo job: each key true where that is so. */
export interface Loosened {
  readonly bonds: boolean;
  readonly bondSizes: boolean;
  readonly rcds: boolean;
  readonly rcbo: boolean;
  readonly walls: boolean;
  readonly asbestos: boolean;
  readonly readings: boolean;
  /** Whether the scheme is without its RCBO. */
  readonly withoutRcbo: boolean;
  readonly scheme: 'spurs-rcbo' | 'fused-beds' | 'off-spur-1';
}

/** Any of it. */
export const loosened: fc.Arbitrary<Loosened> = fc.record({
  bonds: fc.boolean(),
  bondSizes: fc.boolean(),
  rcds: fc.boolean(),
  rcbo: fc.boolean(),
  walls: fc.boolean(),
  asbestos: fc.boolean(),
  readings: fc.boolean(),
  withoutRcbo: fc.boolean(),
  scheme: fc.constantFrom('spurs-rcbo', 'fused-beds', 'off-spur-1'),
});

/** The surveyed demo job with what was loosened taken out of it, and one scheme alone. */
export function loosenedJob(what: Loosened): Job {
  const job = demoJob('saltglass-row');
  const { supply } = job;
  const bonding = what.bonds
    ? []
    : supply.bonding.map(({ mm2, ...bond }) =>
        what.bondSizes || mm2 === undefined ? bond : { ...bond, mm2 },
      );
  return {
    ...job,
    supply: { ...supply, bonding },
    boards: job.boards.map(({ rcboAvailable, ...board }) => ({
      ...board,
      ...(what.rcbo || rcboAvailable === undefined ? {} : { rcboAvailable }),
      ...(what.rcds ? { certainty: { ...board.certainty, rcds: 'unknown' } } : {}),
    })),
    storeys: what.walls
      ? job.storeys.map((storey) => ({
          ...storey,
          walls: storey.walls.map((wall) => ({
            ...wall,
            certainty: { ...wall.certainty, core: 'assumed' },
          })),
        }))
      : job.storeys,
    answers: what.asbestos ? job.answers.filter(({ question }) => question !== 'asbestos') : job.answers,
    readings: what.readings ? [] : job.readings,
    schemes: job.schemes
      .filter(({ id }) => id === what.scheme)
      .map((scheme) => ({
        ...scheme,
        remedies: what.withoutRcbo ? scheme.remedies.filter(({ kind }) => kind !== 'rcbo') : scheme.remedies,
      })),
  };
}

const withRemedy = (job: Job, remedy: Remedy): Job => ({
  ...job,
  schemes: job.schemes.map((scheme): Scheme => ({ ...scheme, remedies: [...scheme.remedies, remedy] })),
});

/** The ways in which what is loosened may turn out, written into the job as somebody would who looked, with what is done then. */
export const turnedOut: Readonly<Record<string, (job: Job) => Job>> = {
  'bond to water missing': (job) =>
    withRemedy(
      {
        ...job,
        supply: {
          ...job.supply,
          bonding: [
            ...job.supply.bonding.filter(({ service }) => service !== 'water'),
            { service: 'water', seen: false },
          ],
        },
      },
      { kind: 'bond-upgrade', at: 'water' },
    ),
  'bond to water there': (job) => ({
    ...job,
    supply: {
      ...job.supply,
      bonding: [
        ...job.supply.bonding.filter(({ service }) => service !== 'water'),
        { service: 'water', seen: true, mm2: 10 },
      ],
    },
  }),
  'no RCD in the board': (job) =>
    withRemedy(
      {
        ...job,
        boards: job.boards.map((board) => ({ ...board, certainty: { ...board.certainty, rcds: 'seen' } })),
        schemes: job.schemes.map((scheme) => ({
          ...scheme,
          remedies: scheme.remedies.filter(({ kind }) => kind !== 'rcbo'),
        })),
      },
      { kind: 'rcbo', at: 'ring-house' },
    ),
  'an RCD in the board': (job) => ({
    ...job,
    boards: job.boards.map((board) => ({
      ...board,
      rcds: [{ id: 'found-rcd', type: 'A', mA: 30 }],
      certainty: { ...board.certainty, rcds: 'seen' },
    })),
    circuits: job.circuits.map((circuit) => ({ ...circuit, upstreamRcd: 'found-rcd' })),
    schemes: job.schemes.map((scheme) => ({
      ...scheme,
      remedies: scheme.remedies.filter(({ kind }) => kind !== 'rcbo'),
    })),
  }),
  'an RCBO no longer sold': (job) => ({
    ...job,
    boards: job.boards.map((board) => ({ ...board, rcboAvailable: false })),
    schemes: job.schemes.map((scheme) => ({
      ...scheme,
      remedies: scheme.remedies.map((remedy) =>
        remedy.kind === 'rcbo' ? { ...remedy, kind: 'rcd-enclosure' } : remedy,
      ),
    })),
  }),
  'asbestos suspected': (job) => ({
    ...job,
    answers: [
      ...job.answers.filter(({ question }) => question !== 'asbestos'),
      { question: 'asbestos', value: 'suspected', certainty: 'seen' },
    ],
  }),
};
