import { readingsBefore } from '../circuit/readings-before.ts';
import { insulationLimit } from '../proof/expected-limits.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'low' | 'enough' | 'lowVoltage' | 'hold';

/** The insulation of what is there is sound before anything is added to it. */
export const insulationBefore = rule<Message>({
  id: 'ST4',
  title: 'Insulation before the work',
  source: 'BS 7671 643.3, Table 64',
  messages: {
    low: 'Insulation before the work reads {actual} MΩ; {limit} MΩ is the least.',
    enough: 'Insulation before the work reads {actual} MΩ or more.',
    lowVoltage: 'Insulation before the work reads {actual} MΩ, at less than the 500 V that is asked for.',
    hold: 'Hold point: insulation of the circuit was not measured yet; {limit} MΩ is the least.',
  },
  remedies: {
    low: 'Stop. Unplug everything and measure again; find and mend the fault first.',
    lowVoltage: 'Part what cannot bear 500 V and measure again.',
    hold: 'Measure before anything is joined on; keep USB outlets and surge devices off the test.',
  },
  couldFail: true,
  check: (facts) =>
    facts.circuitIds
      .filter((id) => facts.job.circuits.some((circuit) => circuit.id === id))
      .map((id) => ({ subjectId: id, origin: 'found', ...judged(facts, id) })),
});

function judged({ job }: Facts, circuitId: string): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const readings = readingsBefore(job, 'insulation').filter(
    ({ circuit }) => circuit === undefined || circuit === circuitId,
  );
  if (readings.length === 0)
    return { outcome: 'advice', messageId: 'hold', limit: insulationLimit().minimumMegohm, unit: 'MΩ' };
  // Never rounded: 0.96 MΩ would read as the 1 MΩ that it is not.
  const actual = Math.min(...readings.map(({ megohm }) => megohm));
  const numbers = { actual, limit: insulationLimit().minimumMegohm, unit: 'MΩ' };
  if (actual < insulationLimit().minimumMegohm)
    return { outcome: 'fails', messageId: 'low', stopGate: true, ...numbers };
  return readings.every(({ testV }) => testV < insulationLimit().testV)
    ? { outcome: 'advice', messageId: 'lowVoltage', ...numbers }
    : { outcome: 'passes', messageId: 'enough', ...numbers };
}
