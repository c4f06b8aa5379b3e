import type { Worked } from '../connections/worked.ts';
import { insulationLimit } from '../proof/expected-limits.ts';
import { isClaimedRing } from './claimed-ring.ts';
import { step, type TestStep } from './test-step.ts';

/**
 * The looks, tests and holds of a scheme in working order: live checks as found, isolation, dead tests as found, then after the
 * work dead tests before live ones. Sources: BS 7671 132.16, 643.2 to 643.10 (order by public sources); isolation as HSE's
 * HSG85 and GS38 have it; the hold points common practice, no source.
 */
export function testSteps(worked: Worked): readonly TestStep[] {
  const { circuitIds, proposed } = worked;
  const isNew = (id: string): boolean =>
    proposed.circuits.find((circuit) => circuit.id === id)?.isNew === true;
  const old = circuitIds.filter((id) => !isNew(id));
  const boards = [
    ...new Set(
      circuitIds.flatMap((id) => proposed.circuits.find((circuit) => circuit.id === id)?.board?.id ?? []),
    ),
  ];
  return [
    ...liveAsFound(boards),
    ...isolation(worked, boards),
    ...deadAsFound(worked, old),
    ...beforeRcbos(worked),
    ...afterTheWork(worked, boards),
    ...beforeClosing(worked),
  ];
}

const liveAsFound = (subjects: readonly string[]): readonly TestStep[] => [
  step(
    'see-intake',
    'live-as-found',
    'Look at the intake and the board: main fuse, tails, earthing, main bonds, condition.',
    {
      subjects,
    },
  ),
  step(
    'test-supply',
    'live-as-found',
    'Measure the loop at the board and the fault current; check polarity. For Ze: main switch off and locked, the earthing conductor parted, and back on before anything is made live again.',
    {
      hold: 'Earthed, bonded, polarity right, nothing burnt or loose? Else stop, make nothing live again that is dangerous, and tell the customer in writing.',
      subjects,
    },
  ),
];

function isolation({ job }: Worked, subjects: readonly string[]): readonly TestStep[] {
  const { otherSources } = job.supply;
  const others =
    otherSources.length > 0
      ? 'Isolate every other source too: solar, battery, charger.'
      : 'Look for other sources (solar, battery, charger): the survey names none.';
  return [
    step('other-sources', 'isolate', others, { subjects }),
    step(
      'prove-dead',
      'isolate',
      'Main switch off and locked, key kept, notice up; what comes in to it stays live. Prove the tester on a known source; test line to neutral, line to earth, neutral to earth; prove the tester again.',
      {
        hold: 'Dead, and proved so at every box that is opened? Else stop: something else feeds it.',
        subjects,
      },
    ),
  ];
}

/** Insulation of every circuit that was there, then how each of them runs. */
function deadAsFound(worked: Worked, circuitIds: readonly string[]): readonly TestStep[] {
  return [
    ...circuitIds.map(insulationBefore),
    ...circuitIds.map((id) => (isClaimedRing(worked, id) ? ringProved(id) : continuityBefore(id))),
  ];
}

const insulationBefore = (id: string): TestStep =>
  step(
    `insulation-before/${id}`,
    'dead-as-found',
    'Unplug and switch off all loads; part USB outlets and surge devices from the 500 V. Measure insulation: live conductors together to earth, then line to neutral.',
    {
      hold: `${insulationLimit().minimumMegohm} MΩ or more? Else stop, and find the fault before anything is added.`,
      subjects: [id],
    },
  );

const ringProved = (id: string): TestStep =>
  step(
    `ring-proved/${id}`,
    'dead-as-found',
    'Part both ends at the board. Measure line, neutral and earth from end to end; then with line and neutral crossed, and line and earth crossed, at every point.',
    {
      hold: 'Ring proved: line and neutral within 0.05 Ω of each other, earth closed, every point on it or a known spur? Else stop: a broken or joined ring is mended before anything is added.',
      subjects: [id],
    },
  );

