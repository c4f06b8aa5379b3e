import { ADDITIONAL_PROTECTION_MA, circuitRcd, rcdUnitBefore } from '../proof/rcd-cover.ts';
import { DEEP_IN_WALL_MM } from '../ways/concealed-cable.ts';
import type { Run, Segment } from '../ways/run.ts';
import type { Facts } from './facts.ts';
import { rcboFor } from './rcbo-for.ts';
import { type CheckResult, rule } from './rule.ts';
import { metres, nameOf, wiringOf } from './wiring.ts';

type Message = 'deepEnough' | 'covered' | 'missing' | 'missingInMetal' | 'unknown' | 'assumedNone';

/** New cable in a wall at less than 50 mm, or at any depth in a wall with metal parts, is behind a 30 mA RCD. */
export const rcdForBuriedCable = rule<Message>({
  id: 'RC3',
  title: 'RCD for new cable in walls',
  source: 'BS 7671 522.6.202, 522.6.203, 522.6.204',
  messages: {
    deepEnough: 'The cable {from} – {to} lies {actual} mm deep in the wall and more, {limit} mm needed.',
    covered: 'The cable {from} – {to} lies in a wall and is behind an RCD of {limit} mA or less.',
    missing:
      'The cable {from} – {to} lies in a wall less than 50 mm from a surface{along}, without an RCD of {limit} mA or less.',
    missingInMetal:
      'The cable {from} – {to} lies in a wall with metal studs{along}, without an RCD of {limit} mA or less: there it is needed at any depth.',
    unknown:
      'The cable {from} – {to} lies in a wall, and whether its circuit has an RCD of {limit} mA or less is not known.',
    assumedNone:
      'The cable {from} – {to} lies in a wall{along}, and it is assumed that its circuit has no RCD of {limit} mA or less: not proven.',
  },
  remedies: {
    missing:
      'An RCBO at the board; or cable with an earthed metallic covering, earthed conduit, or the surface.',
    missingInMetal: 'An RCBO at the board, or cable with an earthed metallic covering.',
    unknown: 'Look at the board.',
    assumedNone:
      'Look at the board. If there is none: an RCBO at the board; or cable with an earthed metallic covering.',
  },
  couldFail: true,
  check: (facts) => facts.runs.flatMap((run) => judged(facts, run)),
});

function judged(facts: Facts, run: Run): readonly CheckResult<Message>[] {
  const inWalls = concealed(facts, run);
  const [first] = inWalls;
  // An earthed armour is one of the methods of 522.6.204 itself.
  if (first === undefined || run.cable.type === 'steel-wire-armoured') return [];
  const values = { from: nameOf(facts, run.from.nodeId), to: nameOf(facts, run.to.nodeId) };
  const head = { subjectId: run.id, origin: 'scheme' as const };
  const atRisk = inWalls.find(({ inMetal, coverMm }) => inMetal || coverMm < DEEP_IN_WALL_MM);
  if (atRisk === undefined) {
    const actual = Math.min(...inWalls.map(({ coverMm }) => coverMm));
    const figures = { actual, limit: DEEP_IN_WALL_MM };
    return [
      {
        ...head,
        ...figures,
        unit: 'mm',
        outcome: 'passes',
        messageId: 'deepEnough',
        values: { ...values, ...figures },
      },
    ];
  }
  const limit = ADDITIONAL_PROTECTION_MA;
  const along = atRisk.fromMm > 0 ? ` (${metres(atRisk.fromMm)} m along)` : '';
  const more = { ...head, limit, unit: 'mA', values: { ...values, limit, along } };
  const states = run.circuitIds.map((circuitId) => circuitRcd(facts, circuitId).state);
  const isCovered = states.length > 0 && states.every((state) => state === 'covered');
  if (isCovered || isBehindUnit(facts, run)) return [{ ...more, outcome: 'passes', messageId: 'covered' }];
  const bare = run.circuitIds.find((_, index) => states[index] === 'none');
  const toldBare = run.circuitIds.find((_, index) => states[index] === 'assumed-none');
  if (bare === undefined && toldBare !== undefined)
    return [{ ...more, outcome: 'not-proven', messageId: 'assumedNone', ...rcboFor(facts, toldBare) }];
  if (bare === undefined) return [{ ...more, outcome: 'not-proven', messageId: 'unknown' }];
  const messageId = atRisk.inMetal ? 'missingInMetal' : 'missing';
  return [{ ...more, outcome: 'fails', messageId, ...rcboFor(facts, bare) }];
}

/** A cable is behind a unit's RCD when the node that feeds it is; a ring's cables never are. */
function isBehindUnit(facts: Facts, run: Run): boolean {
  for (const { nodeId, upstreamEdgeId, upstreamNode } of wiringOf(facts).places.values())
    if (upstreamEdgeId === run.id && nodeId !== upstreamNode)
      return upstreamNode !== null && rcdUnitBefore(facts, upstreamNode);
  return false;
}

interface Concealed {
  readonly fromMm: number;
  /** Distance to the nearer face; nought where the depth is not told. */
  readonly coverMm: number;
  readonly inMetal: boolean;
}

/** The stretches in walls, in order; straight through a wall counts as in it only where it has metal parts. */
function concealed(facts: Facts, run: Run): readonly Concealed[] {
  let fromMm = 0;
  return run.segments.flatMap((segment) => {
    const at = fromMm;
    fromMm += segment.lengthMm;
    const inMetal = wallOf(facts, segment)?.core === 'metal-stud';
    const along = segment.medium === 'wall-chase' || segment.medium === 'stud-cavity';
    if (!along && !(inMetal && segment.medium === 'through-wall')) return [];
    return [{ fromMm: at, coverMm: coverMm(facts, segment), inMetal }];
  });
}

function coverMm(facts: Facts, segment: Segment): number {
  if (segment.depthMm === null) return 0;
  const thicknessMm = wallOf(facts, segment)?.thicknessMm;
  return thicknessMm === undefined
    ? segment.depthMm
    : Math.min(segment.depthMm, thicknessMm - segment.depthMm);
}

function wallOf(facts: Facts, { wallId }: Segment) {
  return wallId === null ? undefined : facts.plan.wallById.get(wallId)?.wall;
}
