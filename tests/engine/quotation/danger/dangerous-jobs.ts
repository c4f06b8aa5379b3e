import type { Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '../../demo-jobs/demo-estimates.ts';

const job = demoJob('saltglass-row');
const before = { phase: 'before', circuit: 'ring-house' } as const;

const withReading = (reading: Reading): Job => ({ ...job, readings: [...job.readings, reading] });
const withAnswer = (question: string, value: string): Job => ({
  ...job,
  answers: [
    ...job.answers.filter((each) => each.question !== question),
    { question, value, certainty: 'seen' },
  ],
});

/** Without its readings a ring is what its legs say. */
const unread: Job = {
  ...job,
  readings: [],
  circuits: job.circuits.map((circuit) => ({ ...circuit, certainty: { order: 'assumed' } })),
};
const ringLeg = unread.legs.filter(({ to }) => 'point' in to && !to.point.startsWith('s1'))[3];

/** Two points of the ring joined by a further cable: a second loop. */
const [, one, , other] = unread.legs;

/** The house with something found that shuts a stop gate, by the rule and message that shuts it. */
export const dangerousJobs: Readonly<Record<string, Job>> = {
  'ST3 unsafe': withAnswer('board-condition', 'unsafe'),
  'ST1 absent': withAnswer('means-of-earthing', 'absent'),
  'ST5 wrong': withReading({ ...before, id: 'wrong', kind: 'polarity', at: 'r1-hallway', ok: false }),
  'ST2 missing': {
    ...job,
    supply: { ...job.supply, bonding: [{ service: 'gas', seen: false }], absentServices: ['water'] },
  },
  'ST4 low': withReading({
    ...before,
    id: 'low',
    kind: 'insulation',
    between: 'LN-cpc',
    megohm: 0.3,
    testV: 500,
  }),
  'RG1 broken': { ...unread, legs: unread.legs.filter(({ id }) => id !== ringLeg?.id) },
  'RG1 openLoop': {
    ...job,
    readings: job.readings.map((reading) =>
      reading.kind === 'loop' && reading.from === 'end-to-end' && reading.loop === 'cpc'
        ? { ...reading, ohm: 99 }
        : reading,
    ),
  },
  // The loop's far end comes back to its first point, and one cable feeds all of it.
  'RG1 lollipop': {
    ...unread,
    legs: unread.legs.map((leg) =>
      'origin' in leg.to && leg.to.end === 'B' ? { ...leg, to: { point: 'r1-hallway' } } : leg,
    ),
  },
  'RG1 interconnected': {
    ...unread,
    legs: [
      ...unread.legs,
      ...(one === undefined || other === undefined
        ? []
        : [{ id: 'leg-bridge', circuit: 'ring-house', from: one.to, to: other.to }]),
    ],
  },
};
