import type { Job } from '#model/job.ts';
import type { Worked } from '../connections/worked.ts';
import { rcbosIfAssumed } from '../rules/assumed-without-rcd.ts';
import { boardsWithUnknownRcbo } from './price-scheme-with-range.ts';

/** A gap of the survey that may widen a price. */
interface Gap {
  readonly question: string;
  /** What to do to close it, for people. */
  readonly words: string;
  /** What it is a gap of, sorted; empty where there is no such gap. */
  readonly subjects: (worked: Worked) => readonly string[];
}

/** One that closes the same way whatever scheme asks. */
export interface HouseGap extends Gap {
  readonly kind: 'of-house';
  /** The job as it would read with these subjects looked at, and found as the price hopes. */
  readonly closed: (job: Job, subjects: readonly string[]) => Job;
  /** Whether closing it may send cables another way. */
  readonly movesCable: boolean;
}

/** One whose hope depends on what the scheme puts there; it moves no cable. */
interface SchemeGap extends Gap {
  readonly kind: 'of-scheme';
  readonly closed: (job: Job, subjects: readonly string[], worked: Worked) => Job;
}

/** A gap of the survey that may widen a price, and what closes it. */
export type SurveyGap = HouseGap | SchemeGap;

const isUnexplored = (worked: Worked, circuitId: string): boolean => {
  const evidence = worked.foundShapes.get(circuitId)?.evidence;
  return evidence === 'claimed' || evidence === 'none';
};

const ringOrder: HouseGap = {
  kind: 'of-house',
  question: 'ring-order',
  words: 'Read the ring end to end and from both ends: how it runs is known by its label only',
  subjects: (worked) => worked.circuitIds.filter((id) => isUnexplored(worked, id)),
  closed: (job, subjects) => ({
    ...job,
    circuits: job.circuits.map((circuit) =>
      subjects.includes(circuit.id)
        ? { ...circuit, certainty: { ...circuit.certainty, order: 'measured' } }
        : circuit,
    ),
  }),
  movesCable: false,
};

const boxDepths: SchemeGap = {
  kind: 'of-scheme',
  question: 'box-depths',
  words: 'Open the plates that cables are joined at and measure their boxes',
  subjects: (worked) =>
    worked.things.boxes
      .filter((box) => box.action === 'unknown')
      .map((box) => box.id)
      .sort(),
  closed: (job, subjects, worked) => {
    const wanted = new Map(worked.things.boxes.map((box) => [box.id, box.minimumDepthMm]));
    return {
      ...job,
      points: job.points.map((point) =>
        subjects.includes(point.id)
          ? {
              ...point,
              asFound: {
                ...point.asFound,
                boxDepthMm: Math.max(point.asFound?.boxDepthMm ?? 0, wanted.get(point.id) ?? 0),
              },
              certainty: { ...point.certainty, boxDepthMm: 'measured', asFound: 'measured' },
            }
          : point,
      ),
    };
  },
};

const rcboAvailable: HouseGap = {
  kind: 'of-house',
  question: 'rcbo-available',
  words: 'Look at the board: does its maker still sell an RCBO for it?',
  subjects: boardsWithUnknownRcbo,
  closed: (job, subjects) => ({
    ...job,
    boards: job.boards.map((board) =>
      subjects.includes(board.id)
        ? { ...board, rcboAvailable: true, certainty: { ...board.certainty, rcboAvailable: 'seen' } }
        : board,
    ),
  }),
  movesCable: false,
};

/** The circuits without RCD, as is only assumed, that the scheme needs an RCBO for if it is true. */
const rcdFound: HouseGap = {
  kind: 'of-house',
  question: 'rcd-found',
  words: 'Look at the board: is the circuit behind an RCD of 30 mA? That it is not is only assumed',
  subjects: (worked) => rcbosIfAssumed(worked).flatMap(({ at }) => at ?? []),
  closed: (job, subjects) => {
    const isAsked = ({ id }: { readonly id: string }): boolean => subjects.includes(id);
    const asked = job.circuits.filter(isAsked);
    return {
      ...job,
      boards: job.boards.map((board) => {
        const rcds = asked
          .filter((circuit) => circuit.board === board.id)
          .map(({ id }) => ({ id: `${id}/rcd`, type: 'A', mA: 30 }) as const);
        if (rcds.length === 0) return board;
        const certainty = { ...board.certainty, rcds: 'seen' } as const;
        return { ...board, rcds: [...board.rcds, ...rcds], certainty };
      }),
      circuits: job.circuits.map((circuit) =>
        isAsked(circuit)
          ? {
              ...circuit,
              upstreamRcd: `${circuit.id}/rcd`,
              certainty: { ...circuit.certainty, upstreamRcd: 'seen' },
            }
          : circuit,
      ),
    };
  },
  movesCable: false,
};

/** The storeys under whose floors new cable runs and of which nobody has said whether they lift; sorted. */
export function storeysNotTried(worked: Worked): readonly string[] {
  const crossed = new Set(
    worked.runs.flatMap((run) =>
      run.segments.filter(({ medium }) => medium.startsWith('void')).map(({ storeyId }) => storeyId),
    ),
  );
  return worked.job.storeys
    .filter((storey) => crossed.has(storey.id) && storey.floor.liftable === undefined)
    .map((storey) => storey.id)
    .sort();
}

const boardsLiftable: HouseGap = {
  kind: 'of-house',
  question: 'boards-liftable',
  words: 'Find out whether the floors lift where cables run under them',
  subjects: storeysNotTried,
  closed: (job, subjects) => ({
    ...job,
    storeys: job.storeys.map((storey) =>
      subjects.includes(storey.id) ? { ...storey, floor: { ...storey.floor, liftable: true } } : storey,
    ),
  }),
  movesCable: true,
};

/** The gaps that change the job's facts; where cables may run is asked apart, since no fact of the job says it. */
export const surveyGaps: readonly SurveyGap[] = [
  ringOrder,
  boxDepths,
  boardsLiftable,
  rcdFound,
  rcboAvailable,
];
