import { describe, expect, it } from 'vitest';
import { rcdForOutlets } from '#engine/rules/rcd-for-outlets.ts';
import type { Board, Circuit, Point } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';
import {
  boardOf,
  circuitOf,
  factsOf,
  nodeOf,
  nodePlaceOf,
  pointOf,
  saidBy,
  schemeOf,
  shapeOf,
} from './facts-builder.ts';

interface Situation {
  readonly board?: Partial<Board>;
  readonly circuit?: Partial<Circuit>;
  readonly remedies?: Remedy[];
  readonly point?: Partial<Point>;
  readonly unit?: Partial<Point>;
}

function said({ board = {}, circuit = {}, remedies = [], point = {}, unit = {} }: Situation) {
  return saidBy(
    rcdForOutlets,
    factsOf({
      job: {
        boards: [boardOf('b1', board)],
        circuits: [circuitOf('c', circuit)],
        points: [
          pointOf('w1', { status: 'wanted', ...point }),
          pointOf('u', { kind: 'fused-unit', ...unit }),
        ],
      },
      scheme: schemeOf([], { remedies }),
      proposed: {
        nodes: [
          nodeOf('w1', { state: 'new' }),
          nodeOf('u/load', { kind: 'load-terminals', pointId: 'u', state: 'new' }),
        ],
      },
      shapes: [
        shapeOf('c', {
          places: [
            nodePlaceOf('u/load', { role: 'behind-fuse' }),
            nodePlaceOf('w1', { role: 'behind-fuse', upstreamNode: 'u/load' }),
          ],
        }),
      ],
    }),
  );
}

const rcd = (mA: number) => ({ id: 'q', type: 'A' as const, mA });

