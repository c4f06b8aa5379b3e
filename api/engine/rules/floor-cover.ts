import { planPoint } from '../plan/plane.ts';
import { roomAt } from '../plan/surroundings.ts';
import { BOARDS_MM } from '../plan/voids.ts';
import { JOIST_COVER_MM } from '../ways/concealed-cable.ts';
import type { Segment } from '../ways/run.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { floorAt } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** Width of the widest flat cable that is clipped to a joist on edge, mm. Source: BS 6004, 6 mm² as makers print it. */
const CABLE_MM = 13.5;

type Message =
  | 'covered'
  | 'shallow'
  | 'nearCeiling'
  | 'armoured'
  | 'conduit'
  | 'pathAssumed'
  | 'keepMiddle'
  | 'depthUnknown';

/** New cable under a floor keeps away from the nails and screws of its boards and of the ceiling below. */
export const floorCover = rule<Message>({
  id: 'RT1',
  title: 'Cable under floors',
  source: 'BS 7671 522.6.201',
  messages: {
    covered: 'The cable lies {actual} mm from the face of the joists; {limit} mm is asked for.',
    shallow:
      'The cable lies {actual} mm below the top of the joists; {limit} mm is asked for. An RCD is no cure under a floor.',
    nearCeiling:
      'The cable lies {actual} mm above the underside of the joists that carry a ceiling; {limit} mm is asked for.',
    armoured:
      'The cable may lie nearer than {limit} mm to a face of the joists; its earthed armour is the protection asked for.',
    conduit:
      'The cable lies {actual} mm from a face of the joists, under {limit} mm; only an earthed metal conduit or equal protection would serve.',
    keepMiddle:
      'Where nobody settled its depth the cable would lie {actual} mm from the underside of joists that carry a ceiling; {limit} mm from both faces is to be had at their middle only.',
    depthUnknown:
      'The cable lies in joists that carry a ceiling, and their depth is not known, so {limit} mm from their underside cannot be shown.',
    pathAssumed:
      'By the assumed path the cable would lie {actual} mm from a face of the joists, under {limit} mm; the path is not known.',
  },
  remedies: {
    shallow: 'Lower the run, clip it to the side of the joists 50 mm down, or give it mechanical protection.',
    nearCeiling: 'Raise the run to the middle of the joists, or give it mechanical protection.',
    conduit: 'Confirm earthed metal conduit, or lower the run.',
    keepMiddle: 'Clip the cable to the side of a joist at half its depth.',
    depthUnknown: 'Lift a board and measure the joists.',
    pathAssumed: 'Lift a board and settle where the run goes.',
  },
  couldFail: true,
  check: (facts) =>
    facts.runs.flatMap((run) => {
      const armoured = run.cable.type === 'steel-wire-armoured';
      const [worst] = run.segments
        .flatMap((segment) => coversOf(facts, segment))
        .map((cover) => judged(cover, armoured))
        .sort((a, b) => gravest.indexOf(a.outcome) - gravest.indexOf(b.outcome) || actualMm(a) - actualMm(b));
      return worst === undefined ? [] : [{ subjectId: run.id, origin: 'scheme', ...worst }];
    }),
});

type Judgement = Omit<CheckResult<Message>, 'subjectId' | 'origin'>;

/** The gravest first: one outcome stands for the whole run. */
const gravest: readonly Judgement['outcome'][] = ['fails', 'decide', 'not-proven', 'advice', 'passes'];

function actualMm({ actual }: Judgement): number {
  return typeof actual === 'number' ? actual : 0;
}

interface Cover {
  readonly segment: Segment;
  /** Null at the underside of joists whose depth is not known. */
  readonly coverMm: number | null;
  readonly face: 'top' | 'underside';
  /** Whether the joists have room for the cable with the cover at both faces. */
  readonly deepEnough: boolean;
}

function judged({ segment, coverMm, face, deepEnough }: Cover, armoured: boolean): Judgement {
  const numbers =
    coverMm === null ? { limit: JOIST_COVER_MM, unit: 'mm' } : figures(coverMm, JOIST_COVER_MM, 'mm');
  if (coverMm !== null && coverMm >= JOIST_COVER_MM)
    return { outcome: 'passes', messageId: 'covered', ...numbers };
  if (armoured) return { outcome: 'passes', messageId: 'armoured', ...numbers };
  if (coverMm === null) return { outcome: 'not-proven', messageId: 'depthUnknown', ...numbers };
  if (segment.containment === 'conduit') return { outcome: 'decide', messageId: 'conduit', ...numbers };
  if (segment.certainty !== 'pinned')
    return face === 'underside' && deepEnough
      ? { outcome: 'advice', messageId: 'keepMiddle', ...numbers }
      : { outcome: 'not-proven', messageId: 'pathAssumed', ...numbers };
  return { outcome: 'fails', messageId: face === 'top' ? 'shallow' : 'nearCeiling', ...numbers };
}

/** Cover at the top for every stretch in a timber floor's void, at the underside too where the joists carry a ceiling. */
function coversOf(facts: Facts, segment: Segment): readonly Cover[] {
  // An upright stretch only passes through the boards, under the wall that it comes from.
  if (!segment.medium.startsWith('void-') || segment.direction === 'vertical') return [];
  const storey = facts.plan.storeyById.get(segment.storeyId);
  const floor = floorAt(facts, segment.storeyId, segment.from.at);
  if (!storey || floor?.build !== 'suspended-timber') return [];
  const floorLevelMm = storey.storey.floorLevelMm + (floor.levelOffsetMm ?? 0);
  // Where nobody pinned the run it goes through the middle of the joists, which has a rule of its own.
  if (segment.medium === 'void-across' && segment.certainty !== 'pinned') return [];
  const depths = [segment.from, segment.to].map(({ levelMm }) => floorLevelMm - BOARDS_MM - levelMm);
  const joistMm = floor.joistDepthMm ?? null;
  const deepEnough = joistMm !== null && joistMm >= 2 * JOIST_COVER_MM + CABLE_MM;
  const top: Cover = { segment, coverMm: Math.min(...depths), face: 'top', deepEnough };
  if (!carriesCeiling(facts, segment)) return [top];
  const undersideMm = joistMm === null ? null : joistMm - Math.max(...depths);
  return [top, { segment, coverMm: undersideMm, face: 'underside', deepEnough }];
}

/** Whether a ceiling is fixed under the joists anywhere along a stretch: by the room below, else by its storey. */
function carriesCeiling({ plan }: Facts, { storeyId, from, to }: Segment): boolean {
  const belowId = plan.storeyById.get(storeyId)?.belowId ?? '';
  const below = plan.storeyById.get(belowId)?.storey;
  if (below === undefined) return false;
  const middle = planPoint((from.at[0] + to.at[0]) / 2, (from.at[1] + to.at[1]) / 2);
  return [from.at, middle, to.at].some(
    (at) => (roomAt(plan, belowId, at)?.room.ceiling ?? below.ceiling).lining !== 'none',
  );
}
