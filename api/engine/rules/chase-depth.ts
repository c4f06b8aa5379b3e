import { chaseCut } from '../ways/chase-cut.ts';
import { figures } from './figures.ts';
import { type CheckResult, rule } from './rule.ts';
import { stretchesInWalls, type WallStretch } from './wall-stretch.ts';

type Message = 'within' | 'spared' | 'tooDeep' | 'depthUnknown' | 'hollow';

/** Chases leave the wall strong enough. */
export const chaseDepth = rule<Message>({
  id: 'RT4',
  title: 'Depth of chases',
  source: 'Approved Document A, section 2C',
  messages: {
    within: 'The chase goes {actual} mm into a leaf of {leaf} mm; up to {limit} mm is allowed.',
    spared: 'The cable lies in the gap behind the board: the masonry is not cut.',
    tooDeep: 'The chase would go {actual} mm into a leaf of {leaf} mm; the guidance allows {limit} mm.',
    depthUnknown: 'Keep the chase within {limit} mm of a leaf of {leaf} mm ({direction}).',
    hollow:
      'The chase goes {actual} mm into a leaf of {leaf} mm, {limit} mm allowed; if the blocks are hollow, 15 mm must be left before the void.',
  },
  remedies: {
    tooDeep: 'Run upright, use surface channel, or ask an engineer.',
    depthUnknown: 'Set the depth of the chase before cutting.',
    hollow: 'Try a block before cutting.',
  },
  couldFail: false,
  check: (facts) => {
    const stretches = stretchesInWalls(facts);
    return facts.runs.flatMap((run) => {
      const own = stretches.filter((stretch) => stretch.run.id === run.id).flatMap(judged);
      return own.sort((a, b) => badness(b) - badness(a)).slice(0, 1);
    });
  },
});

function badness({ outcome }: CheckResult<Message>): number {
  return outcome === 'decide' ? 2 : outcome === 'advice' ? 1 : 0;
}

function judged({ run, segment, wall }: WallStretch): readonly CheckResult<Message>[] {
  const cut = chaseCut(wall, segment);
  if (cut === null) return [];
  const { leafMm, limitMm, intoMm, isBehindBoard } = cut;
  const subject = { subjectId: run.id, origin: 'scheme' } as const;
  if (isBehindBoard) return [{ ...subject, outcome: 'passes', messageId: 'spared' }];
  const named = { leaf: Math.round(leafMm), direction: segment.direction };
  if (intoMm === null) {
    const { limit, unit, values } = figures(0, limitMm, 'mm', named);
    return [{ ...subject, outcome: 'advice', messageId: 'depthUnknown', limit, unit, values }];
  }
  const numbers = figures(intoMm, limitMm, 'mm', named);
  if (intoMm > limitMm) return [{ ...subject, outcome: 'decide', messageId: 'tooDeep', ...numbers }];
  return wall.wall.core === 'block' && intoMm > 0
    ? [{ ...subject, outcome: 'advice', messageId: 'hollow', ...numbers }]
    : [{ ...subject, outcome: 'passes', messageId: 'within', ...numbers }];
}
