import { readingsBefore } from '../circuit/readings-before.ts';
import { CONDITIONAL_KA } from '../proof/expected-limits.ts';
import { sourceLoop } from '../proof/source-loop.ts';
import { NOMINAL_V } from '../proof/spur-load.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName } from './wiring.ts';

type Message = 'within' | 'below' | 'unknown';

/** The device breaks the greatest fault current that can flow where it is. */
export const breakingCapacity = rule<Message>({
  id: 'BC1',
  title: 'Breaking capacity',
  source: 'BS 7671 434.5.1, 536.4.201',
  messages: {
    within: 'The device of {circuit} breaks {limit} kA; {actual} kA can flow {where}.',
    below:
      'The device of {circuit} breaks {limit} kA by itself; {actual} kA can flow {where}. A consumer unit tested as a whole may bear 16 kA.',
    unknown: 'What the device of {circuit} breaks, or the fault current at the board, is not known.',
  },
  remedies: {
    below: 'See that the consumer unit is marked for it, or fit a device that breaks more.',
    unknown: 'Read it off the device (6000 in a box is 6 kA), and measure the fault current at the board.',
  },
  couldFail: true,
  check: (facts) => facts.circuitIds.map((id) => judged(facts, id)),
});

/** As measured before the work, else what the loop at the origin lets flow. */
function faultKA(facts: Facts, circuitId: string): number | null {
  const read = readingsBefore(facts.job, 'pfc').map(({ kA }) => kA);
  const known = [...read, ...(facts.job.supply.pfcKA === undefined ? [] : [facts.job.supply.pfcKA])];
  if (known.length > 0) return Math.max(...known);
  const { ohm } = sourceLoop(facts, circuitId);
  return ohm === null || ohm === 0 ? null : NOMINAL_V / ohm / 1000;
}

function judged(facts: Facts, circuitId: string): CheckResult<Message> {
  const found = facts.found.circuits.find(({ id }) => id === circuitId)?.device ?? null;
  const device = facts.proposed.circuits.find(({ id }) => id === circuitId)?.device ?? null;
  const origin = facts.scheme !== null && device !== found ? 'scheme' : 'found';
  const values = { circuit: circuitName(facts, circuitId), where: 'at the board' };
  const actualKA = faultKA(facts, circuitId);
  const breakingKA = device?.breakingKA ?? null;
  if (actualKA === null || breakingKA === null)
    return { outcome: 'advice', messageId: 'unknown', subjectId: circuitId, origin, values };
  const told = { subjectId: circuitId, origin, ...figures(actualKA, breakingKA, 'kA', values) } as const;
  if (actualKA <= breakingKA) return { ...told, outcome: 'passes', messageId: 'within' };
  return { ...told, outcome: actualKA > CONDITIONAL_KA ? 'fails' : 'decide', messageId: 'below' };
}
