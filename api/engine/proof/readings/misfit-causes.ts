import type { CircuitFit } from './circuit-fit.ts';
import type { FittedPoint } from './fit-circuit.ts';
import type { MisfitCause } from './inferred-circuit.ts';
import { openConductors } from './loop-readings.ts';

/** Line and neutral agree within this from end to end, Ω. Source: published guidance on the test (from memory). */
const ALIKE_OHM = 0.05;
/** Leads that were not taken off read at least this, Ω; a parallel way round takes at least as much away. */
const LEADS_OHM = 0.03;
/** Two loops disagree on a point where their excesses differ by so many spreads. */
const APART_SPREADS = 3;
/** A crossed reading below this part of what it should be at the board shows that ends were paired, not crossed. */
const PAIRED_RATIO = 0.5;

/** The usual causes of readings that do not fit, each with what it concerns; none where all fits. */
export function misfitCauses(fit: CircuitFit, circuitId: string): readonly MisfitCause[] {
  return [
    ...brokenConductor(fit, circuitId),
    ...openOnTheWay(fit),
    ...lineNeutralDiffer(fit, circuitId),
    ...wrongPairing(fit),
    ...sharedExcess(fit, circuitId),
    ...anotherWayRound(fit),
    ...poorContact(fit),
    ...cpcDoubts(fit, circuitId),
  ];
}

function brokenConductor({ readings }: CircuitFit, circuitId: string): readonly MisfitCause[] {
  return openConductors(readings).map((conductor) => ({
    kind: 'broken-conductor',
    subjects: [circuitId],
    words: `${conductor} is open from end to end: a broken conductor, a loose terminal, or ends of two circuits.`,
  }));
}

/** Points that one end of the ring does not reach: the break lies between them and those that it does. */
function openOnTheWay({ readings }: CircuitFit): readonly MisfitCause[] {
  return [...readings.loops].flatMap(([loop, byPoint]) =>
    (['A', 'B'] as const).flatMap((end): readonly MisfitCause[] => {
      const open = [...byPoint].flatMap(([point, at]) => (at.open.includes(end) ? [point] : []));
      if (open.length === 0) return [];
      const reached = [...byPoint.values()].some(
        ({ fromA, fromB }) => (end === 'A' ? fromA : fromB) !== null,
      );
      const words = reached
        ? `From end ${end}, ${loop} does not close at these points and does at others: a conductor is broken, or a terminal loose, between the ones and the others.`
        : `From end ${end}, ${loop} closes nowhere: the end of another cable, or a break before the first point.`;
      return [{ kind: 'broken-conductor', subjects: open, words }];
    }),
  );
}

/** Single points that read less than their place on the ring accounts for: current has a second way there. */
function anotherWayRound({ fitted }: CircuitFit): readonly MisfitCause[] {
  return fitted.channels.flatMap(({ loop, how }, channel): readonly MisfitCause[] => {
    if (how !== 'linked') return [];
    const nullOhm = fitted.nullOhm[channel] ?? 0;
    const contactOhm = fitted.contactOhm[channel] ?? 0;
    const low = fitted.points.filter(({ seen }) =>
      seen.excesses.some(
        (each) =>
          each.channel === channel &&
          each.ohm - nullOhm < -APART_SPREADS * Math.hypot(Math.sqrt(each.square), contactOhm),
      ),
    );
    if (low.length === 0) return [];
    const subjects = low.map(({ point }) => point.id);
    const isEarth = loop === 'L-cpc' || loop === 'cpc';
    const words = `${loop} reads less at these points than any place on one ring can: ${
      isEarth
        ? 'metal or another circuit lies parallel to the protective conductor there'
        : 'there is another way round, as where two rings are joined or a bridge lies across one'
    }.`;
    return [{ kind: isEarth ? 'parallel-earth-paths' : 'interconnected-rings', subjects, words }];
  });
}

function lineNeutralDiffer({ loop }: CircuitFit, circuitId: string): readonly MisfitCause[] {
  const { r1Ohm, rnOhm } = loop;
  if (r1Ohm === null || rnOhm === null || Math.abs(r1Ohm - rnOhm) <= ALIKE_OHM) return [];
  const words = `Line and neutral differ by ${Math.abs(r1Ohm - rnOhm).toFixed(2)} Ω from end to end: a poor contact in one of them, or ends of two circuits.`;
  return [{ kind: 'line-neutral-differ', subjects: [circuitId], words }];
}

