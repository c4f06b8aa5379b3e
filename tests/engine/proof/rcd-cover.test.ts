import { describe, expect, it } from 'vitest';
import { circuitRcd, localRcd, rcdUnitBefore } from '#engine/proof/rcd-cover.ts';
import type { Board, Circuit } from '#model/installation.ts';
import {
  boardOf,
  circuitOf,
  factsOf,
  nodeOf,
  nodePlaceOf,
  pointOf,
  schemeOf,
  shapeOf,
} from '../rules/facts-builder.ts';

const ac = { id: 'q', type: 'AC', mA: 30 } as const;

describe('the RCD of a circuit', () => {
  it('is the board’s where the survey ties it to the circuit, with its type', () => {
    const facts = factsOf({
      job: { boards: [boardOf('b1', { rcds: [ac] })], circuits: [circuitOf('c', { upstreamRcd: 'q' })] },
    });
    expect(circuitRcd(facts, 'c')).toEqual({
      ...{ state: 'covered', from: 'found', type: 'AC', mA: 30 },
      isDelayed: false,
    });
  });

  it('is no additional protection where it waits (type S), whatever it trips at', () => {
    // BS 7671 415.1.1 (from memory): additional protection opens within 40 ms at five times; type S waits.
    const facts = factsOf({
      job: {
        boards: [boardOf('b1', { rcds: [{ ...ac, delayed: true }] })],
        circuits: [circuitOf('c', { upstreamRcd: 'q' })],
      },
    });
    expect(circuitRcd(facts, 'c')).toMatchObject({ state: 'none', mA: 30, isDelayed: true });
  });

  it('is the scheme’s before what was found', () => {
    const facts = factsOf({
      job: { boards: [boardOf('b1', { rcds: [ac] })], circuits: [circuitOf('c', { upstreamRcd: 'q' })] },
      scheme: schemeOf([], { remedies: [{ kind: 'rcbo', at: 'c' }] }),
    });
    expect(circuitRcd(facts, 'c')).toMatchObject({ state: 'covered', from: 'scheme', type: 'A' });
  });

  it('is none only where somebody looked', () => {
    const state = (certainty: Record<string, 'seen' | 'assumed' | 'unknown'> | undefined, rcds = [ac]) =>
      circuitRcd(
        factsOf({
          job: {
            boards: [boardOf('b1', { rcds })],
            circuits: [circuitOf('c', certainty === undefined ? {} : { certainty })],
          },
        }),
        'c',
      ).state;
    expect(state(undefined, [])).toBe('none');
    expect(state(undefined)).toBe('unknown');
    expect(state({ upstreamRcd: 'seen' })).toBe('none');
    expect(state({ device: 'unknown' }, [])).toBe('unknown');
  });

  it('is assumed to be none where that was told but not looked at', () => {
    const state = (board: Partial<Board>, circuit: Partial<Circuit>) =>
      circuitRcd(
        factsOf({ job: { boards: [boardOf('b1', board)], circuits: [circuitOf('c', circuit)] } }),
        'c',
      ).state;
    expect(state({}, { certainty: { device: 'assumed' } })).toBe('assumed-none');
    expect(state({ certainty: { rcds: 'assumed' } }, {})).toBe('assumed-none');
    expect(state({ rcds: [ac] }, { certainty: { upstreamRcd: 'assumed' } })).toBe('assumed-none');
    expect(state({ certainty: { rcds: 'unknown' } }, { certainty: { device: 'assumed' } })).toBe('unknown');
    expect(state({ rcds: [ac] }, { upstreamRcd: 'q', certainty: { upstreamRcd: 'assumed' } })).toBe(
      'unknown',
    );
  });

  it('is not known of a device of which the rating alone was told: it may be an RCBO', () => {
    const job = { boards: [boardOf('b1')], circuits: [circuitOf('c', { device: { ratingA: 32 } })] };
    expect(circuitRcd(factsOf({ job }), 'c').state).toBe('unknown');
  });

  it('is that of the device which the scheme puts in, whatever was assumed of the one before', () => {
    const job = { boards: [boardOf('b1')], circuits: [circuitOf('c', { certainty: { device: 'assumed' } })] };
    const facts = factsOf({ job });
    const with30 = { standard: 'BS-EN-61009', ratingA: 32, rcd: { type: 'A', mA: 30 } } as const;
    const fitted = facts.found.circuits.map((circuit) => ({ ...circuit, device: with30 }));
    const proposed = { ...facts.proposed, circuits: fitted };
    expect(circuitRcd({ ...facts, proposed }, 'c')).toMatchObject({ state: 'covered', from: 'scheme' });
    expect(circuitRcd({ ...facts, proposed, found: proposed }, 'c').state).toBe('unknown');
  });

  it('is unknown for a circuit that is not there', () => {
    expect(circuitRcd(factsOf(), 'nowhere').state).toBe('unknown');
  });
});

describe('a local RCD', () => {
  const facts = factsOf({
    job: {
      points: [
        pointOf('u', { kind: 'fused-unit', unit: { switched: true, rcd: true } }),
        pointOf('w1'),
        pointOf('w2', { features: ['rcd'] }),
      ],
    },
    proposed: {
      nodes: [
        nodeOf('u'),
        nodeOf('u/load', { kind: 'load-terminals', pointId: 'u' }),
        nodeOf('w1'),
        nodeOf('w2'),
      ],
    },
    shapes: [
      shapeOf('c', {
        places: [
          nodePlaceOf('u'),
          nodePlaceOf('u/load', { upstreamNode: 'u' }),
          nodePlaceOf('w1', { upstreamNode: 'u/load' }),
          nodePlaceOf('w2'),
        ],
      }),
    ],
  });

  it('of a unit covers what is behind it, never its own supply side', () => {
    expect(localRcd(facts, 'w1')).toBe('unit');
    expect(rcdUnitBefore(facts, 'u/load')).toBe(true);
    expect(rcdUnitBefore(facts, 'u')).toBe(false);
  });

  it('of an outlet covers that outlet only', () => {
    expect(localRcd(facts, 'w2')).toBe('outlet');
    expect(rcdUnitBefore(facts, 'w2')).toBe(false);
  });
});
