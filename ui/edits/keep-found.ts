import type { Job } from '#model/job.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { isSameConnection, keptAs } from '../found-ways/same-ways.ts';
import type { JobEdit } from '../job-events.ts';
import { newId } from '../new-id.ts';
import { detachPoint } from './detach-point.ts';
import { joinedBy } from './joined-by.ts';
import { freeName, plainSchemeName } from './scheme-names.ts';

/** A connection with an id that no other has. */
const ownCopy = (connection: Connection): Connection => ({ ...structuredClone(connection), id: newId() });

/**
 * Takes a found scheme into the job, with ids of its own and a name that says what it does; one that is there already is
 * not put there again.
 *
 * @param locked connections that were kept while it was searched for: they stay locked.
 */
export function keepFound(job: Job, found: Scheme, locked: readonly Connection[]): JobEdit {
  const connections = found.connections.map(ownCopy);
  const name = freeName(
    plainSchemeName(found),
    job.schemes.map((scheme) => scheme.name),
  );
  const scheme: Scheme = {
    id: newId(),
    name,
    connections,
    remedies: structuredClone(found.remedies),
    locks: connections
      .filter((connection) => locked.some((one) => isSameConnection(one, connection)))
      .map(({ id }) => id),
  };
  return {
    label: `Keep the scheme ${name}`,
    change: (draft) => {
      if (keptAs(draft.schemes, found) === null) draft.schemes.push(scheme);
    },
  };
}

/**
 * Keeps a connection of a found scheme in a scheme of the job, in place of what joined its points there, and locks it: the
 * search then leaves it alone.
 *
 * @param schemeId the scheme worked on; null makes a new one of that connection alone.
 */
export function lockFound(
  job: Job,
  schemeId: string | null,
  { connection, name }: { readonly connection: Connection; readonly name: string },
): JobEdit {
  const own = ownCopy(connection);
  const begun = job.schemes.find(({ id }) => id === schemeId);
  const fresh: Scheme = {
    id: newId(),
    name: freeName(
      plainSchemeName({ connections: [own], remedies: [] }),
      job.schemes.map((scheme) => scheme.name),
    ),
    connections: [own],
    remedies: [],
    locks: [own.id],
  };
  return {
    label: `Keep this: ${name}`,
    change: (draft) => {
      const scheme = draft.schemes.find(({ id }) => id === begun?.id);
      if (scheme === undefined) {
        draft.schemes.push(fresh);
        return;
      }
      const same = scheme.connections.find((one) => isSameConnection(one as Connection, own));
      if (same !== undefined) {
        if (!scheme.locks.includes(same.id)) scheme.locks.push(same.id);
        return;
      }
      for (const pointId of joinedBy(own)) detachPoint(scheme, pointId, { isJoinedAgain: true });
      scheme.connections.push(structuredClone(own));
      const left = new Set(scheme.connections.map(({ id }) => id));
      scheme.locks = [...scheme.locks.filter((id) => left.has(id)), own.id];
    },
  };
}

/** What stays held fast when it is asked how a connection would do: all that does not join the same points otherwise. */
export function lockedBeside(locked: readonly Connection[], asked: Connection): readonly Connection[] {
  const points = new Set(joinedBy(asked));
  return locked.filter((one) => !joinedBy(one).some((id) => points.has(id)));
}

/** The locked connections of a scheme, as the search takes them. */
export const lockedOf = (scheme: Scheme | null): readonly Connection[] =>
  (scheme?.connections ?? []).filter(({ id }) => scheme?.locks.includes(id) === true);
