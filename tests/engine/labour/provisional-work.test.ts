import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import type { Remedy } from '#model/scheme.ts';
import { emptyWorked, labourOf, library, runOf, stretch } from './labour-material.ts';

const base = emptyWorked();
const circuitId = base.found.circuits[0]?.id ?? '';
const touched = (job: Partial<Job> = {}) =>
  labourOf(emptyWorked({ circuitIds: [circuitId], job: { ...base.job, stock: [], ...job } }));

describe('the circuit chart', () => {
  it('is brought up to date once for each circuit that is touched', () => {
    expect(touched().get('circuit-chart')).toMatchObject({ quantity: 1, causes: [circuitId], stage: 'test' });
    expect(labourOf(emptyWorked()).get('circuit-chart')).toBeUndefined();
  });
});

describe('finding a fault', () => {
  const { readings } = base.job;
  const loops = readings.filter(({ kind }) => kind === 'loop');

  it('is shown, and in no price, where nobody has taken end-to-end readings', () => {
    expect(touched({ readings: [] }).get('fault-finding')).toMatchObject({
      quantity: 0,
      lowQuantity: 0,
      highQuantity: 1,
      typicalMin: 0,
      causes: [circuitId],
    });
  });

  it('is not spoken of where the readings are there and the ring was traced', () => {
    const read = loops.map((reading) => ({ ...reading, circuit: circuitId }));
    const some = read.length > 0 ? read : [reading];
    expect(touched({ readings: some }).get('fault-finding')).toBeUndefined();
  });

  it('is still shown where they are another circuit’s', () => {
    expect(
      touched({ readings: [{ ...reading, circuit: 'another' }] }).get('fault-finding')?.highQuantity,
    ).toBe(1);
  });

  const reading: Job['readings'][number] = {
    id: 'rd',
    kind: 'loop',
    loop: 'L',
    from: 'end-to-end',
    ohm: 0.6,
    circuit: circuitId,
    phase: 'before',
  };
});

describe('moving a neutral', () => {
  const rcbo: Remedy = { kind: 'rcbo', at: circuitId };
  const fitted = {
    standard: 'BS-EN-61009',
    curve: 'B',
    ratingA: 32,
    rcd: { mA: 30, type: 'A' },
  } as const;
  const scheme = base.scheme ?? expect.fail('no scheme');
  const withCircuit = (
    spread: (circuit: (typeof base.found.circuits)[number]) => object,
    remedies = [rcbo],
  ) =>
    labourOf(
      emptyWorked({
        scheme: { ...scheme, connections: [], remedies },
        found: {
          ...base.found,
          circuits: base.found.circuits.map((circuit) => ({ ...circuit, ...spread(circuit) })),
        },
        proposed: {
          ...base.found,
          circuits: base.found.circuits.map((circuit) => ({ ...circuit, device: fitted })),
        },
        circuitIds: [circuitId],
      }),
    );
  const behindRcd = ({ circuit }: (typeof base.found.circuits)[number]) => ({
    circuit: circuit && { ...circuit, upstreamRcd: 'rcd-1' },
  });

  it('goes with an RCBO for a circuit that is behind an RCD', () => {
    expect(withCircuit(behindRcd).get('move-neutral')).toMatchObject({ quantity: 1 });
  });

  it('is part of fitting the RCBO where no RCD is before it, and not asked for without one', () => {
    expect(withCircuit(() => ({})).get('move-neutral')).toBeUndefined();
    expect(withCircuit(() => ({})).get('fit-rcbo')).toMatchObject({ quantity: 1 });
    expect(withCircuit(behindRcd, []).get('move-neutral')).toBeUndefined();
  });

  it('may turn out to be needed where nobody has looked at the device', () => {
    expect(withCircuit(() => ({ device: null })).get('move-neutral')).toMatchObject({
      quantity: 0,
      highQuantity: 1,
    });
  });
});

describe('patching a board', () => {
  const drop = stretch({ medium: 'stud-cavity' });

  it('may be needed for every drop in studs that nobody pinned: a noggin may be in its way', () => {
    const labour = labourOf(emptyWorked({ runs: [runOf('r', [drop, drop])] }));
    expect(labour.get('patch-board')).toMatchObject({ quantity: 0, highQuantity: 2, causes: ['r'] });
  });

  it('is not for a drop that was pinned, nor for a level stretch', () => {
    const runs = [
      runOf('r', [
        { ...drop, certainty: 'pinned' as const },
        { ...drop, direction: 'horizontal' as const },
      ]),
    ];
    expect(labourOf(emptyWorked({ runs })).get('patch-board')).toBeUndefined();
  });
});

describe('the norms of this work', () => {
  it.each(['circuit-chart', 'fault-finding', 'move-neutral', 'patch-board'])(
    '%s is of the demo’s own',
    (id) => {
      const norm = library.norms.tasks.find(({ task }) => task === id);
      expect(norm?.origin).toBe('demo');
      expect((norm?.lowMin ?? 9) < (norm?.typicalMin ?? 0)).toBe(true);
      expect((norm?.typicalMin ?? 9) < (norm?.highMin ?? 0)).toBe(true);
    },
  );
});
