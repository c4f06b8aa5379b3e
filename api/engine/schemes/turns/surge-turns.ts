import { SURGE_QUESTION, surgeIsOpen, withSurgeWanted } from '../../connections/surge-device.ts';
import type { Worked } from '../../connections/worked.ts';
import type { PriceTurn } from './price-turn.ts';

/** A new board, and nobody has asked the owner about surge protection: where it is wanted, a device goes in. */
export const surgeTurns = (worked: Worked): readonly PriceTurn[] =>
  surgeIsOpen(worked)
    ? [{ question: SURGE_QUESTION, subjectId: 'supply', cheaper: [], dearer: [{ job: withSurgeWanted }] }]
    : [];
