import { Simulation } from 'eecircuit-engine';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { prepareFlow } from '#engine/proof/flow/prepare-flow.ts';
import { newFlowResult, solveFlow } from '#engine/proof/flow/solve-flow.ts';
import { reachedNodes } from '../engine/proof/flow/dense-flow.ts';
import {
  type LoadedNetwork,
  type NetworkKind,
  networkKinds,
  randomFrom,
  randomNetwork,
} from '../engine/proof/flow/random-network.ts';

/** Another seed gives other circuits; the failure message names the one circuit that it is about. */
const SEED = 20_261_125;
const CIRCUITS_OF_A_KIND = 75;
const CIRCUITS_OF_A_RUN = 25;
const NOMINAL_V = 230;
/** What the answers may differ by: a millionth of each value, and the simulator's rounding of 230 V. */
const PART = 1e-6;
const ROUNDING = 1e-9;

/** A circuit for both to solve, with a leg open where there is one that a ring can spare. */
interface Trial extends LoadedNetwork {
  readonly name: string;
  readonly openLeg: number;
}

function trialsOf(kind: NetworkKind | 'open-ring', kindIndex: number): readonly Trial[] {
  return Array.from({ length: CIRCUITS_OF_A_KIND }, (_, i) => {
    const seed = SEED + kindIndex * 1000 + i;
    const random = randomFrom(seed);
    const size = 1 + Math.floor(random() * 30);
    const linkPercent = i % 3 === 0 ? 25 : 0;
    const loaded = randomNetwork({
      seed,
      kind: kind === 'open-ring' ? 'ring-with-trees' : kind,
      size,
      linkPercent,
      isOdd: i % 5 === 0,
    });
    const ringLegs = kind === 'open-ring' ? (prepareFlow(loaded.network).ring?.legs ?? []) : [];
    const openLeg = ringLegs[Math.floor(random() * ringLegs.length)] ?? -1;
    return { ...loaded, openLeg, name: `${kind}, seed ${seed}, size ${size}` };
  });
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

const simulation = new Simulation();

async function simulated(trials: readonly Trial[]): Promise<ReadonlyMap<string, number>> {
  const lines = trials.flatMap(netlistOf);
  simulation.setNetList(
    ['* circuits', '.options reltol=1e-9 abstol=1e-12 vntol=1e-12 gmin=1e-18', ...lines, '.op', '.end'].join(
      '\n',
    ),
  );
  const result = await simulation.runSim();
  expect(simulation.getError()).toEqual([]);
  if (result.dataType !== 'real') throw new Error(`Not an operating point: ${result.dataType}`);
  return new Map(result.data.map(({ name, values }) => [name, values[0] ?? Number.NaN]));
}

/** How far a value is out, as a part of what it may be out. */
const outBy = (found: number, meant: number): number =>
  Math.abs(found - meant) / (PART * Math.abs(meant) + ROUNDING);

interface Comparison {
  readonly name: string;
  readonly compared: number;
  readonly worst: number;
}

function compared(trial: Trial, at: number, values: ReadonlyMap<string, number>): Comparison {
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

describe('the load flow beside ngspice', () => {
  const done: Comparison[] = [];

  beforeAll(async () => {
    await simulation.start();
  });

  afterAll(() => {
    const values = done.reduce((sum, each) => sum + each.compared, 0);
    const worst = Math.max(...done.map((each) => each.worst)) * PART;
    console.info(
      `Load flow beside ngspice: ${done.length} circuits, ${values} values, seed ${SEED}, worst ${worst.toExponential(1)}`,
    );
  });

  it.each([...networkKinds, 'open-ring'] as const)(
    `agrees on every current and volt drop of %s circuits, seed ${SEED}`,
    async (kind) => {
      const trials = trialsOf(kind, [...networkKinds, 'open-ring'].indexOf(kind));
      const comparisons: Comparison[] = [];
      for (let start = 0; start < trials.length; start += CIRCUITS_OF_A_RUN) {
        const run = trials.slice(start, start + CIRCUITS_OF_A_RUN);
        const values = await simulated(run);
        comparisons.push(...run.map((trial, at) => compared(trial, at, values)));
      }
      done.push(...comparisons);
      expect(comparisons).toHaveLength(CIRCUITS_OF_A_KIND);
      expect(comparisons.filter(({ worst }) => worst > 1)).toEqual([]);
      expect(comparisons.reduce((sum, each) => sum + each.compared, 0)).toBeGreaterThan(
        CIRCUITS_OF_A_KIND * 10,
      );
    },
  );
});
