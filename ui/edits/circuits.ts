import { isGuess } from '#engine/plan/is-guess.ts';
import type { Circuit, Device } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import type { JobEdit } from '../job-events.ts';
import { type FactOf, type FactValue, putCertainty, putFact } from './facts.ts';

/** The names of a circuit's facts. */
export type CircuitFact = FactOf<Circuit>;
type Named = Pick<Circuit, 'id' | 'name'>;
/** A load of a circuit that no point stands for. */
export type CircuitLoad = NonNullable<Circuit['loads']>[number];

/** Adds a circuit of sockets to a board. */
export const addCircuit = (id: string, name: string, board: string): JobEdit => ({
  label: `Add ${name}`,
  change: ({ circuits }) => {
    circuits.push({ id, name, board, use: 'sockets' });
  },
});

/** Sets a fact of a circuit; null takes it away where it need not be there. */
export const setCircuitFact = <K extends CircuitFact>(
  { id, name }: Named,
  fact: K,
  value: FactValue<Circuit, K>,
): JobEdit => ({
  label: `Change ${name}`,
  change: ({ circuits }) => {
    const circuit = circuits.find((each) => each.id === id);
    if (circuit !== undefined) putFact<Circuit, K>(circuit, fact, value);
  },
});

/** Says how sure a fact of a circuit is; `order` is how its points follow each other (measured: proved by readings). */
export const setCircuitCertainty = (
  { id, name }: Named,
  fact: CircuitFact | 'order',
  certainty: Certainty | null,
): JobEdit => ({
  label: `Change how sure a fact of ${name} is`,
  change: ({ circuits }) => {
    const circuit = circuits.find((each) => each.id === id);
    if (circuit === undefined) return;
    // Of what no field of the file stands for, seen says more than nothing said: the order; that no RCD is before it.
    const isFieldless = fact === 'order' || (fact === 'upstreamRcd' && circuit.upstreamRcd === undefined);
    if (isFieldless && certainty === 'seen') circuit.certainty = { ...circuit.certainty, [fact]: 'seen' };
    else putCertainty(circuit, fact, certainty);
  },
});

/**
 * Marks the order of a circuit by how its cables were entered. Assumed cables make it assumed; others at most seen, since
 * measured says that readings prove it, and leave alone what is proved already.
 */
export const markOrder = ({ id, name }: Named, certainty: Certainty): JobEdit => ({
  label: `Change how sure the order of ${name} is`,
  change: (job) => {
    const circuit = job.circuits.find((each) => each.id === id);
    const isGuessed = isGuess(certainty);
    if (!isGuessed && circuit?.certainty?.order === 'measured') return;
    setCircuitCertainty({ id, name }, 'order', isGuessed ? certainty : 'seen').change(job);
  },
});

/** Marks the device by how a part of it was entered: what was assumed before stays so until it is said of the whole. */
export const markDevice = ({ id, name }: Named, certainty: Certainty): JobEdit => ({
  label: `Change how sure the device of ${name} is`,
  change: (job) => {
    const before = job.circuits.find((each) => each.id === id)?.certainty?.device;
    if (before !== 'assumed') setCircuitCertainty({ id, name }, 'device', certainty).change(job);
  },
});

/** Records the board's RCD that a circuit is behind, or that it is behind none; null: nobody looked. */
export const setUpstreamRcd = (
  { id, name }: Named,
  rcd: { readonly id: string } | 'none' | null,
): JobEdit => ({
  label: `Change ${name}`,
  change: (job) => {
    const circuit = job.circuits.find((each) => each.id === id);
    if (circuit === undefined) return;
    putFact<Circuit, 'upstreamRcd'>(circuit, 'upstreamRcd', null);
    if (rcd === 'none') circuit.certainty = { ...circuit.certainty, upstreamRcd: 'seen' };
    else if (rcd !== null) circuit.upstreamRcd = rcd.id;
  },
});

/** Sets some of what a circuit's device is; one that was not recorded yet begins with its rating. */
export const setDevice = (
  { id, name }: Named,
  facts: { readonly [K in keyof Device]?: FactValue<Device, K> },
): JobEdit => ({
  label: `Change the device of ${name}`,
  change: ({ circuits }) => {
    const circuit = circuits.find((each) => each.id === id);
    const { ratingA } = facts;
    // What is not told of it stays unknown: a rating alone may be a breaker’s, a fuse’s or an RCBO’s.
    const device: Device | null = circuit?.device ?? (ratingA === undefined ? null : { ratingA });
    if (circuit === undefined || device === null) return;
    if (facts.standard !== undefined) putFact<Device, 'standard'>(device, 'standard', facts.standard);
    if (facts.ratingA !== undefined) putFact<Device, 'ratingA'>(device, 'ratingA', facts.ratingA);
    if (facts.curve !== undefined) putFact<Device, 'curve'>(device, 'curve', facts.curve);
    if (facts.breakingKA !== undefined) putFact<Device, 'breakingKA'>(device, 'breakingKA', facts.breakingKA);
    if (facts.letThroughA2s !== undefined)
      putFact<Device, 'letThroughA2s'>(device, 'letThroughA2s', facts.letThroughA2s);
    if (facts.rcd !== undefined) putFact<Device, 'rcd'>(device, 'rcd', facts.rcd);
    circuit.device = device;
  },
});

/** Sets the loads of a circuit that no point stands for; none takes the list away. */
export const setCircuitLoads = ({ id, name }: Named, loads: readonly CircuitLoad[]): JobEdit => ({
  label: `Change the loads of ${name}`,
  change: ({ circuits }) => {
    const circuit = circuits.find((each) => each.id === id);
    if (circuit !== undefined)
      putFact<Circuit, 'loads'>(circuit, 'loads', loads.length === 0 ? null : [...loads]);
  },
});
