import type { CableJoint } from '../connections/things.ts';
import type { Facts } from './facts.ts';
import { floorAt } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'accessible' | 'exempt' | 'hidden' | 'underFittedFloor' | 'notTold';

/** Coverings that are fitted, so that what lies below them can no longer be reached. */
const fitted: ReadonlySet<string> = new Set(['carpet', 'laminate', 'tile', 'vinyl', 'wood']);

/** A joint stays accessible, or is of a kind that need not be. */
export const jointAccess = rule<Message>({
  id: 'JN2',
  title: 'Access to joints',
  source: 'BS 7671 526.3; fitted floors by Appendix 15 (note) and common practice',
  messages: {
    accessible: 'The {kind} joint can be reached.',
    exempt: 'The joint is {kind} and need not be reached.',
    hidden: 'The {kind} joint cannot be reached for inspection, testing and maintenance.',
    underFittedFloor:
      'The {kind} joint lies under a fitted floor ({covering}). The standard does not define “accessible”; a fitted covering is commonly held to end it, and the stricter reading decides.',
    notTold: 'Whether the {kind} joint can be reached was not told.',
  },
  remedies: {
    hidden: 'A joint to BS 5733 marked MF in a place its maker allows, or another place for it.',
    underFittedFloor: 'A joint to BS 5733 marked MF in a place its maker allows, or another place for it.',
    notTold: 'Look, and record it; or use a maintenance-free joint.',
  },
  couldFail: true,
  check: (facts) =>
    facts.things.joints
      .filter(({ circuitId }) => facts.circuitIds.includes(circuitId))
      .map((joint) => judged(facts, joint)),
});

function judged(facts: Facts, joint: CableJoint): CheckResult<Message> {
  const covering = fittedCovering(facts, joint);
  const head = {
    subjectId: joint.id,
    origin: joint.state === 'new' ? ('scheme' as const) : ('found' as const),
    actual: joint.kind,
    limit: 'accessible or maintenance-free',
    values: { kind: joint.kind, covering: covering ?? '' },
  };
  if (joint.source === 'unknown') return { ...head, outcome: 'not-proven', messageId: 'notTold' };
  if (joint.kind === 'maintenance-free' || joint.kind === 'crimp')
    return { ...head, outcome: 'passes', messageId: 'exempt' };
  if (joint.accessible === false) return { ...head, outcome: 'fails', messageId: 'hidden' };
  if (covering !== null) return { ...head, outcome: 'fails', messageId: 'underFittedFloor' };
  return joint.accessible === null
    ? { ...head, outcome: 'not-proven', messageId: 'notTold' }
    : { ...head, outcome: 'passes', messageId: 'accessible' };
}

function fittedCovering(facts: Facts, { lies, position }: CableJoint): string | null {
  if (lies !== 'floor-void' || position === null) return null;
  const floor = floorAt(facts, position.storeyId, position.at);
  if (floor === null || floor.liftable === true) return null;
  return floor.liftable === false || fitted.has(floor.covering) ? floor.covering : null;
}
