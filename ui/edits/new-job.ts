import { JOB_FORMAT, JOB_VERSION, type Job, type Terms } from '#model/job.ts';
import { newId } from '../new-id.ts';

/** What a new job begins with: its name, and the terms of the firm that begins it. */
export interface JobStart {
  readonly reference: string;
  readonly title: string;
  readonly terms: Pick<Terms, 'labour' | 'vat'>;
}

/** The edition of the wiring rules that new jobs are designed to. */
const EDITION = 'BS 7671:2018+A4:2026';

/**
 * An empty job that can be read and estimated: one storey without walls, a board with one circuit of sockets,
 * nothing recorded of the supply. What nobody has seen stays out of it, and so counts as unknown.
 */
export function newJob({ reference, title, terms }: JobStart): Job {
  const board = newId();
  return {
    format: JOB_FORMAT,
    version: JOB_VERSION,
    id: newId(),
    reference,
    title,
    edition: EDITION,
    site: { customer: '', address: [], nation: 'england', premises: 'house' },
    storeys: [
      {
        id: newId(),
        name: 'Ground floor',
        floorLevelMm: 0,
        heightMm: 2400,
        floor: {
          build: 'suspended-timber',
          voidMm: 300,
          covering: 'boards',
          certainty: { build: 'assumed', voidMm: 'assumed', covering: 'assumed' },
        },
        ceiling: { lining: 'plasterboard', loft: false, certainty: { lining: 'assumed', loft: 'assumed' } },
        walls: [],
        rooms: [],
        fixtures: [],
        stairwells: [],
        certainty: { heightMm: 'assumed' },
      },
    ],
    supply: {
      nominalV: 230,
      bonding: [],
      otherSources: [],
      certainty: { otherSources: 'unknown' },
    },
    boards: [{ id: board, label: 'Consumer unit', rcds: [], certainty: { rcds: 'unknown' } }],
    circuits: [{ id: newId(), name: 'Sockets', board, use: 'sockets', certainty: { use: 'assumed' } }],
    points: [],
    legs: [],
    readings: [],
    answers: [],
    schemes: [],
    terms: { labour: terms.labour, vat: terms.vat },
    stock: [],
    assets: [],
  };
}

/** A job as a copy under an id of its own, named as one. */
export const copyOfJob = (job: Job, title: string): Job => ({ ...job, id: newId(), title });
