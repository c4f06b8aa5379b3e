import type { CableJoint } from '../connections/things.ts';
import { deviceMoved } from './device-moved.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';

/** Rating of old ring joints that are still met on 32 A. Common practice, no source. */
const OLD_RING_JOINT_A = 30;

/** Rating below which a new joint in a ring is worth a word. Common practice, no source. */
const RING_JOINT_A = 32;

type Message = 'within' | 'tooSmall' | 'oldBox' | 'ratingUnknown' | 'upstreamUnknown' | 'ringPractice';

/** A joint is rated for the device or fuse before it. */
export const jointRating = rule<Message>({
  id: 'JN1',
  title: 'Rating of joints',
  source: 'BS 7671 512.1.2, 526.2; 32 A and more in a ring is common practice',
  messages: {
    within: 'The joint is rated {actual} A, the device or fuse before it {limit} A.',
    tooSmall: 'The joint is rated {actual} A, and the device or fuse before it {limit} A.',
    oldBox: 'The joint found is rated {actual} A on a {limit} A circuit, as old ring boxes often are.',
    ratingUnknown: 'The rating of the joint found is not known; {limit} A is before it.',
    upstreamUnknown: 'What protects the joint is not known, so its {actual} A cannot be held against it.',
    ringPractice:
      'The joint is rated {actual} A, enough for the device before it; in a ring {limit} A is usual.',
  },
  remedies: {
    tooSmall: 'A joint rated for the device, by the rating that its maintenance-free condition allows.',
    oldBox: 'Note it, and exchange the box if it is opened anyway.',
    ratingUnknown: 'Open it and read its rating.',
    upstreamUnknown: 'Read the device at the board.',
    ringPractice: 'A 32 A joint, so that a later change of device finds it fit.',
  },
  couldFail: true,
  check: (facts) => jointsTouched(facts).map((joint) => judged(facts, joint)),
});

function jointsTouched(facts: Facts): readonly CableJoint[] {
  return facts.things.joints.filter(({ circuitId }) => facts.circuitIds.includes(circuitId));
}

function judged(facts: Facts, joint: CableJoint): CheckResult<Message> {
  const { ratingA: actual, upstream, state, inRing } = joint;
  // A larger device that the scheme fits is its own doing, at a joint found as well.
  const isRaised = upstream.kind === 'device' && deviceMoved(facts, joint.circuitId) === 'up';
  const origin = state === 'new' || isRaised ? ('scheme' as const) : ('found' as const);
  const subject = { subjectId: joint.id, origin };
  const limit = upstream.ratingA;
  if (limit === null || upstream.kind === 'unknown')
    return {
      ...subject,
      outcome: 'not-proven',
      messageId: 'upstreamUnknown',
      actual,
      unit: 'A',
      values: { actual },
    };
  if (joint.source === 'unknown')
    return {
      ...subject,
      outcome: 'not-proven',
      messageId: 'ratingUnknown',
      limit,
      unit: 'A',
      values: { limit },
    };
  const head = { ...subject, actual, limit, unit: 'A', values: { actual, limit } };
  if (actual < limit) {
    const oldBox = state === 'found' && actual >= OLD_RING_JOINT_A && limit <= RING_JOINT_A;
    return oldBox
      ? { ...head, outcome: 'advice', messageId: 'oldBox' }
      : { ...head, outcome: 'fails', messageId: 'tooSmall' };
  }
  if (state === 'new' && inRing && actual < RING_JOINT_A) {
    const usual = { limit: RING_JOINT_A, values: { actual, limit: RING_JOINT_A } };
    return { ...head, ...usual, outcome: 'advice', messageId: 'ringPractice' };
  }
  return { ...head, outcome: 'passes', messageId: 'within' };
}
