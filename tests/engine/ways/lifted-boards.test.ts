import { describe, expect, it } from 'vitest';
import { liftedBoards } from '#engine/ways/lifted-boards.ts';
import type { Segment } from '#engine/ways/run.ts';
import { runOf, segmentOf, spotAt } from '#tests/engine/connections/wiring-builder.ts';

const under = (x: number, y: number) => spotAt(x, y, -110);

function way(corners: readonly (readonly [number, number])[], rest: Partial<Segment> = {}): Segment[] {
  return corners.slice(1).map(([x, y], index) => {
    const [fromX, fromY] = corners[index] ?? [0, 0];
    return segmentOf(under(fromX, fromY), under(x, y), rest);
  });
}

function count(...segments: readonly Segment[]): number {
  return liftedBoards([runOf('n', 'a', 'w', segments)]).length;
}

describe('boards that come up', () => {
  it('are one at either end', () => {
    expect(
      count(
        ...way([
          [0, 0],
          [3000, 0],
        ]),
      ),
    ).toBe(2);
  });

  it('are two for the two sides of a wall, however near', () => {
    expect(
      count(
        ...way([
          [0, 0],
          [130, 0],
        ]),
      ),
    ).toBe(2);
  });

  it('are none without a way under a floor', () => {
    expect(count(segmentOf(spotAt(0, 0, 300), spotAt(900, 0, 300), { medium: 'wall-chase' }))).toBe(0);
    expect(count(segmentOf(spotAt(0, 0, 2600), spotAt(900, 0, 2600), { medium: 'loft' }))).toBe(0);
  });

  it.each([
    [600, 2],
    [601, 3],
  ])('are one more at a turn %i mm from the end: %i', (offMm, boards) => {
    expect(
      count(
        ...way([
          [0, 0],
          [3000, 0],
          [3000, offMm],
        ]),
      ),
    ).toBe(boards);
  });

  it.each([
    ['void-across', 2000, 2],
    ['void-across', 2001, 3],
    ['void-across', 4001, 4],
    ['void-along', 4000, 2],
    ['void-along', 4001, 3],
  ] as const)('%s for %i mm are %i', (medium, lengthMm, boards) => {
    expect(
      count(
        ...way(
          [
            [0, 0],
            [lengthMm, 0],
          ],
          { medium },
        ),
      ),
    ).toBe(boards);
  });

  it('serve every run within reach', () => {
    const first = runOf(
      'n',
      'a',
      'w',
      way([
        [0, 0],
        [3000, 0],
      ]),
    );
    const second = runOf(
      'm',
      'a',
      'v',
      way([
        [0, 500],
        [0, 3000],
      ]),
    );
    const boards = liftedBoards([first, second]);
    expect(boards.map(({ runIds }) => runIds)).toEqual([['m', 'n'], ['n'], ['m']]);
  });

  it('are not shared between storeys', () => {
    const first = runOf(
      'n',
      'a',
      'w',
      way([
        [0, 0],
        [3000, 0],
      ]),
    );
    const above = runOf(
      'm',
      'a',
      'v',
      way(
        [
          [0, 0],
          [3000, 0],
        ],
        { storeyId: 'upper' },
      ),
    );
    expect(liftedBoards([first, above])).toHaveLength(4);
  });

  it('are those of one way where the cable passes a footing wall', () => {
    const through = segmentOf(under(1000, 0), under(1100, 0), { medium: 'through-wall' });
    const segments = [
      ...way([
        [0, 0],
        [1000, 0],
      ]),
      through,
      ...way([
        [1100, 0],
        [2000, 0],
      ]),
    ];
    expect(count(...segments)).toBe(3);
  });
});
