import { bindsAsRing } from '../circuit/binds-as.ts';
import type { UnfusedSpur } from '../circuit/shape.ts';
import { isGuess } from '../plan/is-guess.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { nameOf, touchedShapes } from './wiring.ts';

/** Unfused spurs that may start at one point of the ring or one joint in it. */
const SPURS_A_POINT = 1;

/** Cables in a ring point that already has its spur: two of the ring and the spur. */
const CABLES_WITH_SPUR = 3;

type Message = 'one' | 'several' | 'severalAtOrigin' | 'alreadyThree' | 'cablesNotSeen';

/** One unfused spur starts at one point or joint; a fused spur takes that place as well. */
export const oneSpurAPoint = rule<Message>({
  id: 'SP2',
  title: 'Spurs from one point or joint',
  source: 'common practice with BS 1363-2 terminals (three 2.5 mm² conductors) and BS 7671 526.2',
  messages: {
    one: '{actual} spur starts at {from}, of {limit}.',
    several: '{actual} spurs start at {from}, where {limit} may.',
    severalAtOrigin:
      '{actual} spurs start at {from}: with the ring that is more conductors in one terminal of the device than {limit} spur makes. Its maker says how many it takes.',
    alreadyThree: '{from} was found with three cables or more, so it most likely has its one spur already.',
    cablesNotSeen: 'Nobody has looked how many cables are in {from}, so it may have its one spur already.',
  },
  remedies: {
    several: 'Start the further spur from another point, or from a joint in a ring leg.',
    severalAtOrigin: 'Start the further spur from a point of the ring, or look the terminal up.',
    alreadyThree: 'Start from another point, or trace the third cable.',
    cablesNotSeen: 'Take the plate off, dead and proved so, and count the cables.',
  },
  couldFail: true,
  applies: (facts) => touchedShapes(facts).some(bindsAsRing),
  check: (facts) =>
    touchedShapes(facts)
      .filter(bindsAsRing)
      .flatMap((shape) => {
        const roots = [...new Set(shape.spurs.map(({ rootNode }) => rootNode))].sort();
        return roots.map((root) =>
          judged(
            facts,
            root,
            shape.spurs.filter(({ rootNode }) => rootNode === root),
          ),
        );
      }),
});

function judged(facts: Facts, root: string, spurs: readonly UnfusedSpur[]): CheckResult<Message> {
  const values = { from: nameOf(facts, root), actual: spurs.length, limit: SPURS_A_POINT };
  const head = {
    subjectId: root,
    origin: spurs.some(({ isNew }) => isNew) ? ('scheme' as const) : ('found' as const),
    actual: spurs.length,
    limit: SPURS_A_POINT,
    values,
  };
  const place = facts.shapes.get(spurs[0]?.circuitId ?? '')?.places.find(({ nodeId }) => nodeId === root);
  if (spurs.length > SPURS_A_POINT) {
    const atOrigin = place?.role === 'origin';
    return atOrigin
      ? { ...head, outcome: 'decide', messageId: 'severalAtOrigin' }
      : { ...head, outcome: 'fails', messageId: 'several' };
  }
  const { seen, untold, isSure } = cablesAt(facts, root);
  if (place?.role === 'claimed-ring') {
    if (seen === null || !isSure) return { ...head, outcome: 'not-proven', messageId: 'cablesNotSeen' };
    if (seen >= CABLES_WITH_SPUR) return { ...head, outcome: 'fails', messageId: 'alreadyThree' };
  }
  // A cable in the plate that no leg tells of is most likely a spur, whatever the legs make of the point.
  const isTakenUp = place?.role === 'ring' && untold > 0 && (seen ?? 0) >= CABLES_WITH_SPUR;
  return isTakenUp
    ? { ...head, outcome: 'fails', messageId: 'alreadyThree' }
    : { ...head, outcome: 'passes', messageId: 'one' };
}

interface CablesAt {
  readonly seen: number | null;
  /** Of those, how many no leg tells of. */
  readonly untold: number;
  /** Whether somebody counted them. */
  readonly isSure: boolean;
}

/** The cables that the survey saw in a point; of a replacement, in the point that it replaces. */
function cablesAt(facts: Facts, nodeId: string): CablesAt {
  const own = facts.plan.pointById.get(nodeId);
  const point = own?.replaces === undefined ? own : (facts.plan.pointById.get(own.replaces) ?? own);
  const seen = point?.asFound?.cablesSeen ?? null;
  const certainty = point?.certainty?.cablesSeen ?? point?.certainty?.asFound;
  const told = facts.found.edges.filter(
    ({ kind, from, to }) => kind === 'cable' && (from === point?.id || to === point?.id),
  ).length;
  return { seen, untold: Math.max(0, (seen ?? 0) - told), isSure: !isGuess(certainty) };
}
