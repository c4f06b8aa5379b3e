import { Simulation } from 'eecircuit-engine';
import { prepareFlow } from '#engine/proof/flow/prepare-flow.ts';
import { newFlowResult, solveFlow } from '#engine/proof/flow/solve-flow.ts';
import { reachedNodes } from '../engine/proof/flow/dense-flow.ts';
import type { LoadedNetwork } from '../engine/proof/flow/random-network.ts';

const NOMINAL_V = 230;
/** What the answers may differ by: a millionth of each value, and the simulator's rounding of 230 V. */
export const PART = 1e-6;
const ROUNDING = 1e-9;

/** A circuit for both to solve, with a leg open where there is one that a ring can spare. */
export interface Trial extends LoadedNetwork {
  readonly name: string;
  readonly openLeg: number;
}

/** One circuit in the simulator's words: a source of its own, and behind every leg an ammeter, which is a source of 0 V. */
function netlistOf({ network, loadA, openLeg }: Trial, at: number): readonly string[] {
  const reached = reachedNodes(network);
  const node = (name: number): string => `c${at}n${name}`;
  const legs = [...network.from].flatMap((from, leg) => {
    const to = network.to[leg] ?? from;
    const ohm = network.ohm[leg] ?? 0;
    if (leg === openLeg || from === to || !reached.has(from)) return [];
    if (ohm === 0) return [`Va${at}l${leg} ${node(from)} ${node(to)} DC 0`];
    return [
      `R${at}l${leg} ${node(from)} c${at}m${leg} ${ohm}`,
      `Va${at}l${leg} c${at}m${leg} ${node(to)} DC 0`,
    ];
  });
  const loads = [...reached].map((name) => `I${at}n${name} ${node(name)} 0 DC ${loadA[name] ?? 0}`);
  return [`Vs${at} ${node(network.source)} 0 DC ${NOMINAL_V}`, ...legs, ...loads];
}

/** The simulator, once it runs; it solves many circuits at once, each with a source of its own. */
export class Circuits {
  readonly #simulation: Simulation;

  private constructor(simulation: Simulation) {
    this.#simulation = simulation;
  }

  static async start(): Promise<Circuits> {
    const simulation = new Simulation();
    await simulation.start();
    return new Circuits(simulation);
  }

  /** Voltages and currents by their names in the netlist. */
  async solve(trials: readonly Trial[]): Promise<ReadonlyMap<string, number>> {
    const lines = trials.flatMap(netlistOf);
    this.#simulation.setNetList(
      [
        '* circuits',
        '.options reltol=1e-9 abstol=1e-12 vntol=1e-12 gmin=1e-18',
        ...lines,
        '.op',
        '.end',
      ].join('\n'),
    );
    const result = await this.#simulation.runSim();
    const errors = this.#simulation.getError();
    if (errors.length > 0) throw new Error(errors.join('\n'));
    if (result.dataType !== 'real') throw new Error(`Not an operating point: ${result.dataType}`);
    return new Map(result.data.map(({ name, values }) => [name, values[0] ?? Number.NaN]));
  }
}

/** How far a value is out, as a part of what it may be out. */
const outBy = (found: number, meant: number): number =>
  Math.abs(found - meant) / (PART * Math.abs(meant) + ROUNDING);

/** How far the two are apart on one circuit. */
export interface Comparison {
  readonly name: string;
  readonly compared: number;
  readonly worst: number;
}

/** Solves a circuit and holds it against what the simulator said of the circuit of that number. */
export function compared(trial: Trial, at: number, values: ReadonlyMap<string, number>): Comparison {
  const { network, loadA, openLeg, name } = trial;
  const plan = prepareFlow(network, { openLeg });
  const result = newFlowResult(plan);
  solveFlow(plan, loadA, result);
  const outs: number[] = [];
  // What the simulator was not given carries nothing, or is not reached.
  const isAbsent = (is: boolean): number => (is ? 0 : Number.POSITIVE_INFINITY);
  for (const [leg, currentA] of result.legA.entries()) {
    const meant = values.get(`i(va${at}l${leg})`);
    if (meant === undefined) outs.push(isAbsent(currentA === 0));
    else outs.push(outBy(currentA, meant));
  }
  for (const [node, dropV] of result.dropV.entries()) {
    const meant = values.get(`v(c${at}n${node})`);
    if (meant === undefined) outs.push(isAbsent(Number.isNaN(dropV)));
    else outs.push(outBy(dropV, NOMINAL_V - meant));
  }
  const suppliedA = -(values.get(`i(vs${at})`) ?? Number.NaN);
  const drawnA = loadA.reduce((sum, each, node) => (Number.isNaN(result.dropV[node]) ? sum : sum + each), 0);
  outs.push(outBy(drawnA, suppliedA));
  return {
    name,
    compared: outs.length,
    worst: Math.max(...outs.map((out) => (Number.isNaN(out) ? Number.POSITIVE_INFINITY : out))),
  };
}
