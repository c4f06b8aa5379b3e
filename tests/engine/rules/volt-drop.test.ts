import { describe, expect, it } from 'vitest';
import { voltDrop } from '#engine/rules/volt-drop.ts';
import { factsOf, saidBy } from './facts-builder.ts';
import { pointProofOf, provedFacts } from './proof-facts.ts';

// 5 % of 230 V. Source: BS 7671 Appendix 4 §6.4.
const said = (dropV: number | null, beforeV: number | null = 5, isWhole = true) =>
  saidBy(
    voltDrop,
    provedFacts(
      { points: [pointProofOf('p', { dropV })], isWhole },
      { points: [pointProofOf('p', { dropV: beforeV })] },
    ),
  );

describe('volt drop at the furthest point', () => {
  it('[VD1] passes at exactly 11.5 V, and fails above', () => {
    expect(said(11.5)).toMatchObject([
      { outcome: 'passes', subjectId: 'p', actual: 11.5, limit: 11.5, unit: 'V' },
    ]);
    expect(said(11.6)).toMatchObject([
      { outcome: 'fails', messageId: 'over', origin: 'scheme', actual: 11.6 },
    ]);
  });

  it('[VD1] is what was found where it was over before and the scheme makes it no worse', () => {
    expect(said(12, 12)).toMatchObject([{ outcome: 'fails', origin: 'found' }]);
    expect(said(12.5, 12)).toMatchObject([{ outcome: 'fails', origin: 'scheme' }]);
    expect(said(12, null)).toMatchObject([{ outcome: 'fails', origin: 'scheme' }]);
  });

  it('[VD1] is not proven by what is only assumed, whichever way it comes out', () => {
    expect(said(5, 5, false)).toMatchObject([
      { outcome: 'not-proven', messageId: 'notWhole', origin: 'scheme' },
    ]);
    expect(said(12, 5, false)).toMatchObject([{ outcome: 'not-proven', messageId: 'notWholeOver' }]);
    expect(said(null)).toMatchObject([{ outcome: 'not-proven', messageId: 'untold', subjectId: 'c' }]);
  });

  it('[VD1] tells the worst of several points, by the firm’s own limit', () => {
    const points = [pointProofOf('p', { dropV: 4 }), pointProofOf('q', { dropV: 7 })];
    expect(saidBy(voltDrop, provedFacts({ points, dropLimitV: 6 }))).toMatchObject([
      { outcome: 'fails', subjectId: 'q', actual: 7, limit: 6 },
    ]);
  });

  it('[VD1] is silent without a circuit', () => {
    expect(saidBy(voltDrop, factsOf())).toEqual([]);
  });
});
