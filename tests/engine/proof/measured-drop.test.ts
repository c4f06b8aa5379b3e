import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { capacities } from '#engine/proof/capacity-of-run.ts';
import { expectedReadings } from '#engine/proof/expected-readings.ts';
import { loopToNodes } from '#engine/proof/fault-loop.ts';
import { flowUnder } from '#engine/proof/flow-under.ts';
import { measuredDrop, type OhmsRead } from '#engine/proof/measured-drop.ts';
import { type ProofInput, proofCase } from '#engine/proof/proof-case.ts';
import { type ProofCircuit, proofCircuit } from '#engine/proof/proof-circuit.ts';
import { ringOf } from '#engine/proof/ring-walk.ts';
import { demoEstimate, demoNames, schemeOf } from '../demo-jobs/demo-estimates.ts';

const { limits } = demoLibrary();
const wholes = demoNames
  .filter((name) => name !== 'saltglass-row-quoting')
  .flatMap((name) =>
    demoEstimate(name).schemes.flatMap(({ id, worked, proof }) =>
      proof.map(({ circuit }) => ({ name: `${name} ${id} ${circuit}`, worked, circuit })),
    ),
  );

/** The circuit as it really is: its cables longer or shorter than drawn, those of the ring by one factor, all others by another. */
function really(circuit: ProofCircuit, onRing: number, beside: number): ProofCircuit {
  const ring = new Set(ringOf(circuit)?.walk.legs ?? []);
  const legs = circuit.legs.map((leg, i) => ({
    ...leg,
    lengthMm: leg.lengthMm * (ring.has(i) ? onRing : beside),
  }));
  return { ...circuit, legs };
}

/** What a tester shows of it, by the engine's own forward reckoning. */
function readOf(input: ProofInput, circuit: ProofCircuit): OhmsRead {
  const one = proofCase(input, circuit);
  const told = one.ring === null ? null : expectedReadings(circuit, one.ring, one.ohms);
  const crossed = new Map((told?.step2 ?? []).map(({ point, ohm }) => [point, ohm]));
  const loops = loopToNodes(one);
  return {
    endsOhm: told === null ? null : told.r1Ohm + told.rnOhm,
    crossedOhm: crossed,
    linkedOhm: new Map(
      circuit.pointAt.flatMap((point, node) =>
        point === null || crossed.has(point) ? [] : [[point, loops[node] ?? 0] as const],
      ),
    ),
  };
}

describe.each(wholes)('the volt drop as measured of $name', ({ worked, circuit: id }) => {
  const input = { worked, capacities: capacities(worked, limits), limits };
  const drawn = proofCircuit(worked, id);
  if (drawn === null) throw new Error('no cable');

  it('is that of the circuit as it really is, however it was drawn', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 4, noNaN: true }),
        fc.double({ min: 0.3, max: 4, noNaN: true }),
        (onRing, beside) => {
          const real = really(drawn, onRing, beside);
          const one = proofCase(input, real);
          const { dropV } = flowUnder(one, one.handbookA);
          const measured = measuredDrop(input, id, readOf(input, real));
          real.pointAt.forEach((point, node) => {
            if (point !== null) expect(measured?.get(point), point).toBeCloseTo(dropV[node] ?? 0, 6);
          });
        },
      ),
      { numRuns: 12 },
    );
  });
});

describe('what is too little to tell the volt drop by', () => {
  const { worked, proof } = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
  const input = { worked, capacities: capacities(worked, limits), limits };
  const nothing: OhmsRead = { endsOhm: null, crossedOhm: new Map(), linkedOhm: new Map() };

  it('is nothing read, or a ring without its ends', () => {
    expect(measuredDrop(input, 'ring-house', nothing)).toBeNull();
    expect(
      measuredDrop(input, 'ring-house', { ...nothing, crossedOhm: new Map([['w1-living1', 0.3]]) }),
    ).toBeNull();
  });

  it('is not the ends alone: what hangs from the ring grows as it does', () => {
    const [ring] = proof;
    const ends = (ring?.ring?.r1Ohm ?? 0) * 2;
    const drop = measuredDrop(input, 'ring-house', { ...nothing, endsOhm: ends * 1.5 });
    for (const { point, dropV } of ring?.points ?? [])
      expect(drop?.get(point), point).toBeCloseTo((dropV ?? 0) * 1.5, 6);
  });
});
