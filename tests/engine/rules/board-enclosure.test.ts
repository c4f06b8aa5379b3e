import { describe, expect, it } from 'vitest';
import { boardEnclosure } from '#engine/rules/board-enclosure.ts';
import { factsOf, saidBy, schemeOf } from './facts-builder.ts';

describe('enclosure of the consumer unit', () => {
  it('[PR3] is not called for by added points', () => {
    expect(saidBy(boardEnclosure, factsOf({ scheme: schemeOf() }))).toMatchObject([
      { outcome: 'passes', messageId: 'notTriggered' },
    ]);
  });

  it('[PR3] is called for by a new board', () => {
    const scheme = schemeOf([], { remedies: [{ kind: 'new-board' }] });
    expect(saidBy(boardEnclosure, factsOf({ scheme }))).toMatchObject([
      { outcome: 'advice', messageId: 'newBoard' },
    ]);
  });

  it('[PR3] has nothing to say of the house as found', () => {
    expect(saidBy(boardEnclosure, factsOf())).toEqual([]);
  });
});
