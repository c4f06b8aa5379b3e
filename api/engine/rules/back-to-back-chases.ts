import { wallWords } from '../plan/wall-words.ts';
import { chaseCut } from '../ways/chase-cut.ts';
import type { Run } from '../ways/run.ts';
import type { Facts } from './facts.ts';
import { rule } from './rule.ts';
import { stretchesInWalls, type WallStretch } from './wall-stretch.ts';
import { nameOf } from './wiring.ts';

/** Chases nearer to each other than this on the two faces of a wall weaken it together. Common practice, no source. */
const APART_MM = 150;

/** No two chases are cut opposite each other in one wall. */
export const backToBackChases = rule({
  id: 'RT5',
  title: 'Chases back to back',
  source: 'Approved Document A, section 2C',
  messages: {
    opposite: 'The cables {names} are chased opposite each other into {wall}.',
    twice: 'The cable {names} is chased into both faces of {wall}, one chase behind the other.',
  },
  remedies: {
    opposite: 'Move one of the chases along the wall.',
    twice: 'Keep the cable to one face of the wall, or move one of its chases along it.',
  },
  couldFail: false,
  check: (facts) => {
    // In the gap behind a board nothing of the masonry goes.
    const chases = stretchesInWalls(facts).filter(({ segment, wall }) => {
      const cut = chaseCut(wall, segment);
      return segment.medium === 'wall-chase' && cut?.isBehindBoard !== true;
    });
    return chases.flatMap((chase, i) =>
      chases
        .slice(i + 1)
        .filter((other) => areOpposite(chase, other))
        .map((other) => opposed(facts, chase, other)),
    );
  },
});

function opposed(facts: Facts, chase: WallStretch, other: WallStretch) {
  const runs = [...new Set([chase.run, other.run])];
  return {
    outcome: 'decide' as const,
    messageId: runs.length === 1 ? ('twice' as const) : ('opposite' as const),
    subjectId: chase.run.id,
    origin: 'scheme' as const,
    values: {
      names: runs.map((run) => betweenWords(facts, run)).join(' and '),
      wall: wallWords(facts.plan, chase.wall.wall.id),
    },
  };
}

/** Named by both ends: two cables may come to one point. */
const betweenWords = (facts: Facts, { from, to }: Run): string =>
  `from ${nameOf(facts, from.nodeId)} to ${nameOf(facts, to.nodeId)}`;

function areOpposite(a: WallStretch, b: WallStretch): boolean {
  if (a.wall.wall.id !== b.wall.wall.id || a.segment.side === b.segment.side) return false;
  const near = a.alongLowMm < b.alongHighMm + APART_MM && b.alongLowMm < a.alongHighMm + APART_MM;
  return near && a.heightLowMm < b.heightHighMm + APART_MM && b.heightLowMm < a.heightHighMm + APART_MM;
}
