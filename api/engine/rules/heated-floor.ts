import type { Segment } from '../ways/run.ts';
import type { Facts } from './facts.ts';
import { floorAt } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'heated' | 'unknown';

/** New cable keeps out of heated floors, which drilling and lifting would damage and which warm the cable. */
export const heatedFloor = rule({
  id: 'RT9',
  title: 'Runs and heated floors',
  source: 'BS 7671 522.1 and 753; common practice',
  messages: {
    heated:
      'The run lies in or goes through a heated floor: the heating may be cut, and the cable is warmed.',
    unknown: 'Whether the floor that the run lies in is heated is not known.',
  },
  remedies: {
    heated: 'Go round by wall or ceiling, or trace the heating first and size the cable for the temperature.',
    unknown: 'Ask, look for a manifold or a controller, and trace before drilling.',
  },
  couldFail: false,
  check: (facts) =>
    facts.runs.flatMap<CheckResult<Message>>((run) => {
      const subject = { subjectId: run.id, origin: 'scheme' } as const;
      const heats = run.segments.filter(isInFloor).map((segment) => heatOf(facts, segment));
      if (heats.includes('heated')) return [{ ...subject, outcome: 'decide', messageId: 'heated' }];
      if (heats.includes('unknown')) return [{ ...subject, outcome: 'not-proven', messageId: 'unknown' }];
      return [];
    }),
});

function isInFloor({ medium }: Segment): boolean {
  return medium.startsWith('void-') || medium === 'buried';
}

/** Silence about heating tells nothing under tiles or in a solid floor, where it is usual. */
function heatOf(facts: Facts, segment: Segment): 'heated' | 'unheated' | 'unknown' {
  const heats = [segment.from.at, segment.to.at].map((at) => {
    const floor = floorAt(facts, segment.storeyId, at);
    if (floor?.heated !== undefined) return floor.heated ? 'heated' : 'unheated';
    return floor?.covering === 'tile' || segment.medium === 'buried' ? 'unknown' : 'unheated';
  });
  return heats.find((heat) => heat === 'heated') ?? heats.find((heat) => heat === 'unknown') ?? 'unheated';
}
