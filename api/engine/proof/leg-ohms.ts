import { cableOhms } from './conductor-ohms.ts';
import type { FlowNetwork } from './flow/flow-network.ts';
import type { ProofCircuit } from './proof-circuit.ts';
import { voltDropPerMetre } from './volt-drop-per-metre.ts';

/** The resistances of a circuit's legs, Ω by leg; 20 °C but for `drop`. */
export interface CircuitOhms {
  readonly line: Float64Array;
  /** Null where some cable of the circuit has no protective conductor of its own. */
  readonly cpc: Float64Array | null;
  /** What a current of 1 A drops along the line and back along the neutral, V: by the tabulated volt drops. */
  readonly drop: Float64Array;
  /** Ids of legs for whose size no figure is held; they count as nothing. */
  readonly unknown: readonly string[];
}

/** Works out the resistances of a circuit's legs. */
export function circuitOhms({ legs }: ProofCircuit): CircuitOhms {
  const line = new Float64Array(legs.length);
  const cpc = new Float64Array(legs.length);
  const drop = new Float64Array(legs.length);
  const unknown: string[] = [];
  let hasCpc = true;
  legs.forEach(({ id, kind, cable, lengthMm }, i) => {
    if (kind === 'fuse') return;
    const ohms = cableOhms(cable);
    const lengthKm = lengthMm / 1e6; // mΩ over m is Ω over km
    if (ohms === null) unknown.push(id);
    if (ohms === null || ohms.cpcMilliohmPerM === null) hasCpc = false;
    line[i] = (ohms?.lineMilliohmPerM ?? 0) * lengthKm;
    cpc[i] = (ohms?.cpcMilliohmPerM ?? 0) * lengthKm;
    drop[i] = (voltDropPerMetre(cable)?.millivoltPerAM ?? 0) * lengthKm;
  });
  return { line, cpc: hasCpc ? cpc : null, drop, unknown };
}

/** The circuit as the load flow takes it, with these resistances. */
export function flowNetwork({ nodes, legs }: ProofCircuit, ohm: Float64Array): FlowNetwork {
  const from = new Int32Array(legs.length);
  const to = new Int32Array(legs.length);
  legs.forEach((leg, i) => {
    from[i] = leg.from;
    to[i] = leg.to;
  });
  return { nodeCount: nodes.length, source: 0, from, to, ohm };
}
