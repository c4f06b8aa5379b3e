import type { Worked } from '#engine/connections/worked.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import type { JobEdit } from '../job-events.ts';
import { newId } from '../new-id.ts';
import { bestSource, type JoinContext, newConnection, radialThrough, ringThrough } from './join-point.ts';
import { roughlyMm, sourceLegs, sourcePoints, whyNotRadial, whyNotRing } from './join-sources.ts';
import { freeName, plainSchemeName } from './scheme-names.ts';
import { forgetDone } from './site-work.ts';

/** The kinds of first try that a scheme can be begun with. */
export const firstTries = ['spurs', 'fused-branch', 'ring', 'radial'] as const;
export type FirstTry = (typeof firstTries)[number];

const blankScheme = (name: string, connections: readonly Connection[] = []): Scheme => ({
  id: newId(),
  name,
  connections: [...connections],
  remedies: [],
  locks: [],
});

/** The name of a new scheme, by what it does. */
const newName = ({ schemes }: Job, connections: readonly Connection[]): string =>
  freeName(
    plainSchemeName({ connections, remedies: [] }),
    schemes.map(({ name }) => name),
  );

/** Adds a scheme that joins nothing yet. */
export function addScheme(job: Job): { readonly edit: JobEdit; readonly schemeId: string } {
  const scheme = blankScheme(newName(job, []));
  return {
    schemeId: scheme.id,
    edit: {
      label: 'New scheme',
      change: (job) => {
        job.schemes.push(scheme);
      },
    },
  };
}

/** Adds a copy of a scheme with ids of its own. */
export function copyScheme(scheme: Scheme): { readonly edit: JobEdit; readonly schemeId: string } {
  const ids = new Map(scheme.connections.map(({ id }) => [id, newId()]));
  const copy: Scheme = {
    ...structuredClone(scheme),
    id: newId(),
    name: `${scheme.name} (copy)`,
    connections: scheme.connections.map((connection) => ({
      ...structuredClone(connection),
      id: ids.get(connection.id) ?? newId(),
    })),
    locks: scheme.locks.flatMap((id) => ids.get(id) ?? []),
  };
  return {
    schemeId: copy.id,
    edit: {
      label: `Copy the scheme ${scheme.name}`,
      change: (job) => {
        job.schemes.push(copy);
      },
    },
  };
}

export const renameScheme = (schemeId: string, name: string): JobEdit => ({
  label: `Name a scheme ${name}`,
  change: (job) => {
    const scheme = job.schemes.find(({ id }) => id === schemeId);
    if (scheme !== undefined) scheme.name = name;
  },
});

export const removeScheme = ({ id, name }: Pick<Scheme, 'id' | 'name'>): JobEdit => ({
  label: `Remove the scheme ${name}`,
  change: (job) => {
    job.schemes = job.schemes.filter((scheme) => scheme.id !== id);
    if (job.quoting?.schemes !== undefined)
      job.quoting.schemes = job.quoting.schemes.filter((offered) => offered !== id);
    if (job.built?.scheme === id) delete job.built;
    forgetDone(job, id);
  },
});

/** Puts a scheme before its neighbour in the list, or behind it; at the end of the list it stays. */
export const moveScheme = ({ id, name }: Pick<Scheme, 'id' | 'name'>, by: -1 | 1): JobEdit => ({
  label: `Move the scheme ${name}`,
  change: (job) => {
    const at = job.schemes.findIndex((scheme) => scheme.id === id);
    const [one, other] = [job.schemes[at], job.schemes[at + by]];
    if (one === undefined || other === undefined) return;
    job.schemes[at] = other;
    job.schemes[at + by] = one;
  },
});

/** Why a first try cannot be made of a house; null where it can. */
export function whyNotTry(worked: Worked, which: FirstTry): string | null {
  if (which === 'ring') return whyNotRing(worked);
  if (which === 'radial') return whyNotRadial(worked.job);
  const mayBeJoinedOn = worked.job.points.some(
    ({ status, circuit }) => status === 'existing' && circuit !== undefined,
  );
  return mayBeJoinedOn ? null : 'no existing point is recorded with its circuit';
}

