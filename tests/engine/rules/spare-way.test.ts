import { describe, expect, it } from 'vitest';
import { runRules } from '#engine/rules/run-rules.ts';
import { spareWay } from '#engine/rules/spare-way.ts';
import type { Board } from '#model/installation.ts';
import type { Connection, Remedy } from '#model/scheme.ts';
import { boardOf, factsOf, saidBy, schemeOf } from './facts-builder.ts';

const radial = (id: string, board = 'b1'): Connection => ({
  id,
  kind: 'radial',
  board,
  device: { standard: 'BS-EN-61009', curve: 'B', ratingA: 20 },
  feeds: [],
});

const facts = (board: Partial<Board>, radials: Connection[] = [radial('k1')], remedies: Remedy[] = []) =>
  factsOf({
    job: { boards: [boardOf('b1', board), boardOf('b2')] },
    scheme: schemeOf(radials, { remedies }),
  });

describe('ways for new circuits', () => {
  it('[DV3] passes with exactly as many spare ways as are wanted', () => {
    expect(saidBy(spareWay, facts({ spareWays: 1 }))).toEqual([
      {
        outcome: 'passes',
        messageId: 'enough',
        subjectId: 'b1',
        origin: 'scheme',
        actual: 1,
        limit: 1,
        unit: 'ways',
      },
    ]);
    expect(saidBy(spareWay, facts({ spareWays: 2 }, [radial('k1'), radial('k2')]))).toMatchObject([
      { outcome: 'passes', actual: 2, limit: 2 },
    ]);
  });

  it('[DV3] leaves one way too few to a decision: another board or an enclosure', () => {
    expect(saidBy(spareWay, facts({ spareWays: 0 }))).toMatchObject([
      { outcome: 'decide', messageId: 'tooFew', actual: 0, limit: 1 },
    ]);
    expect(saidBy(spareWay, facts({ spareWays: 1 }, [radial('k1'), radial('k2')]))).toMatchObject([
      { outcome: 'decide', actual: 1, limit: 2 },
    ]);
  });

  it('[DV3] is not proven, and gates nothing, where nobody counted them', () => {
    for (const board of [{}, { spareWays: 3, certainty: { spareWays: 'assumed' as const } }])
      expect(saidBy(spareWay, facts(board))).toMatchObject([{ outcome: 'not-proven', messageId: 'unknown' }]);
    expect(runRules(facts({}), [spareWay]).map(({ gates }) => gates)).toEqual([false]);
  });

  it('[DV3] passes where the scheme exchanges the board, or puts an enclosure beside it', () => {
    const with1 = (kind: Remedy['kind']) =>
      saidBy(spareWay, facts({ spareWays: 0 }, [radial('k1')], [{ kind, at: 'b1' }]));
    expect(with1('new-board')).toMatchObject([{ outcome: 'passes', messageId: 'newBoard' }]);
    expect(with1('rcd-enclosure')).toMatchObject([{ outcome: 'passes', messageId: 'enclosure' }]);
    expect(with1('lower-device')).toMatchObject([{ outcome: 'decide' }]);
  });

  it('[DV3] counts each board by itself, and is silent without a new circuit', () => {
    expect(
      saidBy(spareWay, facts({ spareWays: 1 }, [radial('k1'), radial('k2', 'b2')])).map(
        ({ subjectId, outcome }) => [subjectId, outcome],
      ),
    ).toEqual([
      ['b1', 'passes'],
      ['b2', 'not-proven'],
    ]);
    expect(saidBy(spareWay, facts({ spareWays: 0 }, []))).toEqual([]);
  });
});