const continuityBefore = (id: string): TestStep =>
  step(
    `continuity-before/${id}`,
    'dead-as-found',
    'Measure R1 + R2 at the far end, and trace how the circuit runs.',
    {
      hold: 'Earth continuous to every point that is worked on? Else stop, and mend it first.',
      subjects: [id],
    },
  );

/** A neutral that another circuit borrows trips every RCBO: it is found before one is fitted. */
function beforeRcbos({ scheme }: Worked): readonly TestStep[] {
  const subjects = (scheme?.remedies ?? [])
    .filter(({ kind }) => kind === 'rcbo' || kind === 'new-board' || kind === 'rcd-enclosure')
    .flatMap(({ at }) => at ?? []);
  if (subjects.length === 0) return [];
  return [
    step(
      'own-neutral',
      'dead-as-found',
      'Part line and neutral of the circuit at the board, and measure insulation to every other circuit.',
      {
        hold: 'Its neutral is its own? Else stop: a borrowed neutral is found before residual current protection goes on.',
        subjects,
      },
    ),
  ];
}

/** Continuity of every circuit, then insulation and polarity, and only then what is tested live. */
function afterTheWork({ circuitIds, shapes }: Worked, boards: readonly string[]): readonly TestStep[] {
  return [
    ...circuitIds.map((id) => continuityAfter(id, shapes.get(id)?.shape === 'ring')),
    ...circuitIds.map(insulationAfter),
    ...(circuitIds.length === 0 ? [] : [madeLive(boards)]),
    ...(boards.length === 0 ? [] : [supplyAfter(boards)]),
    ...circuitIds.map(liveAfter),
  ];
}

const continuityAfter = (id: string, isRing: boolean): TestStep =>
  step(
    `continuity-after/${id}`,
    'dead-tests',
    isRing
      ? 'Measure the ring again from end to end, then crossed at every point old and new; R1 + R2 at the end of every spur.'
      : 'Measure R1 + R2 at every point, the far end above all.',
    { subjects: [id] },
  );

const insulationAfter = (id: string): TestStep =>
  step(
    `insulation-after/${id}`,
    'dead-tests',
    'Measure insulation again with all in place but the device: its circuit out of an RCBO, USB outlets and surge devices parted; check polarity at every point.',
    { hold: 'As expected, and within the limits? Else find out why before it is made live.', subjects: [id] },
  );

/** What was parted and linked for dead tests is undone first: a cross-link that stays is a short circuit. */
const madeLive = (subjects: readonly string[]): TestStep =>
  step(
    'made-live',
    'live-tests',
    'Links out; every line, neutral and earth back in its own terminal, the earthing conductor on, blanks and covers on. Warn everybody, take the lock away, then switch on.',
    {
      hold: 'No link left, no end parted, nobody at a bare end? Else it stays off.',
      subjects,
    },
  );

const supplyAfter = (subjects: readonly string[]): TestStep =>
  step(
    'supply-after',
    'live-tests',
    'At the board once more: polarity of the supply, its loop, the fault current; what the surge device shows, where there is one.',
    { subjects },
  );

const liveAfter = (id: string): TestStep =>
  step(
    `live-after/${id}`,
    'live-tests',
    'Polarity live, Zs at the points, the RCD by its time and its button, every switch and appliance in use.',
    {
      hold: 'Within the limits? Else off again, and find it: nothing is left in service that failed a test.',
      subjects: [id],
    },
  );

function beforeClosing({ things }: Worked): readonly TestStep[] {
  const hidden = things.joints.filter(({ state, accessible }) => state === 'new' && accessible === false);
  if (hidden.length === 0) return [];
  return [
    step(
      'photograph-joints',
      'close',
      'Photograph joints that will be out of reach, with a tape beside them, before floors and walls are closed.',
      {
        isFirst: true,
        subjects: hidden.map(({ id }) => id),
      },
    ),
  ];
}
