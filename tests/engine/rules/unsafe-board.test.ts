import { describe, expect, it } from 'vitest';
import { unsafeBoard } from '#engine/rules/unsafe-board.ts';
import type { Remedy } from '#model/scheme.ts';
import { boardOf, circuitOf, factsOf, saidBy, schemeOf, shapeOf } from './facts-builder.ts';

const said = (value?: string, remedies: Remedy[] = []) =>
  saidBy(
    unsafeBoard,
    factsOf({
      job: {
        boards: [boardOf('b1')],
        circuits: [circuitOf('c')],
        answers: value ? [{ question: 'board-condition', value, certainty: 'seen' }] : [],
      },
      shapes: [shapeOf('c')],
      scheme: schemeOf([], { remedies }),
    }),
  );

describe('state of the board', () => {
  it('[ST3] shuts the gate where it is unsafe', () => {
    expect(said('unsafe')).toMatchObject([
      { outcome: 'fails', subjectId: 'b1', stopGate: true, fix: { kind: 'new-board', at: 'b1' } },
    ]);
  });

  it('[ST3] opens it with a new board, not with another board’s', () => {
    expect(said('unsafe', [{ kind: 'new-board', at: 'b1' }])).toMatchObject([{ outcome: 'passes' }]);
    expect(said('unsafe', [{ kind: 'new-board', at: 'b2' }])).toMatchObject([{ outcome: 'fails' }]);
  });

  it('[ST3] passes a sound board and advises on a worn one', () => {
    expect(said('sound')).toMatchObject([{ outcome: 'passes' }]);
    expect(said('worn')).toMatchObject([{ outcome: 'advice' }]);
  });

  it('[ST3] is not proven where nobody looked, without gating', () => {
    const [finding] = said();
    expect(finding).toMatchObject({ outcome: 'not-proven', origin: 'found' });
    expect(finding).not.toHaveProperty('stopGate');
  });
});
