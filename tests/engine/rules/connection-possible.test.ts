import { describe, expect, it } from 'vitest';
import { connectionPossible } from '#engine/rules/connection-possible.ts';
import { factsOf, pointOf, saidBy } from './facts-builder.ts';

describe('connections that cannot be made', () => {
  it('[CN1] fails a wanted fused unit that is joined by a plain spur', () => {
    const facts = factsOf({
      job: { points: [pointOf('w4', { kind: 'fused-unit' })] },
      proposed: { problems: [{ connectionId: 'k1', code: 'unit-by-spur', subjectId: 'w4' }] },
    });
    expect(saidBy(connectionPossible, facts)).toEqual([
      { outcome: 'fails', messageId: 'unit-by-spur', subjectId: 'w4', origin: 'scheme' },
    ]);
  });

  it('[CN1] has words and a remedy for every problem', () => {
    expect(Object.keys(connectionPossible.remedies).sort()).toEqual(
      Object.keys(connectionPossible.messages).sort(),
    );
  });

  it('[CN1] says nothing of a scheme that can be done', () => {
    expect(saidBy(connectionPossible, factsOf())).toEqual([]);
  });
});
