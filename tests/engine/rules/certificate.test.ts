import { describe, expect, it } from 'vitest';
import { certificate } from '#engine/rules/certificate.ts';
import { factsOf, saidBy, schemeOf, shapeOf } from './facts-builder.ts';

describe('certificates', () => {
  it('[NT2] are minor works certificates, one a circuit', () => {
    const facts = factsOf({ scheme: schemeOf(), shapes: [shapeOf('a'), shapeOf('b')] });
    expect(saidBy(certificate, facts)).toMatchObject([
      { outcome: 'advice', messageId: 'minorWorks', actual: 2, subjectId: 's1' },
    ]);
    expect(saidBy(certificate, factsOf({ scheme: schemeOf(), shapes: [shapeOf('a')] }))).toMatchObject([
      { outcome: 'advice', messageId: 'minorWork', actual: 1 },
    ]);
  });

  it('[NT2] are an installation certificate with a new circuit or board', () => {
    const board = schemeOf([], { remedies: [{ kind: 'new-board' }] });
    const circuit = schemeOf([
      {
        id: 'k1',
        kind: 'radial',
        board: 'b1',
        device: { standard: 'BS-EN-60898', ratingA: 20 },
        feeds: [],
      },
    ]);
    expect(saidBy(certificate, factsOf({ scheme: board }))).toMatchObject([{ messageId: 'installation' }]);
    expect(saidBy(certificate, factsOf({ scheme: circuit }))).toMatchObject([{ messageId: 'installation' }]);
  });

  it('[NT2] have no place in the house as found', () => {
    expect(saidBy(certificate, factsOf())).toEqual([]);
  });
});
