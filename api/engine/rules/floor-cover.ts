import type { Segment } from '../ways/run.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { COVER_MM } from './joist-size.ts';
import { floorAt } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** Floor boards are 18 to 22 mm thick; the thicker leaves less cover. Common practice, no source. */
export const BOARDS_MM = 22;

type Message = 'covered' | 'shallow' | 'nearCeiling' | 'armoured' | 'conduit' | 'pathAssumed';

/** New cable under a floor keeps away from the nails and screws of its boards and of the ceiling below. */
export const floorCover = rule<Message>({
  id: 'RT1',
  title: 'Cable under floors lies 50 mm from the faces that fixings enter',
  source: 'BS 7671 522.6.201',
  messages: {
    covered: 'The cable lies {actual} mm from the face of the joists; {limit} mm is asked for.',
    shallow:
      'The cable lies {actual} mm below the top of the joists; {limit} mm is asked for. An RCD is no cure under a floor.',
    nearCeiling:
      'The cable lies {actual} mm above the underside of the joists that carry a ceiling; {limit} mm is asked for.',
    armoured:
      'The cable lies {actual} mm deep, under {limit} mm; its earthed armour is the protection asked for.',
    conduit:
      'The cable lies {actual} mm deep, under {limit} mm; only an earthed metal conduit or equal protection would serve.',
    pathAssumed:
      'By the assumed path the cable would lie {actual} mm deep, under {limit} mm; the path is not known.',
  },
  remedies: {
    shallow: 'Lower the run, clip it to the side of the joists 50 mm down, or give it mechanical protection.',
    nearCeiling: 'Raise the run to the middle of the joists, or give it mechanical protection.',
    conduit: 'Confirm earthed metal conduit, or lower the run.',
    pathAssumed: 'Lift a board and settle where the run goes.',
  },
  couldFail: true,
  check: (facts) =>
    facts.runs.flatMap((run) => {
      const covers = run.segments.flatMap((segment) => coverOf(facts, segment));
      const worst = covers.reduce<Cover | null>(
        (least, cover) => (least && least.coverMm <= cover.coverMm ? least : cover),
        null,
      );
      if (!worst) return [];
      const armoured = run.cable.type === 'steel-wire-armoured';
      return [{ subjectId: run.id, origin: 'scheme', ...judged(worst, armoured) }];
    }),
});

interface Cover {
  readonly segment: Segment;
  readonly coverMm: number;
  readonly face: 'top' | 'underside';
}

function judged(
  { segment, coverMm, face }: Cover,
  armoured: boolean,
): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const numbers = figures(coverMm, COVER_MM, 'mm');
  if (coverMm >= COVER_MM) return { outcome: 'passes', messageId: 'covered', ...numbers };
  if (armoured) return { outcome: 'passes', messageId: 'armoured', ...numbers };
  if (segment.containment === 'conduit') return { outcome: 'decide', messageId: 'conduit', ...numbers };
  if (segment.certainty !== 'pinned') return { outcome: 'not-proven', messageId: 'pathAssumed', ...numbers };
  return { outcome: 'fails', messageId: face === 'top' ? 'shallow' : 'nearCeiling', ...numbers };
}

/** Cover at the top for every stretch in a timber floor's void, at the underside too where it crosses joists over a ceiling. */
function coverOf(facts: Facts, segment: Segment): readonly Cover[] {
  // An upright stretch only passes through the boards, under the wall that it comes from.
  if (!segment.medium.startsWith('void-') || segment.direction === 'vertical') return [];
  const storey = facts.plan.storeyById.get(segment.storeyId);
  const floor = floorAt(facts, segment.storeyId, segment.from.at);
  if (!storey || floor?.build !== 'suspended-timber') return [];
  const floorLevelMm = storey.storey.floorLevelMm + (floor.levelOffsetMm ?? 0);
  // Where nobody pinned the run it goes through the middle of the joists, which has a rule of its own.
  if (segment.medium === 'void-across' && segment.certainty !== 'pinned') return [];
  const depths = [segment.from, segment.to].map(({ levelMm }) => floorLevelMm - BOARDS_MM - levelMm);
  const covers: Cover[] = [{ segment, coverMm: Math.min(...depths), face: 'top' }];
  const crossesOverCeiling = segment.medium === 'void-across' && storey.belowId !== null;
  if (crossesOverCeiling && floor.joistDepthMm !== undefined)
    covers.push({ segment, coverMm: floor.joistDepthMm - Math.max(...depths), face: 'underside' });
  return covers;
}
