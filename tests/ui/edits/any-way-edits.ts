import fc from 'fast-check';
import type { Job } from '#model/job.ts';
import type { Connection, Cut, Scheme, Tap } from '#model/scheme.ts';
import { demoJob, demoNames, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { addRemedy } from '../../../ui/edits/add-remedy.ts';
import {
  changeConnection,
  orderOfFeeds,
  removeConnection,
  reorderPoints,
  setConnectionCable,
  setLock,
  setUnitPlace,
} from '../../../ui/edits/connections.ts';
import { fuseBefore } from '../../../ui/edits/fuse-before.ts';
import { fuseOffer } from '../../../ui/edits/fuse-offer.ts';
import { type JoinHow, joinPoint, openLegFor } from '../../../ui/edits/join-point.ts';
import { joinedBy } from '../../../ui/edits/joined-by.ts';
import { foundSpurs, mendSpur, type SpurMending } from '../../../ui/edits/mend-spur.ts';
import { pointsBehind } from '../../../ui/edits/points-behind.ts';
import { removeRemedy } from '../../../ui/edits/remedies.ts';
import {
  addFirstTry,
  addScheme,
  copyScheme,
  firstTries,
  moveScheme,
  removeScheme,
  renameScheme,
} from '../../../ui/edits/schemes.ts';
import type { JobEdit } from '../../../ui/job-events.ts';
import { edited, pick } from './random-edits.ts';

/** The demo jobs, each with its house worked as found. */
export const houses = demoNames.map((name) => {
  const job = demoJob(name);
  return { name, job, worked: estimateOf({ ...job, schemes: [] }).asFound.worked };
});
export type House = (typeof houses)[number];

/** What is chosen by whole numbers from the job as it is at that moment. */
interface Chosen {
  readonly house: House;
  readonly job: Job;
  readonly scheme: Scheme;
  readonly connection: Connection | undefined;
  readonly at: { readonly schemeId: string; readonly connectionId: string };
  readonly a: number;
  readonly b: number;
}
type Made = (chosen: Chosen) => JobEdit | null;

const wantedIn = (job: Job): readonly string[] =>
  job.points.filter(({ status }) => status === 'wanted').map(({ id }) => id);

const ways = ['none', 'spur', 'joint', 'fused', 'ring', 'radial', 'in-turn', 'with'] as const;

function howIn({ job, at, a, b }: Chosen, pointId: string): JoinHow {
  const by = pick(ways, a) ?? 'none';
  if (by === 'with') return { by, connectionId: at.connectionId };
  const others = wantedIn(job).filter((id) => id !== pointId);
  return by === 'in-turn' ? { by, after: pick(others, b) ?? pointId } : { by };
}

const join: Made = (chosen) => {
  const { house, job, scheme, b } = chosen;
  const pointId = pick(wantedIn(job), b);
  if (pointId === undefined) return null;
  return joinPoint({ worked: { ...house.worked, job }, scheme }, pointId, howIn(chosen, pointId));
};

const mend: Made = ({ house, scheme, a, b }) => {
  const spur = pick(foundSpurs(house.worked), a);
  const how = pick<SpurMending>(['none', 'fuse', 'close'], b) ?? 'none';
  return spur === undefined ? null : mendSpur(scheme, spur, how, 'a spur');
};

const fuse: Made = ({ house, scheme, connection, at, a }) => {
  if (a % 2 === 0) return fuseBefore(scheme, at.connectionId, 'one');
  if (connection === undefined) return null;
  const known = { spurs: foundSpurs(house.worked), labelOf: (id: string) => id };
  return fuseOffer(scheme, connection, known)?.edit ?? null;
};

/** Another end to begin at, as the form offers them: none that hangs on the connection itself. */
const tapElsewhere: Made = ({ job, scheme, connection, at, a, b }) => {
  if (connection?.kind !== 'spur' && connection?.kind !== 'fused-spur') return null;
  const own = joinedBy(connection);
  const behind = pointsBehind(scheme, own);
  const points = job.points.filter(
    ({ id, status }) =>
      !own.includes(id) && !behind.has(id) && (status === 'existing' || status === 'wanted'),
  );
  const [point, leg, circuit] = [pick(points, b), pick(job.legs, b), pick(job.circuits, b)];
  const taps: readonly (Tap | null)[] = [
    point === undefined ? null : { point: point.id },
    leg === undefined ? null : { leg: leg.id, alongMm: b * 137 },
    circuit === undefined ? null : { origin: circuit.id },
  ];
  const tap = pick(taps, a);
  if (tap === null || tap === undefined) return null;
  return changeConnection(at, connection.kind, { label: 'Join on elsewhere', ends: true }, (draft) => {
    draft.from = tap;
  });
};

const cutOtherwise: Made = ({ connection, at, a, b }) => {
  const cuts: readonly Cut[] = [
    { how: 'terminals' },
    { how: 'old-cable', alongMm: b * 211 },
    { how: 'joint', alongMm: b * 97, joint: { kind: 'screw', ratingA: 30, accessible: true } },
  ];
  const cut = pick(cuts, a) ?? { how: 'terminals' };
  if (connection?.kind === 'ring-extension')
    return changeConnection(at, 'ring-extension', { label: 'Cut otherwise', ends: true }, (draft) => {
      draft[a % 2 === 0 ? 'out' : 'back'] = cut;
    });
  if (connection?.kind !== 'close-spur') return null;
  return changeConnection(at, 'close-spur', { label: 'Cut otherwise', ends: true }, (draft) => {
    draft.back = cut;
  });
};

const openLeg: Made = ({ house, job, scheme, a, b }) => {
  const [pointId, leg] = [pick(wantedIn(job), a), pick(job.legs, b)];
  if (pointId === undefined || leg === undefined) return null;
  return openLegFor({ worked: { ...house.worked, job }, scheme }, pointId, leg.id);
};

const placeUnit: Made = ({ job, connection, at, a }) => {
  if (connection?.kind !== 'fused-spur' && connection?.kind !== 'fuse-down') return null;
  const wall = pick(job.storeys[0]?.walls ?? [], a);
  const place = { wall: wall?.id ?? '', side: 'left', alongMm: 400, heightMm: 450 } as const;
  return setUnitPlace(at, connection.kind, a % 3 === 0 || wall === undefined ? null : place);
};

const reorder: Made = ({ connection, at }) => {
  const order = connection === undefined ? [] : [...orderOfFeeds(connection)].reverse();
  return order.length < 2 ? null : reorderPoints(at, order);
};

const remedy: Made = ({ job, scheme, a }) =>
  a % 3 === 0
    ? removeRemedy(scheme.id, scheme.remedies[0] ?? { kind: 'rcbo' })
    : addRemedy(scheme.id, { kind: 'rcbo', at: pick(job.circuits, a)?.id ?? '' }, 'an RCBO');

const ofSchemes: readonly Made[] = [
  ({ job }) => addScheme(job).edit,
  ({ house, job, a }) => addFirstTry({ ...house.worked, job }, pick(firstTries, a) ?? 'spurs').edit,
  ({ scheme }) => copyScheme(scheme).edit,
  ({ scheme, a }) => renameScheme(scheme.id, `Name ${a}`),
  ({ scheme, a }) => moveScheme(scheme, a % 2 === 0 ? 1 : -1),
  ({ scheme }) => removeScheme(scheme),
];
const ofConnections: readonly Made[] = [
  ({ at }) => removeConnection(at, 'one'),
  ({ at, a }) => setConnectionCable(at, a % 2 ? null : { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 }),
  ({ at, a }) => setLock(at, a % 2 === 0),
];
const all: readonly Made[] = [
  ...[join, join, join, join, mend, mend, fuse, tapElsewhere, tapElsewhere],
  ...[cutOtherwise, openLeg, placeUnit, reorder, remedy],
  ...ofSchemes,
  ...ofConnections,
];

/** Any sequence of edits of schemes, by numbers. */
export const wayEditSequence = fc.array(
  fc.tuple(fc.nat(all.length - 1), fc.nat(40), fc.nat(40), fc.nat(40)),
  {
    minLength: 1,
    maxLength: 14,
  },
);

/** A demo job after such a sequence. */
export function afterWayEdits(
  house: House,
  list: readonly (readonly [number, number, number, number])[],
): Job {
  return list.reduce((job, [which, s, a, b]) => {
    const scheme = pick(job.schemes, s);
    if (scheme === undefined) return edited(job, addScheme(job).edit);
    const connection = pick(scheme.connections, b);
    const at = { schemeId: scheme.id, connectionId: connection?.id ?? 'none' };
    const edit = pick(all, which)?.({ house, job, scheme, connection, at, a, b }) ?? null;
    return edit === null ? job : edited(job, edit);
  }, house.job);
}
