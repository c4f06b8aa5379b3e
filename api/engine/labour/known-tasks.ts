import type { LabourTask, Stage } from './task.ts';

/** A kind of work that the engine can ask for, by the id that norms use. */
export interface KnownTask {
  readonly id: string;
  readonly description: string;
  readonly unit: LabourTask['unit'];
  readonly stage: Stage;
}

const before = [
  ['set-up', 'Set up, sheets, talk through', 'job'],
  ['survey-origin', 'Survey: find the origin, open outlets, look at the board', 'circuit'],
  ['move-furniture', 'Move furniture out of the way and back', 'room'],
  ['isolate', 'Isolate and prove dead', 'each'],
  ['verify-circuit', 'Test what is there before it is touched', 'circuit'],
  ['verify-supply', 'Test supply, earthing and board before a circuit is added', 'job'],
  ['fault-finding', 'Find a fault that the tests show: provisional', 'circuit'],
  ['merchant-trip', 'Trip to the merchant', 'each'],
] as const;

const firstFix = [
  ['roll-covering', 'Roll back carpet, vinyl or laminate', 'room'],
  ['lift-board', 'Lift and relay a floorboard', 'each'],
  ['chipboard-trap', 'Cut a trap in chipboard and batten it', 'each'],
  ['open-fixed-floor', 'Open and close a floor that does not lift', 'each'],
  ['drill-joist', 'Drill a joist', 'each'],
  ['barred-joist', 'Settle a joist that may not be cut: another way, or an engineer’s word', 'each'],
  ['notch-joist', 'Notch a joist and plate it', 'each'],
  ['thread-cable', 'Thread cable through a void', 'm'],
  ['drill-stud', 'Drill a stud behind the board and patch', 'each'],
  ['fish-stud', 'Fish a drop in a stud wall', 'each'],
  ['drill-wall', 'Drill through a wall', 'each'],
  ['clip-cable', 'Clip cable to the surface', 'm'],
  ['fit-channel', 'Fit mini-trunking or conduit', 'm'],
  ['lay-in-channel', 'Open channel that is there, lay a cable in, close it', 'm'],
  ['dig-trench', 'Dig and fill a trench', 'm'],
  ['unsurveyed-run', 'Run a cable by a way that nobody has looked at', 'each'],
  ['chase-set-up', 'Set up dust extraction for chasing', 'room'],
  ['chase-plaster', 'Chase plaster only', 'm'],
  ['chase-board', 'Cut the board along a cable in the gap behind it', 'm'],
  ['chase-block', 'Chase block or soft brick', 'm'],
  ['chase-hard-brick', 'Chase hard brick', 'm'],
  ['chase-concrete', 'Chase concrete', 'm'],
  ['chase-unknown-wall', 'Chase a wall of unknown build', 'm'],
  ['contain-chase', 'Fit oval tube or capping in a chase', 'm'],
  ['cut-tile', 'Cut tiles for a box', 'each'],
  ['remove-box', 'Take out a back box', 'each'],
  ['box-dry-lining', 'Box in plasterboard on studs', 'each'],
  ['box-block-single', 'Single box in block or soft brick', 'each'],
  ['box-block-twin', 'Twin box in block or soft brick', 'each'],
  ['box-hard-brick-single', 'Single box in hard brick', 'each'],
  ['box-hard-brick-twin', 'Twin box in hard brick', 'each'],
  ['box-concrete-single', 'Single box in concrete', 'each'],
  ['box-concrete-twin', 'Twin box in concrete', 'each'],
  ['box-lath-and-plaster', 'Box in lath and plaster', 'each'],
  ['box-dot-and-dab', 'Box in plasterboard on dabs, block chopped out behind', 'each'],
  ['box-surface', 'Surface box', 'each'],
  ['box-unknown-wall', 'Box in a wall of unknown build', 'each'],
  ['fit-putty-pad', 'Fit a fire pad to a box', 'each'],
  ['locate-leg', 'Locate and identify a cable before it is cut', 'each'],
] as const;

