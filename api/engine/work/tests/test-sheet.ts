import { unitOfLoadSide } from '../../circuit/load-side.ts';
import type { Worked } from '../../connections/worked.ts';
import { roomOfPosition } from '../../plan/surroundings.ts';
import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { testedAt } from '../../proof/expected-tests.ts';
import { readingsTaken } from '../../proof/readings/readings-taken.ts';
import { circuitOrder } from '../circuit-order.ts';
import { connectionSheet } from '../connection-sheet.ts';
import { type References, referencesOf } from '../references.ts';
import { answerTo } from './answering-reading.ts';
import { howToConnect, type TestedCircuit } from './how-to-connect.ts';
import { judged } from './judged.ts';
import { isOfJob, type Listing, testsOf, type Wanted } from './listed-tests.ts';
import {
  isLiveTest,
  type SheetTest,
  type TestGroup,
  type TestPart,
  type TestSheet,
  testGroups,
} from './sheet-test.ts';

/**
 * What is tested once a scheme is carried out, of each circuit that it touches: how to connect, what the tester should show, what it must
 * show, and what was read after the work, judged. Where the survey does not tell what to expect, the test is there all the same.
 */
export function testSheet({
  worked,
  proof,
}: {
  readonly worked: Worked;
  readonly proof: readonly CircuitProof[];
}): TestSheet {
  const references = referencesOf(worked);
  const workedOn = new Set(
    connectionSheet(worked).places.flatMap(({ id, isWorkedOn }) => (isWorkedOn ? [id] : [])),
  );
  const listings = proof.map(
    (one): Listing => ({
      worked,
      proof: one,
      references,
      isRing: isTestedAsRing(worked, one),
      points: inOrder(worked, one, references),
      workedOn,
    }),
  );
  const parts = testGroups.flatMap((group) =>
    listings.flatMap((listing) => {
      const tests = testsOf(listing, group).map((wanted) => answered(listing, wanted));
      // That no RCD is known of is said; of other groups there is nothing to say.
      return tests.length === 0 && group !== 'rcd' ? [] : [partOf(listing, group, tests)];
    }),
  );
  return { parts, ...testedAt(worked.job) };
}

function partOf(listing: Listing, group: TestGroup, tests: readonly SheetTest[]): TestPart {
  const { worked, proof } = listing;
  const circuit = worked.proposed.circuits.find(({ id }) => id === proof.circuit);
  return {
    circuitId: proof.circuit,
    circuitName: circuit?.name ?? proof.circuit,
    group,
    isLive: isLiveTest(group),
    connect: howToConnect(group, testedCircuit(listing)),
    tests,
  };
}

function testedCircuit({ worked, proof, points }: Listing): TestedCircuit {
  const own = points.map((id) => worked.plan.pointById.get(unitOfLoadSide(id)));
  const fitted = worked.things.accessories.filter(({ id }) => points.includes(id));
  return {
    // A unit that a connection brings along is no point of the job.
    hasUnits: own.some(
      (point) => point === undefined || !(point.kind.startsWith('socket') || point.kind === 'blank'),
    ),
    hasElectronics: [...own, ...fitted].some((thing) => thing?.features.includes('usb') === true),
    rcdMa: proof.tests.rcd?.testMa ?? null,
    isTt: worked.job.supply.earthing === 'TT',
  };
}

/** A ring, and what claims to be one or was made to be one. */
function isTestedAsRing({ shapes }: Worked, { circuit }: CircuitProof): boolean {
  const shape = shapes.get(circuit);
  return (
    shape?.shape === 'ring' ||
    shape?.shape === 'broken-ring' ||
    shape?.shape === 'lollipop' ||
    (shape?.shape !== 'radial' && shape?.claimed === 'ring')
  );
}

function inOrder(
  worked: Worked,
  { circuit, points }: CircuitProof,
  references: References,
): readonly string[] {
  const rows = circuitOrder(worked, 'proposed', circuit, references)?.rows ?? [];
  const placeOf = new Map<string, number>();
  rows.forEach(({ nodeId }, i) => {
    const id = unitOfLoadSide(nodeId);
    if (!placeOf.has(id)) placeOf.set(id, i);
  });
  const place = (id: string): number => placeOf.get(unitOfLoadSide(id)) ?? rows.length;
  return points.map(({ point }) => point).toSorted((a, b) => place(a) - place(b));
}

function answered({ worked, proof }: Listing, { which, ...wanted }: Wanted): SheetTest {
  const { job, plan } = worked;
  const circuit = isOfJob(worked, proof.circuit) ? proof.circuit : null;
  const isKept = wanted.at === null ? circuit !== null : job.points.some(({ id }) => id === wanted.at);
  const reading = isKept ? answerTo({ ...wanted, circuit }, job.readings) : null;
  // Kept as it was written; judged with the temperature of the job where it names none.
  const [taken = null] = reading === null ? [] : readingsTaken({ ...job, readings: [reading] });
  const position = wanted.at === null ? undefined : plan.positionOfPoint.get(wanted.at);
  return {
    ...wanted,
    id: `${proof.circuit}/${wanted.group}/${which}`,
    room: wanted.subject === proof.circuit ? null : (roomOfPosition(plan, position)?.room.name ?? null),
    circuit,
    isKept,
    reading,
    ...judged({ ...wanted, reading: taken }, proof),
  };
}
