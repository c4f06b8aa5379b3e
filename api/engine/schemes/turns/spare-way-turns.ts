import type { Worked } from '../../connections/worked.ts';
import { boardsWithUncountedWays } from '../../rules/spare-way.ts';
import type { PriceTurn } from './price-turn.ts';

/** The boards from which new circuits start and whose spare ways nobody has counted: too few, and an enclosure stands beside it. */
export const spareWayTurns = (worked: Worked): readonly PriceTurn[] =>
  boardsWithUncountedWays(worked).map((boardId) => ({
    question: 'spare-ways',
    subjectId: boardId,
    cheaper: [],
    dearer: [
      {
        scheme: (one) => ({ ...one, remedies: [...one.remedies, { kind: 'rcd-enclosure', at: boardId }] }),
      },
    ],
  }));
