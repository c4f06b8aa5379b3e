import { isSameData } from '#engine/plan/same-data.ts';
import type { Job } from '#model/job.ts';
import type { Scheme } from '#model/scheme.ts';
import { freeName, isPlainlyNamed, plainSchemeName } from '../edits/scheme-names.ts';
import type { ThreeJobs } from './belongs-together.ts';
import type { Atom } from './three-states.ts';

const schemeIn = (job: Job, id: string | undefined): Scheme | undefined =>
  job.schemes.find((scheme) => scheme.id === id);

interface ThreeSchemes {
  readonly mine: Scheme;
  readonly theirs: Scheme;
}

/** A scheme that both sides changed and nobody gave a name of their own; null for every other. */
function namedByWhatItDoes(id: string | undefined, jobs: ThreeJobs): ThreeSchemes | null {
  const base = schemeIn(jobs.base, id);
  const mine = schemeIn(jobs.mine, id);
  const theirs = schemeIn(jobs.theirs, id);
  if (base === undefined || mine === undefined || theirs === undefined) return null;
  const isPlain = [base, mine, theirs].every(isPlainlyNamed);
  return isPlain && !isSameData(mine, base) && !isSameData(theirs, base) ? { mine, theirs } : null;
}

/** True for a name that follows from what its scheme does, on both sides: nobody has to decide which it is. */
export const isNameThatFollows = ({ path: [top, id, field] }: Atom, jobs: ThreeJobs): boolean =>
  top === 'schemes' && field === 'name' && namedByWhatItDoes(id, jobs) !== null;

function nameOf(scheme: Scheme, { mine, theirs }: ThreeSchemes, others: readonly string[]): string {
  const isAs = (other: Scheme): boolean => isSameData({ ...other, name: scheme.name }, scheme);
  const side = [theirs, mine].find(isAs);
  if (side !== undefined && !others.includes(side.name)) return side.name;
  return isPlainlyNamed(scheme) ? scheme.name : freeName(plainSchemeName(scheme), others);
}

/** Schemes that both sides changed go by what they do now, unless somebody gave them a name of their own. */
export function withMergedNames(merged: Job, jobs: ThreeJobs): Job {
  const names = new Map(merged.schemes.map(({ id, name }) => [id, name]));
  for (const scheme of merged.schemes) {
    const sides = namedByWhatItDoes(scheme.id, jobs);
    if (sides === null) continue;
    const others = [...names].flatMap(([id, name]) => (id === scheme.id ? [] : [name]));
    names.set(scheme.id, nameOf(scheme, sides, others));
  }
  if (merged.schemes.every(({ id, name }) => names.get(id) === name)) return merged;
  return {
    ...merged,
    schemes: merged.schemes.map((scheme) => ({ ...scheme, name: names.get(scheme.id) ?? scheme.name })),
  };
}