/** Ends paired instead of crossed read near nought at the board and a quarter of the loop in the middle. */
function wrongPairing({ readings, fitted, loop }: CircuitFit): readonly MisfitCause[] {
  const { r1Ohm, rnOhm, r2Ohm } = loop;
  return fitted.channels.flatMap((channel): readonly MisfitCause[] => {
    if (channel.how !== 'crossed') return [];
    const [one, other] = [r1Ohm ?? rnOhm, channel.loop === 'L-N' ? (rnOhm ?? r1Ohm) : r2Ohm];
    if (one === null || other === null || one + other === 0) return [];
    const atBoard = (one * other) / (one + other);
    const low = [...(readings.loops.get(channel.loop) ?? [])].flatMap(([point, { crossed }]) =>
      crossed !== null && crossed.ohm < PAIRED_RATIO * atBoard ? [point] : [],
    );
    if (low.length === 0) return [];
    const words = `Read crossed, ${channel.loop} is far too low near the board: the ends were paired, not crossed.`;
    return [{ kind: 'wrong-pairing', subjects: low, words }];
  });
}

/** What all readings of one loop share: leads left in, or a second way round. */
function sharedExcess({ fitted }: CircuitFit, circuitId: string): readonly MisfitCause[] {
  return fitted.channels.flatMap(({ loop, how }, i): readonly MisfitCause[] => {
    const sharedOhm = fitted.nullOhm[i] ?? 0;
    if (how !== 'linked' || Math.abs(sharedOhm) < LEADS_OHM) return [];
    const mostly = `${Math.abs(sharedOhm).toFixed(2)} Ω`;
    if (sharedOhm > 0)
      return [
        {
          kind: 'leads-not-taken-off',
          subjects: [circuitId],
          words: `All readings of ${loop} are ${mostly} too high: leads not nulled, or a poor contact at the board.`,
        },
      ];
    return [lowShared(loop, mostly, circuitId)];
  });
}

function lowShared(loop: string, mostly: string, circuitId: string): MisfitCause {
  const subjects = [circuitId];
  if (loop === 'L-cpc' || loop === 'cpc')
    return {
      kind: 'parallel-earth-paths',
      subjects,
      words: `All readings of ${loop} are ${mostly} too low: metal boxes, pipes or another circuit lie parallel to the protective conductor.`,
    };
  if (loop === 'L-N')
    return {
      kind: 'load-left-connected',
      subjects,
      words: `All readings of ${loop} are ${mostly} too low: something is left connected, a neon, a USB outlet or a load.`,
    };
  return {
    kind: 'interconnected-rings',
    subjects,
    words: `All readings of ${loop} are ${mostly} too low: another way round, as between two rings that are joined.`,
  };
}

function poorContact({ fitted }: CircuitFit): readonly MisfitCause[] {
  const apart = fitted.points.flatMap((point) => (loopsDisagree(point, fitted) ? [point.point.id] : []));
  if (apart.length === 0) return [];
  const words = 'Two loops disagree on these points: remake the contact at the link and read them again.';
  return [{ kind: 'poor-contact', subjects: apart, words }];
}

/** Whether two loops give a point excesses that no one spur accounts for. */
export function loopsDisagree(
  { seen }: FittedPoint,
  { channels, nullOhm, contactOhm }: CircuitFit['fitted'],
): boolean {
  const [one, other] = seen.excesses
    .filter(({ channel }) => channels[channel]?.how === 'linked')
    .map(({ channel, ohm, square }) => {
      const totalOhm = channels[channel]?.totalOhm ?? 1;
      return {
        fraction: (ohm - (nullOhm[channel] ?? 0)) / totalOhm,
        square: (square + (contactOhm[channel] ?? 0) ** 2) / totalOhm ** 2,
      };
    });
  if (one === undefined || other === undefined) return false;
  return Math.abs(one.fraction - other.fraction) > APART_SPREADS * Math.sqrt(one.square + other.square);
}

function cpcDoubts({ loop }: CircuitFit, circuitId: string): readonly MisfitCause[] {
  const { ratio, cpc } = loop;
  if (ratio === null || cpc !== null) return [];
  const words =
    ratio < 1
      ? `r2 is only ${ratio.toFixed(2)} times r1: metal or another circuit lies parallel to the protective conductor.`
      : `r2 is ${ratio.toFixed(2)} times r1, which fits no usual cable: sizes are mixed, or a contact is poor.`;
  return [{ kind: ratio < 1 ? 'parallel-earth-paths' : 'other-cpc-size', subjects: [circuitId], words }];
}