const secondFix = [
  ['connect-origin', 'Connect new cable at an existing accessory', 'each'],
  ['fit-frame', 'Put a spacer frame under a plate', 'each'],
  ['connect-at-board', 'Connect new cable at the board', 'each'],
  ['extra-cable', 'Each further cable at an accessory', 'each'],
  ['fit-joint', 'Joint', 'each'],
  ['fit-socket', 'Fit a socket-outlet', 'each'],
  ['fit-fused-unit', 'Fit a fused connection unit', 'each'],
  ['fit-flex-outlet', 'Fit a flex outlet plate', 'each'],
  ['fit-switch', 'Fit a double-pole switch', 'each'],
  ['fit-cooker-control', 'Fit a cooker control unit', 'each'],
  ['fit-grid', 'Fit a grid plate with its modules', 'each'],
  ['fit-shaver', 'Fit a shaver supply unit', 'each'],
  ['fit-blank', 'Fit a blank plate', 'each'],
  ['fit-other', 'Fit another accessory', 'each'],
  ['exchange-accessory', 'Exchange an accessory', 'each'],
  ['remove-accessory', 'Take out an accessory and make its cables safe', 'each'],
  ['disconnect-cable', 'Find and disconnect a cable that goes out of use', 'each'],
  ['connect-appliance', 'Connect a fixed appliance by flex', 'each'],
  ['fit-rcbo', 'Exchange a device for an RCBO, dress and label', 'each'],
  ['fit-new-way', 'New way at the board: device, dress and label', 'each'],
  ['move-neutral', 'Move a neutral to its RCBO from the bar of an RCD', 'each'],
  ['exchange-device', 'Exchange a device at the board', 'each'],
  ['fit-rcd-enclosure', 'Fit an RCD in its own enclosure', 'each'],
  ['fit-board', 'Exchange the board: enclosure, main switch, tails and earths', 'each'],
  ['fit-surge-device', 'Fit a surge protective device in the new board', 'each'],
  ['move-circuit', 'Move a circuit to the new board: device, dress and label', 'circuit'],
  ['upgrade-bond', 'Run or renew a main bond', 'each'],
] as const;

const test = [
  ['test-circuit', 'Test an altered circuit, dead, live and RCD', 'circuit'],
  ['minor-works-certificate', 'Minor works certificate', 'circuit'],
  ['circuit-chart', 'Bring the circuit chart of the board up to date', 'circuit'],
  ['installation-certificate', 'Installation certificate with schedules', 'job'],
] as const;

const after = [
  ['fill-chase', 'Fill a chase, one coat', 'm'],
  ['fill-chase-two-coats', 'Fill a chase, two coats: bonding and finish', 'm'],
  ['fill-box', 'Make good round a box, one coat', 'each'],
  ['fill-box-two-coats', 'Make good round a box, two coats: bonding and finish', 'each'],
  ['patch-board', 'Patch a board that had to be opened for a drop', 'each'],
  ['return-visit', 'Return when the plaster has set', 'job'],
  ['clean-up', 'Clean and vacuum', 'job'],
] as const;

type Row = (typeof before | typeof firstFix | typeof secondFix | typeof test | typeof after)[number];

/** The id of a task that the engine asks for. */
export type TaskId = Row[0];

function rowsOf(stage: Stage, rows: readonly Row[]): readonly KnownTask[] {
  return rows.map(([id, description, unit]) => ({ id, description, unit, stage }));
}

/** Every task that the engine can ask for, in the order of the work. */
export const knownTasks: readonly KnownTask[] = [
  ...rowsOf('before', before),
  ...rowsOf('first-fix', firstFix),
  ...rowsOf('second-fix', secondFix),
  ...rowsOf('test', test),
  ...rowsOf('after', after),
];
