/** What somebody may do. */
export type Role = 'owner' | 'estimator' | 'read-only';

export const roleNames: Readonly<Record<Role, string>> = {
  owner: 'Owner',
  estimator: 'Estimator',
  'read-only': 'Reads only',
};

/** What each may, in words for whoever chooses. */
export const roleWords: Readonly<Record<Role, string>> = {
  owner: 'everything, people and erasing too',
  estimator: 'jobs, prices and quotations',
  'read-only': 'looks at jobs and fetches papers, changes nothing',
};

// Set once, before any page is made: whoever gets another role signs in anew.
let role: Role = 'owner';

/** Says what whoever is at this screen may do. The server refuses all else; here it is not offered. */
export function setRole(now: Role): void {
  role = now;
}

/** Whether jobs, prices and quotations may be changed. */
export const mayChange = (): boolean => role !== 'read-only';

/** Whether people are let in, and customers erased. */
export const isOwner = (): boolean => role === 'owner';
