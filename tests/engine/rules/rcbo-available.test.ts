import { describe, expect, it } from 'vitest';
import { rcboAvailable } from '#engine/rules/rcbo-available.ts';
import type { Board } from '#model/installation.ts';
import type { Connection } from '#model/scheme.ts';
import { boardOf, circuitOf, factsOf, saidBy, schemeOf } from './facts-builder.ts';

function said(board: Board, scheme = schemeOf([], { remedies: [{ kind: 'rcbo', at: 'c' }] })) {
  return saidBy(rcboAvailable, factsOf({ job: { boards: [board], circuits: [circuitOf('c')] }, scheme }));
}

describe('an RCBO for the board', () => {
  it('[DV2] passes where the maker has one', () => {
    expect(said(boardOf('b1'))).toEqual([
      { outcome: 'passes', messageId: 'available', subjectId: 'c', origin: 'scheme' },
    ]);
  });

  it('[DV2] fails where none can be had', () => {
    expect(said(boardOf('b1', { rcboAvailable: false }))).toMatchObject([
      { outcome: 'fails', messageId: 'notAvailable' },
    ]);
  });

  it('[DV2] is not proven where nobody looked it up', () => {
    const { rcboAvailable: _, ...untold } = boardOf('b1');
    expect(said(untold)).toMatchObject([{ outcome: 'not-proven', messageId: 'notTold' }]);
  });

  it('[DV2] asks the same of an RCBO at the head of a new radial', () => {
    const radial: Connection = {
      id: 'k1',
      kind: 'radial',
      board: 'b1',
      device: { standard: 'BS-EN-61009', ratingA: 20, rcd: { type: 'A', mA: 30 } },
      feeds: [],
    };
    expect(said(boardOf('b1', { rcboAvailable: false }), schemeOf([radial]))).toMatchObject([
      { outcome: 'fails', subjectId: 'k1' },
    ]);
  });

  it('[DV2] says nothing where no RCBO is fitted', () => {
    expect(said(boardOf('b1', { rcboAvailable: false }), schemeOf())).toEqual([]);
  });
});
