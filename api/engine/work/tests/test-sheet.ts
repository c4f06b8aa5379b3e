import type { Reading } from '#model/installation.ts';
import { unitOfLoadSide } from '../../circuit/load-side.ts';
import type { Worked } from '../../connections/worked.ts';
import { roomOfPosition } from '../../plan/surroundings.ts';
import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { ohmAtTest } from '../../proof/compared-readings.ts';
import { testedAt } from '../../proof/expected-tests.ts';
import { readingsTaken } from '../../proof/readings/readings-taken.ts';
import { circuitOrder } from '../circuit-order.ts';
import { connectionSheet } from '../connection-sheet.ts';
import { byMark } from '../mark-order.ts';
import { type References, referencesOf } from '../references.ts';
import { answerTo } from './answering-reading.ts';
import { howToConnect, howToTestBoard, type TestedCircuit } from './how-to-connect.ts';
import { judged } from './judged.ts';
import { ownRcdsOf } from './listed-devices.ts';
import { testsOf } from './listed-tests.ts';
import { isOfJob, type Listing, unitsOf, type Wanted } from './listing.ts';
import {
  type BoardGroup,
  type CircuitGroup,
  isBoardGroup,
  isLiveTest,
  type SheetTest,
  type TestPart,
  type TestSheet,
  testGroups,
} from './sheet-test.ts';
import { boardTests, loopOfKA, type TestedBoard, testedBoards } from './supply-tests.ts';

/**
 * What is tested once a scheme is carried out, of each circuit that it touches and of their boards: how to connect, what the tester should show, what it must
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
  const boards = testedBoards(
    worked,
    proof.map(({ circuit }) => circuit),
  );
  const parts = testGroups.flatMap((group) =>
    isBoardGroup(group)
      ? boards.flatMap((board) => boardPart(worked, board, group))
      : listings.flatMap((listing) => circuitPart(listing, group)),
  );
  return { parts, ...testedAt(worked.job) };
}

function circuitPart(listing: Listing, group: CircuitGroup): readonly TestPart[] {
  const { worked, proof } = listing;
  const tests = testsOf(listing, group).map((wanted) => answered(listing, wanted));
  // That no RCD is known of is said; of other groups there is nothing to say.
  if (tests.length === 0 && group !== 'rcd') return [];
  const circuit = worked.proposed.circuits.find(({ id }) => id === proof.circuit);
  return [
    {
      circuitId: proof.circuit,
      circuitName: circuit?.name ?? proof.circuit,
      group,
      isLive: isLiveTest(group),
      connect: howToConnect(group, testedCircuit(listing)),
      tests,
    },
  ];
}

function boardPart(worked: Worked, board: TestedBoard, group: BoardGroup): readonly TestPart[] {
  const tests = boardTests(worked, board, group).map((wanted) => answeredAtBoard(worked, board, wanted));
  if (tests.length === 0) return [];
  const connect = howToTestBoard(group, { source: board.source, supply: worked.job.supply });
  return [{ circuitId: null, circuitName: board.label, group, isLive: isLiveTest(group), connect, tests }];
}

function testedCircuit({ worked, proof, points }: Listing): TestedCircuit {
  const own = points.map((id) => worked.plan.pointById.get(unitOfLoadSide(id)));
  const fitted = worked.things.accessories.filter(({ id }) => points.includes(id));
  return {
    // A unit that a connection brings along is no point of the job.
    hasUnits:
      unitsOf(worked, proof.circuit).length > 0 ||
      own.some(
        (point) => point === undefined || !(point.kind.startsWith('socket') || point.kind === 'blank'),
      ),
    hasElectronics: [...own, ...fitted].some((thing) => thing?.features.includes('usb') === true),
    rcdMa: proof.tests.rcd?.testMa ?? null,
    isRcdDelayed: (proof.tests.rcd?.minimumMs ?? 0) > 0,
    hasOwnRcds: ownRcdsOf({ worked, points }).length > 0,
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
  const mark = (id: string): string => references.place(unitOfLoadSide(id));
  // Where nobody knows the order, as people count.
  return points.map(({ point }) => point).toSorted((a, b) => place(a) - place(b) || byMark(mark(a), mark(b)));
}

function answered(listing: Listing, { which, ...wanted }: Wanted): SheetTest {
  const { worked, proof } = listing;
  const { job, plan } = worked;
  const circuit = isOfJob(worked, proof.circuit) ? proof.circuit : null;
  const isKept = wanted.at === null ? circuit !== null : job.points.some(({ id }) => id === wanted.at);
  const reading = isKept ? answerTo({ ...wanted, circuit }, readingsFor(listing, wanted)) : null;
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
    ...judged({ ...wanted, reading: taken }, (read) =>
      read.kind === 'loop' || read.kind === 'zs' ? ohmAtTest(read, proof) : null,
    ),
  };
}

/** The readings that may answer a test: of a whole circuit none that was taken at an RCD of an outlet or a unit. */
function readingsFor(
  listing: Listing,
  { subject, group }: Pick<Wanted, 'subject' | 'group'>,
): readonly Reading[] {
  const { readings } = listing.worked.job;
  if (subject !== listing.proof.circuit || (group !== 'rcd' && group !== 'rcd-button')) return readings;
  const own = new Set(ownRcdsOf(listing).map(unitOfLoadSide));
  return readings.filter((reading) => !('at' in reading) || !own.has(reading.at ?? ''));
}

function answeredAtBoard(worked: Worked, board: TestedBoard, { which, ...wanted }: Wanted): SheetTest {
  const reading = answerTo({ ...wanted, circuit: null }, worked.job.readings);
  const position = worked.plan.positionOfBoard.get(board.id);
  return {
    ...wanted,
    id: `${board.id}/${wanted.group}/${which}`,
    room: roomOfPosition(worked.plan, position)?.room.name ?? null,
    circuit: null,
    isKept: true,
    reading,
    ...judged({ ...wanted, reading }, supplyOhm),
  };
}

/** A loop before the circuits keeps its value, whatever their conductors are at. */
function supplyOhm(reading: Reading): number | null {
  if (reading.kind === 'pfc') return reading.kA === 0 ? null : loopOfKA(reading.kA);
  return reading.kind === 'ze' || reading.kind === 'zs' ? reading.ohm : null;
}
