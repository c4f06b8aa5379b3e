import type { Supply } from '#model/installation.ts';
import { readingsBefore } from '../circuit/readings-before.ts';
import { isGuess } from '../plan/is-guess.ts';
import { declaredImpedance, steadyElectrodeOhm } from '../proof/declared-impedance.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { rounded } from './wiring.ts';

/** Residual current of the RCD that disconnects on TT, mA, and the touch voltage allowed, V. Source: BS 7671 411.5.3. */
const TT_RCD_MA = 30;
const TOUCH_V = 50;
type Message =
  | 'unknown'
  | 'assumed'
  | 'known'
  | 'high'
  | 'viaZs'
  | 'electrode'
  | 'unstable'
  | 'electrodeHigh';

/** Whether new points disconnect in a fault can be judged only where the loop outside the circuit is known. */
export const faultLoopKnown = rule<Message>({
  id: 'SU7',
  title: 'Fault loop before the circuit',
  source: 'BS 7671 411.4, 411.5.3, 643.7.3',
  messages: {
    unknown: 'The external loop impedance is not known: disconnection of the new points cannot be judged.',
    assumed:
      'The external loop impedance is assumed ({actual} Ω), not measured: disconnection of the new points cannot be judged.',
    known: 'The loop impedance {where} is {actual} Ω; {limit} Ω is the most that is usually declared.',
    high: 'The loop impedance {where} is {actual} Ω, above the {limit} Ω that is usually declared at most.',
    viaZs: 'The loop impedance {where} was measured: {actual} Ω, with all that lies before it.',
    electrode:
      'The loop through the electrode is {actual} Ω: with 30 mA it puts {volts} V on what is touched, of {limit} V allowed.',
    unstable:
      'The loop through the electrode is {actual} Ω: with 30 mA it puts {volts} V on what is touched, of {limit} V allowed; above 200 Ω it may not stay so.',
    electrodeHigh:
      'The loop through the electrode is {actual} Ω: with 30 mA it puts {volts} V on what is touched, above the {limit} V allowed.',
  },
  remedies: {
    unknown: 'Measure Ze at the intake, or the loop at the board or an outlet, before the work.',
    assumed: 'Measure Ze at the intake, or the loop at the board or an outlet, before the work.',
    high: 'Measure again; ask the distributor, and look for a loose earth.',
    unstable: 'Improve the electrode.',
    electrodeHigh: 'Improve the electrode before anything is added.',
  },
  couldFail: true,
  check: (facts) => [
    // The new points rest on it, so it is the scheme that stays unproved.
    { subjectId: 'supply', origin: facts.scheme === null ? 'found' : 'scheme', ...judged(facts) },
  ],
});

type Judgement = Omit<CheckResult<Message>, 'subjectId' | 'origin'>;

interface Loop {
  readonly ohm: number;
  /** Words for where it was read. */
  readonly where: string;
  readonly kind: 'measured' | 'assumed' | 'zs';
}

function judged(facts: Facts): Judgement {
  const loop = loopBefore(facts);
  if (loop === null) return { outcome: 'not-proven', messageId: 'unknown' };
  const actual = rounded(loop.ohm);
  const unit = 'Ω';
  if (loop.kind === 'assumed') return { outcome: 'not-proven', messageId: 'assumed', actual, unit };
  const { earthing } = facts.job.supply;
  if (earthing === 'TT') return byElectrode(loop.ohm);
  const values = { where: loop.where };
  if (loop.kind === 'zs' || earthing === undefined)
    return { outcome: 'passes', messageId: 'viaZs', actual, unit, values };
  return byDeclared(earthing, { actual, unit, values });
}

function byDeclared(
  earthing: Exclude<Supply['earthing'], 'TT' | undefined>,
  head: Required<Pick<CheckResult<Message>, 'unit' | 'values'>> & { readonly actual: number },
): Judgement {
  const limit = declaredImpedance(earthing)?.ohm ?? 0;
  return head.actual > limit
    ? { ...head, limit, outcome: 'advice', messageId: 'high' }
    : { ...head, limit, outcome: 'passes', messageId: 'known' };
}

function byElectrode(ohm: number): Judgement {
  const volts = rounded((ohm * TT_RCD_MA) / 1000);
  const head = { actual: rounded(ohm), limit: TOUCH_V, unit: 'V', values: { volts } };
  if ((ohm * TT_RCD_MA) / 1000 > TOUCH_V) return { ...head, outcome: 'fails', messageId: 'electrodeHigh' };
  return ohm > steadyElectrodeOhm()
    ? { ...head, outcome: 'advice', messageId: 'unstable' }
    : { ...head, outcome: 'passes', messageId: 'electrode' };
}

/** The nearest to the intake that anybody measured; an assumed Ze where nobody did; null where nobody said. */
function loopBefore(facts: Facts): Loop | null {
  const { supply } = facts.job;
  if (supply.zeOhm !== undefined && !isGuess(supply.certainty?.zeOhm))
    return { ohm: supply.zeOhm, where: 'at the intake', kind: 'measured' };
  const measured = readAtIntake(facts) ?? knownAtBoard(facts) ?? readAtCircuit(facts);
  if (measured !== null) return measured;
  return supply.zeOhm !== undefined && supply.certainty?.zeOhm === 'assumed'
    ? { ohm: supply.zeOhm, where: 'at the intake', kind: 'assumed' }
    : null;
}

function readAtIntake({ job }: Facts): Loop | null {
  const readings = readingsBefore(job, 'ze').map(({ ohm }) => ohm);
  // Of several readings the worst is the one to design by.
  return readings.length === 0
    ? null
    : { ohm: Math.max(...readings), where: 'at the intake', kind: 'measured' };
}

/** At the boards of the circuits touched, where it is known at every one of them: the worst. */
function knownAtBoard({ circuitIds, proposed }: Facts): Loop | null {
  const boards = circuitIds.map((id) => proposed.circuits.find((circuit) => circuit.id === id)?.board);
  const ohms = boards.map((board) => (isGuess(board?.certainty?.zdbOhm) ? undefined : board?.zdbOhm));
  const known = ohms.filter((ohm) => ohm !== undefined);
  if (known.length === 0 || known.length < ohms.length) return null;
  return { ohm: Math.max(...known), where: 'at the board', kind: 'measured' };
}

/** The highest Zs that was read before the work of the circuits touched: it holds all that lies before them. */
function readAtCircuit({ job, circuitIds }: Facts): Loop | null {
  const labels = new Map([...job.points, ...job.boards].map(({ id, label }) => [id, label]));
  const [worst] = readingsBefore(job, 'zs')
    .filter(({ circuit }) => circuit === undefined || circuitIds.includes(circuit))
    .sort((a, b) => b.ohm - a.ohm);
  if (worst === undefined) return null;
  const label = labels.get(worst.at ?? '');
  return { ohm: worst.ohm, where: label === undefined ? 'at an outlet' : `at ${label}`, kind: 'zs' };
}
