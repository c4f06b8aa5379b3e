import { chaseDepths } from '#data/standards/chase-depths.ts';
import type { PlanWall } from '../plan/plan.ts';
import { figures } from './figures.ts';
import { type CheckResult, rule } from './rule.ts';
import { stretchesInWalls, type WallStretch } from './wall-stretch.ts';

/**
 * Deepest chase in a leaf of masonry, mm: a third of its thickness upright, a sixth level.
 * Source: Approved Document A, section 2C.
 */
export function deepestChaseMm(leafMm: number, direction: 'horizontal' | 'vertical' | 'sloping'): number {
  const [upright, level] = chaseDepths.rows;
  // A slope weakens the wall as a level chase does at worst.
  return leafMm / (direction === 'vertical' ? upright : level).leafParts;
}

/** Plaster on brick or block, mm: 13 is the usual two coats. Common practice, no source. */
const PLASTER_MM = 13;
/** What a flat 2.5 mm² cable takes of the chase behind its face, mm. Common practice, no source. */
const CABLE_MM = 6;
/** A leaf of brick or block, mm, where a wall is thick enough to be two of them. */
const LEAF_MM = 100;
const TWO_LEAVES_MM = 220;

type Message = 'within' | 'tooDeep' | 'depthUnknown' | 'hollow';

/** Chases leave the wall strong enough. */
export const chaseDepth = rule<Message>({
  id: 'RT4',
  title: 'Depth of chases',
  source: 'Approved Document A, section 2C',
  messages: {
    within: 'The chase goes {actual} mm into a leaf of {leaf} mm; up to {limit} mm is allowed.',
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
    const chases = stretchesInWalls(facts).filter(isChase);
    return facts.runs.flatMap((run) => {
      const own = chases.filter((chase) => chase.run.id === run.id).map(judged);
      return own.sort((a, b) => badness(b) - badness(a)).slice(0, 1);
    });
  },
});

function isChase({ segment, wall }: WallStretch): boolean {
  return segment.medium === 'wall-chase' && !wall.wall.core.endsWith('stud') && wall.wall.core !== 'open';
}

function badness({ outcome }: CheckResult<Message>): number {
  return outcome === 'decide' ? 2 : outcome === 'advice' ? 1 : 0;
}

function judged({ run, segment, wall }: WallStretch): CheckResult<Message> {
  const leaf = leafMm(wall);
  const limitMm = deepestChaseMm(leaf, segment.direction);
  const subject = { subjectId: run.id, origin: 'scheme' } as const;
  const named = { leaf: Math.round(leaf), direction: segment.direction };
  if (segment.depthMm === null) {
    const { limit, unit, values } = figures(0, limitMm, 'mm', named);
    return { ...subject, outcome: 'advice', messageId: 'depthUnknown', limit, unit, values };
  }
  const intoMm = Math.max(0, segment.depthMm + CABLE_MM - coatMm(wall, segment.side));
  const numbers = figures(intoMm, limitMm, 'mm', named);
  if (intoMm > limitMm) return { ...subject, outcome: 'decide', messageId: 'tooDeep', ...numbers };
  return wall.wall.core === 'block' && intoMm > 0
    ? { ...subject, outcome: 'advice', messageId: 'hollow', ...numbers }
    : { ...subject, outcome: 'passes', messageId: 'within', ...numbers };
}

/** What stands before the masonry on the side that is cut: plaster, or board and gap. */
function coatMm({ wall }: PlanWall, side: 'left' | 'right' | null): number {
  const face = wall.faces[side ?? 'left'];
  if (face.lining !== 'none') return PLASTER_MM + (face.gapMm ?? 0);
  return face.finish === 'bare' ? 0 : PLASTER_MM;
}

function leafMm(plan: PlanWall): number {
  const { thicknessMm, core, faces } = plan.wall;
  if (core !== 'concrete' && thicknessMm >= TWO_LEAVES_MM) return LEAF_MM;
  const coats = [faces.left, faces.right].filter((face) => face.finish !== 'bare').length;
  return Math.max(0, thicknessMm - coats * PLASTER_MM);
}
