import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { circuitsOfBoard } from '#engine/circuit/board-circuits.ts';
import { labourTasks } from '#engine/labour/labour-tasks.ts';
import { boardDemands, waysFor } from '#engine/takeoff/board-lines.ts';
import { usualCounts } from '#engine/takeoff/kit-counts.ts';
import { protectionDemands } from '#engine/takeoff/protection-lines.ts';
import type { Board, Circuit } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Remedy } from '#model/scheme.ts';
import { schemeOf } from '#tests/engine/connections/wiring-builder.ts';
import { demoJob, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { linesByItem, measuredByItem, workedOf } from './worked-builder.ts';

const newBoard: Remedy = { kind: 'new-board', at: 'board' };

/** So many circuits after the ring, on which the scheme works. */
const circuits = (more: number, spread: Partial<Circuit> = {}): Circuit[] =>
  Array.from({ length: more + 1 }, (_, index) => ({
    id: index === 0 ? 'ring' : `other-${index}`,
    name: `Circuit ${index}`,
    board: 'board',
    use: 'sockets' as const,
    device: { standard: 'BS-3871' as const, curve: '2' as const, ratingA: 30 },
    ...(index === 0 ? {} : spread),
  }));

function workedOn(more: number, board: Partial<Board> = {}, remedies: readonly Remedy[] = [newBoard]) {
  const boards = [{ id: 'board', label: 'Board', rcds: [], ...board }];
  return workedOf({
    scheme: schemeOf({ remedies: [...remedies] }),
    job: { circuits: circuits(more), boards },
  });
}

const labourOf = (worked: ReturnType<typeof workedOn>) =>
  new Map(labourTasks(worked, [], demoLibrary().norms).map((task) => [task.task, task]));

describe('a new board', () => {
  it('is an enclosure by its ways, an RCBO a circuit in the place of the old device, and blanks', () => {
    // Three circuits recorded of three in use; two ways to spare: five, so six.
    expect(measuredByItem(boardDemands(workedOn(2, { ways: 6, spareWays: 3 }), usualCounts))).toEqual({
      'consumer-unit-6': 1,
      'rcbo-b32-30-a': 3,
      'board-blank': 3,
    });
  });

  it('has a way for each circuit that nobody recorded, where the ways in use say so', () => {
    const lines = linesByItem(workedOn(0, { ways: 10, spareWays: 2 }));
    expect(lines.get('consumer-unit-10')?.quantity).toBe(1);
    expect(lines.get('rcbo-b32-30-a')).toMatchObject({ quantity: 1 });
    expect(lines.get('rcbo-b6-30-a')).toMatchObject({ quantity: 7, lowQuantity: 7, highQuantity: 7 });
    expect(lines.get('board-blank')?.quantity).toBe(2);
    expect(lines.get('rcbo-b6-30-a')?.causes).toEqual(['remedy/new-board/board']);
  });

  describe('and surge protection', () => {
    const said = (value: string, certainty: 'seen' | 'unknown' = 'seen') => ({
      answers: [{ question: 'surge-protection', value, certainty }],
    });
    const board = (more: number, spread: Partial<Job>) => {
      const worked = workedOn(more, { ways: more + 4, spareWays: 3 });
      return { ...worked, job: { ...worked.job, ...spread } };
    };

    it('has a device, its ways and its fitting once the owner wants it', () => {
      const worked = board(2, said('wanted'));
      // Three circuits, two ways for the device and two to spare: seven, so eight.
      expect(measuredByItem(boardDemands(worked, usualCounts))).toEqual({
        'consumer-unit-8': 1,
        'surge-device': 1,
        'rcbo-b32-30-a': 3,
        'board-blank': 3,
      });
      expect(labourOf(worked).get('fit-surge-device')).toMatchObject({
        quantity: 1,
        causes: ['remedy/new-board/board'],
      });
    });

    it.each([
      ['nobody has asked', { answers: [] }],
      ['it is declined', said('declined')],
      ['it is there', said('fitted')],
      ['nobody could say', said('wanted', 'unknown')],
    ])('has none where %s', (_words, answers) => {
      const worked = board(2, answers);
      expect(measuredByItem(boardDemands(worked, usualCounts))['surge-device']).toBeUndefined();
      expect(labourOf(worked).get('fit-surge-device')).toBeUndefined();
    });

    it('goes by the ways that the firm’s own device takes', () => {
      const sized = [0, 1, 2, 6].map((surgeDeviceWays) =>
        Object.keys(
          measuredByItem(boardDemands(board(2, said('wanted')), { ...usualCounts, surgeDeviceWays })),
        ).find((item) => item.startsWith('consumer-unit-')),
      );
      expect(sized).toEqual(['consumer-unit-6', 'consumer-unit-6', 'consumer-unit-8', 'consumer-unit-12']);
    });

    it('is counted with no board that stays', () => {
      const { scheme, ...worked } = board(2, said('wanted'));
      const stays = { ...worked, scheme: scheme && { ...scheme, remedies: [] } };
      expect(linesByItem(stays).get('surge-device')).toBeUndefined();
      expect(labourOf(stays).get('fit-surge-device')).toBeUndefined();
    });
  });

  it('is ranged by the circuits that may be there where nobody counted the ways', () => {
    const lines = linesByItem(workedOn(0));
    expect(lines.get('consumer-unit-10')?.quantity).toBe(1);
    expect(lines.get('rcbo-b6-30-a')).toMatchObject({ quantity: 0, lowQuantity: 0, highQuantity: 7 });
    expect(lines.get('board-blank')).toMatchObject({ quantity: 9, lowQuantity: 2, highQuantity: 9 });
  });

  it('is ranged where the ways in use are a guess', () => {
    const guessed = { ways: 10, spareWays: 4, certainty: { spareWays: 'assumed' as const } };
    const { job, proposed } = workedOn(1, guessed);
    expect(circuitsOfBoard(job, proposed, 'board').unrecorded).toEqual({ likely: 4, low: 0, high: 8 });
  });

  it('takes what a circuit usually has where nobody looked at its device', () => {
    const [ring] = circuits(0);
    const bare = (use: Circuit['use']): Circuit => ({ id: use, name: use, board: 'board', use });
    const some = [...(ring ? [ring] : []), bare('heating'), bare('cooker'), bare('other')];
    const worked = workedOf({
      scheme: schemeOf({ remedies: [newBoard] }),
      job: { circuits: some, boards: [{ id: 'board', label: 'Board', rcds: [], ways: 4, spareWays: 0 }] },
    });
    expect(measuredByItem(boardDemands(worked, usualCounts))).toEqual({
      'consumer-unit-6': 1,
      'rcbo-b32-30-a': 2,
      'rcbo-b16-30-a': 1,
      'rcbo-b6-30-a': 1,
      'board-blank': 2,
    });
  });

  it('buys one device for a circuit that another remedy is about as well, and fits it once', () => {
    const worked = workedOn(0, { ways: 1, spareWays: 0 }, [newBoard, { kind: 'lower-device', at: 'ring' }]);
    const bought = measuredByItem(protectionDemands(worked, usualCounts));
    expect(Object.keys(bought).filter((item) => /^(rcbo|mcb)/.test(item))).toEqual(['rcbo-b20-30-a']);
    const labour = labourOf(worked);
    expect(labour.get('move-circuit')?.quantity).toBe(1);
    expect(labour.has('fit-rcbo')).toBe(false);
  });

  it('counts a way, and no second device, for a circuit that the scheme makes', () => {
    const radial = {
      id: 'c',
      kind: 'radial' as const,
      board: 'board',
      device: { standard: 'BS-EN-61009' as const, curve: 'B' as const, ratingA: 20 },
      feeds: [],
    };
    const boards = [{ id: 'board', label: 'Board', rcds: [], ways: 4, spareWays: 0 }];
    const before = workedOf({
      scheme: schemeOf({ connections: [radial], remedies: [newBoard] }),
      job: { circuits: circuits(3), boards },
    });
    const [ring] = before.proposed.circuits;
    if (ring === undefined) throw new Error('No circuit.');
    const made = { ...ring, id: 'c', isNew: true };
    const worked = {
      ...before,
      proposed: { ...before.proposed, circuits: [...before.proposed.circuits, made] },
    };
    // Four come over, one is new, two to spare: seven, so eight.
    expect(measuredByItem(protectionDemands(worked, usualCounts))).toMatchObject({
      'consumer-unit-8': 1,
      'rcbo-b32-30-a': 4,
      'rcbo-b20-30-a': 1,
      'board-blank': 3,
    });
  });

  it('moves, tests and charts every circuit of it, and certifies once', () => {
    const labour = labourOf(workedOn(2, { ways: 8, spareWays: 0 }));
    expect(labour.get('fit-board')?.quantity).toBe(1);
    for (const task of ['move-circuit', 'test-circuit', 'circuit-chart'])
      expect(labour.get(task), task).toMatchObject({ quantity: 8, lowQuantity: 8, highQuantity: 8 });
    expect(labour.get('verify-circuit')?.quantity).toBe(1);
    expect(labour.get('installation-certificate')?.quantity).toBe(1);
  });

  it('tests at the high end what may be there', () => {
    const labour = labourOf(workedOn(0));
    expect(labour.get('test-circuit')).toMatchObject({ quantity: 1, lowQuantity: 1, highQuantity: 8 });
    expect(labour.get('move-circuit')).toMatchObject({ quantity: 1, lowQuantity: 1, highQuantity: 8 });
  });

  it('that a remedy names no place for is the smallest, with nothing on it', () => {
    const worked = workedOf({ scheme: schemeOf({ remedies: [{ kind: 'new-board', at: 'nowhere' }] }) });
    expect(measuredByItem(boardDemands(worked, usualCounts))).toEqual({
      'consumer-unit-6': 1,
      'board-blank': 6,
    });
    expect(labourOf(worked).get('move-circuit')).toBeUndefined();
  });

  it('fills its ways: devices, and blanks for the rest, whatever is on it', () => {
    fc.assert(
      fc.property(fc.nat({ max: 15 }), fc.nat({ max: 22 }), fc.nat({ max: 8 }), (more, ways, spareWays) => {
        const measured = measuredByItem(boardDemands(workedOn(more, { ways, spareWays }), usualCounts));
        const count = (start: string) =>
          Object.entries(measured).reduce((sum, [item, so]) => sum + (item.startsWith(start) ? so : 0), 0);
        const size = Number(
          Object.keys(measured)
            .find((item) => item.startsWith('consumer-unit-'))
            ?.split('-')[2],
        );
        const onIt = Math.max(more + 1, ways - spareWays);
        expect(count('rcbo-')).toBe(onIt);
        expect(count('board-blank')).toBe(size - onIt);
        expect(size - onIt).toBeGreaterThanOrEqual(2);
        expect(size).toBe(waysFor(onIt, usualCounts));
      }),
    );
  });

  it('is as large as is sold, and of so many ways past that', () => {
    expect([1, 4, 5, 8, 22, 23].map((circuits) => waysFor(circuits, usualCounts))).toEqual([
      6, 6, 8, 10, 24, 25,
    ]);
  });

  it('costs more the more is on it: a device, its way and its tests each', () => {
    const job = demoJob('saltglass-row');
    const priced = (inUse: number) => {
      const boards = job.boards.map((board) => ({ ...board, ways: inUse, spareWays: 0 }));
      const remedies: Remedy[] = [{ kind: 'new-board', at: boards[0]?.id ?? '' }];
      const schemes = job.schemes.slice(0, 1).map((scheme) => ({ ...scheme, remedies }));
      const [scheme] = estimateOf({ ...job, boards, schemes }).schemes;
      if (scheme === undefined) throw new Error('no scheme');
      return scheme;
    };
    const [few, many] = [priced(1), priced(8)];
    // Seven circuits more: 22 min to move, 30 to test, 5 for the chart, by the demo norms.
    const { norms } = demoLibrary();
    const each = ['move-circuit', 'test-circuit', 'circuit-chart'].reduce(
      (sum, task) => sum + (norms.tasks.find((norm) => norm.task === task)?.typicalMin ?? Number.NaN),
      0,
    );
    expect(many.price.labourMin - few.price.labourMin).toBeCloseTo(7 * each, 6);
    expect(many.totals.grossPence - few.totals.grossPence).toBeGreaterThan(7 * 2240);
  });
});
