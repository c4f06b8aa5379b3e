import type { Worked } from '../connections/worked.ts';
import { type Ask, askStages } from './ask.ts';
import { boardAsks } from './board-asks.ts';
import { circuitAsks } from './circuit-asks.ts';
import { outsideAsks } from './outside-asks.ts';
import { pointAsks } from './point-asks.ts';
import { roomAsks } from './room-asks.ts';
import { supplyAsks } from './supply-asks.ts';
import { voidAsks } from './void-asks.ts';

/**
 * All that the survey of a house finds out, for a scheme or, without one, for whatever comes: answered or not, in the order of
 * the walk through the house, and within a stage as one meets it.
 */
export function asksOf(worked: Worked): readonly Ask[] {
  const asks = [
    ...outsideAsks(worked),
    ...supplyAsks(worked),
    ...boardAsks(worked),
    ...circuitAsks(worked),
    ...pointAsks(worked),
    ...roomAsks(worked),
    ...voidAsks(worked),
  ];
  return askStages.flatMap((stage) => asks.filter((ask) => ask.stage === stage));
}