describe('the RCD of new outlets', () => {
  it('[RC1] passes at exactly 30 mA', () => {
    expect(said({ board: { rcds: [rcd(30)] }, circuit: { upstreamRcd: 'q' } })).toEqual([
      {
        outcome: 'passes',
        messageId: 'covered',
        subjectId: 'c',
        origin: 'scheme',
        actual: 30,
        limit: 30,
        unit: 'mA',
      },
    ]);
  });

  it('[RC1] fails behind 100 mA', () => {
    expect(said({ board: { rcds: [rcd(100)] }, circuit: { upstreamRcd: 'q' } })).toMatchObject([
      { outcome: 'fails', messageId: 'notSensitive', actual: 100, limit: 30 },
    ]);
  });

  it('[RC1] fails without an RCD, and names the RCBO as what would mend it', () => {
    expect(said({})).toEqual([
      {
        outcome: 'fails',
        messageId: 'missing',
        subjectId: 'c',
        origin: 'scheme',
        limit: 30,
        unit: 'mA',
        fix: { kind: 'rcbo', at: 'c' },
      },
    ]);
  });

  it.each(['rcbo', 'rcd-enclosure'] as const)('[RC1] passes with the remedy %s', (kind) => {
    expect(said({ remedies: [{ kind, at: 'c' }] })).toMatchObject([{ outcome: 'passes' }]);
    expect(said({ remedies: [{ kind, at: 'd' }] })).toMatchObject([{ outcome: 'fails' }]);
  });

  it('[RC1] passes with a new board, and with the circuit’s own RCBO', () => {
    expect(said({ remedies: [{ kind: 'new-board', at: 'b1' }] })).toMatchObject([{ outcome: 'passes' }]);
    const device = { standard: 'BS-EN-61009', ratingA: 32, rcd: { type: 'A', mA: 30 } } as const;
    expect(said({ circuit: { device } })).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[RC1] leaves an RCD outlet or unit alone to a designer', () => {
    const local = [{ outcome: 'decide', messageId: 'localOnly', subjectId: 'w1' }];
    expect(said({ point: { features: ['rcd'] } })).toMatchObject(local);
    expect(said({ remedies: [{ kind: 'rcd-outlet', at: 'w1' }] })).toMatchObject(local);
    expect(said({ remedies: [{ kind: 'rcd-unit', at: 'u' }] })).toMatchObject(local);
    expect(said({ unit: { unit: { switched: true, rcd: true } } })).toMatchObject(local);
  });

  it('[RC1] is not proven where the board’s RCDs are not known or not tied to the circuit', () => {
    const unknown = [{ outcome: 'not-proven', messageId: 'unknown' }];
    expect(said({ board: { certainty: { rcds: 'unknown' } } })).toMatchObject(unknown);
    expect(said({ board: { rcds: [rcd(30)] } })).toMatchObject(unknown);
    const tied = (upstreamRcd: 'unknown' | 'assumed') =>
      said({ board: { rcds: [rcd(30)] }, circuit: { upstreamRcd: 'q', certainty: { upstreamRcd } } });
    expect(tied('unknown')).toMatchObject(unknown);
    expect(tied('assumed')).toMatchObject(unknown);
    expect(said({ circuit: { certainty: { upstreamRcd: 'unknown' } } })).toMatchObject(unknown);
    expect(said({ circuit: { device: { standard: 'BS-EN-61009', ratingA: 32 } } })).toMatchObject(unknown);
  });

  it('[RC1] is not proven where it is only assumed that there is none, and names the RCBO all the same', () => {
    const assumed = [{ outcome: 'not-proven', messageId: 'assumedNone', fix: { kind: 'rcbo', at: 'c' } }];
    expect(said({ board: { certainty: { rcds: 'assumed' } } })).toMatchObject(assumed);
    expect(said({ circuit: { certainty: { device: 'assumed' } } })).toMatchObject(assumed);
    expect(said({ circuit: { certainty: { upstreamRcd: 'assumed' } } })).toMatchObject(assumed);
  });

  it('[RC1] asks for a decision where one outlet only takes the place of another', () => {
    expect(said({ point: { replaces: 'u' } })).toMatchObject([
      { outcome: 'decide', messageId: 'replacement' },
    ]);
  });

  it('[RC1] says nothing of a twin for a twin, which adds nothing', () => {
    expect(said({ point: { replaces: 'u' }, unit: { kind: 'socket-twin' } })).toEqual([]);
    expect(said({ point: { replaces: 'u' }, unit: { kind: 'socket-single' } })).toMatchObject([
      { outcome: 'decide', messageId: 'replacement', subjectId: 'w1', fix: { kind: 'rcbo', at: 'c' } },
    ]);
  });

  it.each(['none', 'rcbo'] as const)(
    '[RC1] sees a single made a twin on a circuit that has no new cable: %s',
    (mend) => {
      const remedies: Remedy[] = [
        { kind: 'single-to-twin', at: 'r1' },
        ...(mend === 'rcbo' ? [{ kind: mend, at: 'c' } as const] : []),
      ];
      const facts = factsOf({
        job: {
          boards: [boardOf('b1')],
          circuits: [circuitOf('c')],
          points: [pointOf('r1', { kind: 'socket-single' }), pointOf('r2')],
        },
        scheme: schemeOf([], { remedies }),
        proposed: { nodes: [nodeOf('r1'), nodeOf('r2')] },
        shapes: [shapeOf('c', { places: [nodePlaceOf('r1'), nodePlaceOf('r2')] })],
        circuitIds: [],
      });
      expect(saidBy(rcdForOutlets, facts)).toMatchObject([
        mend === 'none'
          ? { outcome: 'decide', messageId: 'replacement', subjectId: 'r1' }
          : { outcome: 'passes', messageId: 'covered', subjectId: 'c' },
      ]);
    },
  );

  it('[RC1] says nothing of fixed appliances', () => {
    expect(said({ point: { kind: 'flex-outlet' } })).toEqual([]);
  });
});

describe('a new radial without RCD', () => {
  it('[RC1] fails without a remedy of its own: its connection names the device', () => {
    const facts = factsOf({
      job: { boards: [boardOf('b1')], points: [pointOf('w1', { status: 'wanted' })] },
      scheme: schemeOf(),
      proposed: {
        nodes: [nodeOf('w1', { state: 'new' })],
        circuits: [
          {
            id: 'k1/circuit',
            name: 'New radial',
            board: boardOf('b1'),
            device: { standard: 'BS-EN-60898', curve: 'B', ratingA: 20 },
            circuit: null,
            isNew: true,
          },
        ],
      },
      shapes: [shapeOf('k1/circuit', { shape: 'radial', places: [nodePlaceOf('w1', { role: 'radial' })] })],
    });
    expect(saidBy(rcdForOutlets, facts)).toEqual([
      {
        outcome: 'fails',
        messageId: 'missing',
        subjectId: 'k1/circuit',
        origin: 'scheme',
        limit: 30,
        unit: 'mA',
      },
    ]);
  });
});