/** The wanted points in an order that a cable could take: each time the one nearest to the last. */
function inOrderOfWalk(worked: Worked, pointIds: readonly string[]): readonly string[] {
  const left = [...pointIds];
  const order: string[] = [];
  let at = left.shift();
  while (at !== undefined) {
    order.push(at);
    const from = worked.plan.positionOfPoint.get(at);
    const away = (id: string): number =>
      roughlyMm(from, worked.plan.positionOfPoint.get(id)) ?? Number.MAX_SAFE_INTEGER;
    left.sort((a, b) => away(a) - away(b));
    at = left.shift();
  }
  return order;
}

type Away = (pointId: string) => number | null;

/** Roughly how far a point is from what exists of the circuits. */
const awayFromExisting =
  (worked: Worked): Away =>
  (id) =>
    sourcePoints(worked, null, id)[0]?.awayMm ?? sourceLegs(worked, id)[0]?.awayMm ?? null;

/** Roughly how far a point is from the first board. */
const awayFromBoard =
  ({ job, plan }: Worked): Away =>
  (id) =>
    roughlyMm(plan.positionOfPoint.get(id), plan.positionOfBoard.get(job.boards[0]?.id ?? ''));

/** The wanted points as a cable takes them that begins at the one that is the least away. */
function walkFrom(worked: Worked, pointIds: readonly string[], away: Away): readonly string[] {
  const awayMm = (id: string): number => away(id) ?? Number.MAX_SAFE_INTEGER;
  return inOrderOfWalk(
    worked,
    pointIds.toSorted((a, b) => awayMm(a) - awayMm(b)),
  );
}

function fusedBranch(context: JoinContext, pointIds: readonly string[]): readonly Connection[] {
  const [first] = pointIds;
  const source = first === undefined ? null : bestSource(context, first);
  if (source === null) return [];
  return [
    {
      id: newId(),
      kind: 'fused-spur',
      from: { point: source },
      unit: { fuseA: 13 },
      feeds: pointIds.map((to, i) => ({ from: pointIds[i - 1] ?? 'unit', to })),
    },
  ];
}

/** A spur for each, so that no source is used twice while another is free. */
function spursForEach(context: JoinContext, pointIds: readonly string[]): readonly Connection[] {
  let scheme = context.scheme;
  for (const id of pointIds) {
    const point = context.worked.job.points.find((one) => one.id === id);
    const made = point === undefined ? null : newConnection({ ...context, scheme }, point, 'spur');
    if (made !== null) scheme = { ...scheme, connections: [...scheme.connections, made] };
  }
  return scheme.connections;
}

/**
 * Adds a scheme that joins all wanted points in one plain way, as something to begin with: nothing is searched, and the
 * checks say what is wrong with it. Wanted fused units are joined each by a fused spur, since that is what they are.
 */
export function addFirstTry(
  worked: Worked,
  which: FirstTry,
): { readonly edit: JobEdit; readonly schemeId: string } {
  const wanted = worked.job.points.filter(({ status }) => status === 'wanted');
  const units = wanted.filter(({ kind }) => kind === 'fused-unit').map(({ id }) => id);
  const others = walkFrom(
    worked,
    wanted.filter(({ kind }) => kind !== 'fused-unit').map(({ id }) => id),
    which === 'radial' ? awayFromBoard(worked) : awayFromExisting(worked),
  );
  const scheme = blankScheme('');
  const context: JoinContext = { worked, scheme };
  const joined = (): readonly Connection[] => {
    if (which === 'spurs') return spursForEach(context, others);
    if (which === 'fused-branch') return fusedBranch(context, others);
    const made = which === 'ring' ? ringThrough(context, others) : radialThrough(context, others);
    return made === null ? [] : [made];
  };
  const first = { ...scheme, connections: [...joined()] };
  const connections = [...spursForEach({ worked, scheme: first }, units)];
  const whole = { ...first, name: newName(worked.job, connections), connections };
  return {
    schemeId: whole.id,
    edit: {
      label: `New scheme: ${whole.name}`,
      change: (job) => {
        job.schemes.push(whole);
      },
    },
  };
}
