import { describe, expect, it } from 'vitest';
import { ttRcd } from '#engine/rules/tt-rcd.ts';
import type { Board, Circuit, Supply } from '#model/installation.ts';
import type { Scheme } from '#model/scheme.ts';
import { boardOf, circuitOf, factsOf, jobOf, saidBy, schemeOf, shapeOf } from './facts-builder.ts';

interface Literal {
  readonly earthing?: Supply['earthing'];
  readonly circuit?: Partial<Circuit>;
  readonly board?: Partial<Board>;
  readonly scheme?: Scheme;
}
const said = ({ earthing = 'TT', circuit, board, scheme }: Literal) =>
  saidBy(
    ttRcd,
    factsOf({
      job: {
        supply: { ...jobOf().supply, earthing },
        boards: [boardOf('b1', board)],
        circuits: [circuitOf('c', circuit)],
      },
      shapes: [shapeOf('c')],
      ...(scheme ? { scheme } : {}),
    }),
  );

describe('RCDs on a TT supply', () => {
  it('[SU5] leaves a circuit without one to be decided, with an RCBO as remedy', () => {
    expect(said({})).toMatchObject([
      { outcome: 'decide', messageId: 'none', fix: { kind: 'rcbo', at: 'c' } },
    ]);
  });

  it('[SU5] passes at exactly 30 mA and not at 100', () => {
    const behind = (mA: number) =>
      said({ board: { rcds: [{ id: 'r', type: 'A', mA }] }, circuit: { upstreamRcd: 'r' } });
    expect(behind(30)).toMatchObject([{ outcome: 'passes', actual: 30 }]);
    expect(behind(100)).toMatchObject([{ outcome: 'decide' }]);
  });

  it('[SU5] passes once the scheme fits one', () => {
    const scheme = schemeOf([], { remedies: [{ kind: 'rcbo', at: 'c' }] });
    expect(said({ scheme })).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[SU5] is not proven where nobody told what the circuit is behind', () => {
    expect(said({ board: { rcds: [{ id: 'r', type: 'A', mA: 30 }] } })).toMatchObject([
      { outcome: 'not-proven' },
    ]);
  });

  it('[SU5] is not proven where it is only assumed that there is none, with the RCBO as remedy', () => {
    expect(said({ board: { certainty: { rcds: 'assumed' } } })).toMatchObject([
      { outcome: 'not-proven', messageId: 'assumedNone', fix: { kind: 'rcbo', at: 'c' } },
    ]);
  });

  it('[SU5] binds TT only', () => {
    expect(said({ earthing: 'TN-S' })).toEqual([]);
  });
});
