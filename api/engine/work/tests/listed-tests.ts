import { unitOfLoadSide } from '../../circuit/load-side.ts';
import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { bandAbout } from '../../proof/reading-band.ts';
import { arcFaultTests, rcdTests } from './listed-devices.ts';
import { atPoint, type Listing, ofCircuit, unitsOf, type Wanted } from './listing.ts';
import type { CircuitGroup } from './sheet-test.ts';
import { insulationTestLimit, loopTestLimit } from './test-limits.ts';

/** The tests of one group of a circuit, in its order from the board; empty where there is nothing of that group. */
export function testsOf(listing: Listing, group: CircuitGroup): readonly Wanted[] {
  const { proof, isRing } = listing;
  switch (group) {
    case 'ends':
      return isRing ? endTests(proof) : [];
    case 'crossed-ln':
    case 'crossed-le':
      return crossedTests(listing, group);
    case 'r1r2':
      return linkedTests(listing);
    case 'insulation':
      return insulationTests(listing);
    case 'polarity':
      return [...connectedPoints(listing), ...newUnits(listing)].map((point) => ({
        ...atPoint(listing, group, point),
        unit: null,
        limit: { bound: 'right', words: 'BS 7671 643.6' },
        asked: { kind: 'polarity' },
      }));
    case 'zs':
      return loopTests(listing);
    case 'rcd':
    case 'rcd-button':
      return rcdTests(listing, group);
    case 'afdd-button':
      return arcFaultTests(listing);
  }
}

const conductors = [
  { loop: 'L', mark: 'r1', key: 'r1Ohm' },
  { loop: 'N', mark: 'rn', key: 'rnOhm' },
  { loop: 'cpc', mark: 'r2', key: 'r2Ohm' },
] as const;

const bandOrNull = (fromOhm: number | null | undefined, toOhm = fromOhm) =>
  fromOhm === null || fromOhm === undefined || toOhm === null || toOhm === undefined
    ? null
    : bandAbout(Math.min(fromOhm, toOhm), Math.max(fromOhm, toOhm));

const endTests = ({ circuit, expected: { ring } }: CircuitProof): readonly Wanted[] =>
  conductors.map(({ loop, mark, key }) => ({
    group: 'ends',
    subject: circuit,
    which: mark,
    mark,
    unit: 'Ω',
    expected: bandOrNull(ring?.[key]),
    limit: null,
    asked: { kind: 'loop', loop, from: 'end-to-end' },
    at: null,
  }));

/** The points that the crossed tests of a ring reach: not those on a spur from the origin. */
function crossedPoints({ proof, points, isRing }: Listing): readonly string[] {
  if (!isRing) return [];
  if (proof.expected.ring === null) return points;
  const reached = new Set(proof.expected.ring.step2.map(({ point }) => point));
  return points.filter((point) => reached.has(point));
}

function crossedTests(listing: Listing, group: 'crossed-ln' | 'crossed-le'): readonly Wanted[] {
  const { ring } = listing.proof.expected;
  const step = group === 'crossed-ln' ? ring?.step2 : ring?.step3;
  return crossedPoints(listing).map((point) => ({
    ...atPoint(listing, group, point),
    unit: 'Ω',
    expected: bandOrNull(step?.find((each) => each.point === point)?.ohm),
    asked: { kind: 'loop', loop: group === 'crossed-ln' ? 'L-N' : 'L-cpc', from: 'crossed' },
  }));
}

function linkedTests(listing: Listing): readonly Wanted[] {
  const crossed = new Set(crossedPoints(listing));
  const expected = new Map(
    listing.proof.expected.points.map(({ point, r1r2Ohm }) => [point, r1r2Ohm] as const),
  );
  return listing.points
    .filter((point) => !crossed.has(point))
    .map((point) => ({
      ...atPoint(listing, 'r1r2', point),
      unit: 'Ω',
      expected: bandOrNull(expected.get(point)),
      asked: { kind: 'loop', loop: 'L-cpc', from: 'A' },
    }));
}

const pairs = [
  { between: 'LN-cpc', mark: 'line and neutral to earth' },
  { between: 'L-N', mark: 'line to neutral' },
] as const;

const insulationTests = (listing: Listing): readonly Wanted[] =>
  pairs.map(({ between, mark }) => ({
    ...ofCircuit(listing, 'insulation'),
    which: between,
    mark,
    unit: 'MΩ',
    limit: insulationTestLimit(listing.proof),
    asked: { kind: 'insulation', between },
  }));

/** Nothing is plugged in or wired to these. */
const withoutOutlet: ReadonlySet<string> = new Set(['joint', 'blank']);

/** Points where something is connected by the scheme and something can be tested. */
function connectedPoints({ worked, points, workedOn }: Listing): readonly string[] {
  return points.filter((point) => {
    const id = unitOfLoadSide(point);
    return workedOn.has(id) && !withoutOutlet.has(worked.plan.pointById.get(id)?.kind ?? '');
  });
}

/** Fused units that the scheme brings along: they have a line, a switch and a fuse to be looked at, and nothing to plug a tester into. */
const newUnits = ({ worked, proof, workedOn }: Listing): readonly string[] =>
  unitsOf(worked, proof.circuit).filter((id) => workedOn.has(id));

/** The loop where something was connected, and where it is highest: as it is reckoned, and as a tester shows it in service. */
function loopTests(listing: Listing): readonly Wanted[] {
  const { proof, points } = listing;
  const expected = new Map(proof.expected.points.map((each) => [each.point, each]));
  const highestBy = (figure: 'zsOhm' | 'zsServiceOhm'): string | undefined =>
    points.toSorted((a, b) => (expected.get(b)?.[figure] ?? -1) - (expected.get(a)?.[figure] ?? -1))[0];
  const highest = new Set([highestBy('zsOhm'), highestBy('zsServiceOhm')]);
  const connected = new Set(connectedPoints(listing));
  return points
    .filter((point) => connected.has(point) || highest.has(point))
    .map((point) => ({
      ...atPoint(listing, 'zs', point),
      unit: 'Ω',
      expected: bandOrNull(expected.get(point)?.zsServiceOhm, expected.get(point)?.zsOhm),
      limit: loopTestLimit(listing, point),
      asked: { kind: 'zs' },
    }));
}
