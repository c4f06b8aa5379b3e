import { bindsAsRadial, bindsAsRing } from '../circuit/binds-as.ts';
import { endToEndBefore } from '../circuit/readings-before.ts';
import type { CircuitShape } from '../circuit/shape.ts';
import type { Facts } from './facts.ts';
import type { Origin } from './finding.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, rounded, touchedShapes } from './wiring.ts';

/**
 * An end-to-end reading above this means an open loop or a joint gone bad: 10 Ω is more than a kilometre of
 * 2.5 mm². Own arithmetic from IEC 60228 (7.41 mΩ/m).
 */
const OPEN_LOOP_OHM = 10;

/** Line and neutral end to end agree within this. Common practice, no source. */
const AGREE_OHM = 0.05;

type Message =
  | 'proved'
  | 'unproved'
  | 'broken'
  | 'openLoop'
  | 'lollipop'
  | 'interconnected'
  | 'loopsDiffer'
  | 'untold';

/** A ring is a ring: closed, through the board, joined to nothing else, and proved so before work. */
export const ringContinuity = rule<Message>({
  id: 'RG1',
  title: 'Continuity of the ring',
  source: 'BS 7671 433.1.204, 314.4, 643.2; Appendix 15',
  messages: {
    proved: 'The ring of {circuit} is closed, by its order proved or its end-to-end readings.',
    unproved:
      'The ring of {circuit} is not proved: what looks like a ring at the plates may be broken. Work stops until it is.',
    broken: 'The ring of {circuit} does not close: it is fed from one end, or from both with a gap.',
    openLoop: 'The end-to-end reading of the {loop} loop of {circuit} is {actual} Ω: the loop is open.',
    lollipop:
      '{circuit} has a loop that does not pass the board: one cable carries all of it, which is no ring final circuit.',
    interconnected:
      '{circuit} has more than one loop or is joined to another circuit ({others}): it can be fed from where nobody expects, and stay live with its own device off. Work stops until they are parted.',
    loopsDiffer:
      'Line and neutral of {circuit} read {line} and {neutral} Ω end to end: {actual} Ω apart, {limit} Ω usual. A bad joint or a bridge is likely.',
    untold: 'Nobody has told whether {circuit} is a ring or a radial.',
  },
  remedies: {
    unproved:
      'Readings end to end of line, neutral and protective conductor at the board, dead and proved so.',
    broken: 'Find the gap and mend it, or rate the circuit as two radials by a smaller device.',
    openLoop: 'Find the gap and mend it before anything is added.',
    lollipop: 'Bring both ends of the loop to the board, or rate the circuit as a radial.',
    interconnected: 'Part the circuits, and test again.',
    loopsDiffer: 'Find the joint or the bridge before anything is added.',
    untold: 'Look at the terminals in the board, and take readings.',
  },
  couldFail: true,
  applies: (facts) => touchedShapes(facts).some((shape) => !bindsAsRadial(shape)),
  check: (facts) =>
    touchedShapes(facts)
      .filter((shape) => !bindsAsRadial(shape))
      .map((shape) => judged(facts, shape)),
});

function judged(facts: Facts, shape: CircuitShape): CheckResult<Message> {
  const others = shape.joinedTo.map((id) => circuitName(facts, id)).join(', ');
  const head = {
    subjectId: shape.circuitId,
    origin: originOf(facts, shape),
    values: { circuit: circuitName(facts, shape.circuitId), others: others === '' ? 'itself' : others },
  };
  if (!bindsAsRing(shape)) return { ...head, outcome: 'not-proven', messageId: 'untold' };
  if (shape.shape === 'broken-ring')
    return { ...head, outcome: 'fails', messageId: 'broken', stopGate: true };
  if (shape.shape === 'lollipop') return { ...head, outcome: 'fails', messageId: 'lollipop', stopGate: true };
  // It may stay live from the other circuit, or past the chord, when one device is off.
  if (shape.shape === 'interconnected')
    return { ...head, outcome: 'fails', messageId: 'interconnected', stopGate: true };
  return byReadings(facts, shape, head);
}

/** What the scheme makes of a circuit that was well before is the scheme's; the rest was found. */
function originOf(facts: Facts, shape: CircuitShape): Origin {
  const before = facts.foundShapes.get(shape.circuitId);
  return before === undefined || before.shape === shape.shape ? 'found' : 'scheme';
}

function byReadings(
  facts: Facts,
  shape: CircuitShape,
  head: Pick<CheckResult<Message>, 'subjectId' | 'origin' | 'values'>,
): CheckResult<Message> {
  const ohmOf = (loop: 'L' | 'N' | 'cpc') => endToEndBefore(facts.job, shape.circuitId, loop);
  const [line, neutral, cpc] = [ohmOf('L'), ohmOf('N'), ohmOf('cpc')];
  const open = Object.entries({ L: line, N: neutral, cpc }).find(([, ohm]) => (ohm ?? 0) > OPEN_LOOP_OHM);
  if (open) {
    const [loop, ohm] = open;
    const figures = { actual: ohm ?? 0, limit: OPEN_LOOP_OHM, unit: 'Ω' };
    const values = { ...head.values, ...figures, loop };
    return {
      ...head,
      ...figures,
      origin: 'found',
      outcome: 'fails',
      messageId: 'openLoop',
      stopGate: true,
      values,
    };
  }
  if (line !== null && neutral !== null && rounded(Math.abs(line - neutral)) > AGREE_OHM) {
    const figures = { actual: rounded(Math.abs(line - neutral)), limit: AGREE_OHM, unit: 'Ω' };
    const values = { ...head.values, ...figures, line, neutral };
    // Loops that differ prove no ring; with its order measured otherwise, a person weighs the two.
    const outcome = shape.evidence === 'proved' ? 'decide' : 'not-proven';
    const stopGate = outcome === 'not-proven';
    return { ...head, ...figures, origin: 'found', outcome, messageId: 'loopsDiffer', values, stopGate };
  }
  if (shape.evidence === 'proved') return { ...head, outcome: 'passes', messageId: 'proved' };
  return { ...head, origin: 'found', outcome: 'not-proven', messageId: 'unproved', stopGate: true };
}
