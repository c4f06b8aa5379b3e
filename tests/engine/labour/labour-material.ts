import { readFileSync } from 'node:fs';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import type { BackBox, CableJoint, NewAccessory, TerminalFill, Things } from '#engine/connections/things.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { labourTasks } from '#engine/labour/labour-tasks.ts';
import type { LabourTask } from '#engine/labour/task.ts';
import { type Position, planPoint } from '#engine/plan/plane.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { workHouse, workScheme } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Run, Segment } from '#engine/ways/run.ts';
import type { Job } from '#model/job.ts';
import { readJobText } from '#model/read-job.ts';

export const library = demoLibrary();

/** A demo job by the name of its file. */
export function demoJob(name: string): Job {
  const read = readJobText(readFileSync(`data/jobs/${name}.json`, 'utf8'));
  if (!read.ok) throw new Error(`${name}: ${read.faults.length} faults`);
  return read.job;
}

/** A scheme of a demo job worked through. */
export function workedDemo(job: Job, schemeId: string): Worked {
  const scheme = job.schemes.find(({ id }) => id === schemeId);
  if (scheme === undefined) throw new Error(`No scheme "${schemeId}".`);
  return workScheme(workHouse(job, tariffOf(library), defaultLengthAllowances), scheme);
}

const saltglass = workedDemo(demoJob('saltglass-row'), 'spurs-rcbo');
const noThings: Things = { joints: [], terminals: [], boxes: [], fusedUnits: [], accessories: [] };

/** Demo job 1's house with a scheme that does nothing but what a test adds. */
export function emptyWorked(spread: Partial<Worked> = {}): Worked {
  const { scheme } = saltglass;
  if (scheme === null) throw new Error('The demo has no scheme.');
  return {
    ...saltglass,
    job: { ...saltglass.job, stock: [] },
    scheme: { ...scheme, connections: [], remedies: [] },
    proposed: saltglass.found,
    shapes: saltglass.foundShapes,
    runs: [],
    things: noThings,
    circuitIds: [],
    ...spread,
  };
}

/** The same with these things. */
export function workedWith(things: Partial<Things>): Worked {
  return emptyWorked({ things: { ...noThings, ...things } });
}

export const groundStoreyId = saltglass.plan.storeys[0]?.storey.id ?? '';

/** A place on the ground floor. */
export function place(xMm: number, yMm: number, heightMm = 300): Position {
  return { storeyId: groundStoreyId, at: planPoint(xMm, yMm), heightMm, levelMm: heightMm };
}

/** A stretch of cable; where a test says nothing: 2 m upright, derived, in a chase of the wall named. */
export function stretch(spread: Partial<Segment> = {}): Segment {
  return {
    medium: 'wall-chase',
    from: place(500, 500, 300),
    to: place(500, 500, 2300),
    lengthMm: 2000,
    direction: 'vertical',
    wallId: null,
    side: null,
    storeyId: groundStoreyId,
    depthMm: null,
    containment: 'none',
    insulation: null,
    bundle: null,
    joistsCrossed: 0,
    studsCrossed: 0,
    certainty: 'derived',
    ...spread,
  };
}

/** A run of these stretches, as long as they are, with nothing assumed. */
export function runOf(id: string, segments: readonly Segment[], spread: Partial<Run> = {}): Run {
  const lengthMm = segments.reduce((sum, segment) => sum + segment.lengthMm, 0);
  const end = { nodeId: 'n', pointId: null, position: null, kind: 'accessory' } as const;
  return {
    id,
    connectionId: null,
    legId: null,
    circuitIds: [],
    from: end,
    to: end,
    cable: { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 },
    segments,
    routeMm: lengthMm,
    endsMm: 0,
    slackMm: 0,
    lengthMm,
    lowMm: lengthMm,
    highMm: lengthMm,
    pinned: false,
    cuts: [],
    steps: [],
    ...spread,
  };
}

/** A back box to fit; where a test says nothing a single one of steel in brick and plaster. */
export function box(id: string, spread: Partial<BackBox> = {}): BackBox {
  return {
    id,
    pointId: id,
    gangs: 1,
    build: 'steel',
    wallCore: 'brick',
    lining: 'none',
    finish: 'plaster',
    minimumDepthMm: 25,
    preferredDepthMm: 35,
    foundDepthMm: null,
    depthMm: 35,
    cables: 1,
    action: 'fit',
    cause: null,
    party: false,
    knockOuts: 1,
    state: 'new',
    ...spread,
  };
}

/** An accessory to fit. */
export function accessory(id: string, kind: string): NewAccessory {
  return { id, pointId: id, kind, features: [] };
}

/** The terminals of a point. */
export function terminal(nodeId: string, cables: number, newCables: number): TerminalFill {
  return {
    nodeId,
    pointId: nodeId,
    circuitId: 'c',
    cables,
    areaMm2: null,
    newCables,
    capacityCables: 3,
    capacityMm2: 8,
    counted: true,
    affected: newCables > 0,
  };
}

/** A new joint in a leg. */
export function joint(id: string, legId: string | null): CableJoint {
  return {
    id,
    circuitId: 'c',
    connectionId: null,
    pointId: null,
    legId,
    kind: 'maintenance-free',
    source: 'derived',
    ratingA: 32,
    accessible: false,
    upstream: { kind: 'device', ratingA: 32 },
    inRing: true,
    cables: 3,
    newCables: 1,
    areaMm2: 7.5,
    takes: null,
    conductorAreaMm2: 2.5,
    position: null,
    lies: 'floor-void',
    state: 'new',
  };
}

/** The labour of a worked scheme with an empty take-off, by task. */
export function labourOf(worked: Worked): ReadonlyMap<string, LabourTask> {
  return new Map(labourTasks(worked, [], library.norms).map((task) => [task.task, task]));
}

/** Quantities of some tasks, in the order asked for; nought where there is none. */
export function quantitiesOf(worked: Worked, ...tasks: readonly string[]): readonly number[] {
  const labour = labourOf(worked);
  return tasks.map((task) => labour.get(task)?.quantity ?? 0);
}
