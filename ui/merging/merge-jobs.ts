import type { Job } from '#model/job.ts';
import { type About, bondsBetween, type ThreeJobs } from './belongs-together.ts';
import { buildMerged } from './build-merged.ts';
import { atomsOf, comparedStates, type MergeNode } from './merge-tree.ts';
import { withMergedLabels } from './merged-labels.ts';
import { isNameThatFollows, withMergedNames } from './merged-names.ts';
import type { Atom, Side } from './three-states.ts';
import { changedBy, undecidedOf } from './undecided.ts';

/** What two people changed unlike, to be decided by one of them: mine or theirs. */
export interface Clash extends Atom {
  /** What is decided with it, itself among it, in the order of the file. */
  readonly parts: readonly Atom[];
  readonly about: About;
}

/** What a person decided of each clash, by its key; theirs stands where nothing is decided. */
export type Decisions = ReadonlyMap<string, Side>;

/** Two states of a job brought together. */
export interface JobMerge {
  /** The job with all that either changed, and theirs where they clash. */
  readonly merged: Job;
  /** In the order of the file; none where nothing is to be decided. */
  readonly clashes: readonly Clash[];
  readonly of: ThreeJobs;
  readonly tree: MergeNode;
}

const isThing = ({ path }: Atom): boolean => path.length % 2 === 0;

/** The atom that a clash goes by: a thing that one removed, else the first that is no mere certainty, order or presence. */
function leadOf(atoms: readonly Atom[]): Atom {
  const removed = atoms.find(
    (atom) =>
      isThing(atom) && atom.base !== undefined && (atom.mine === undefined || atom.theirs === undefined),
  );
  const telling = atoms.find(({ path }) => !path.includes('certainty') && !path.at(-1)?.startsWith('('));
  const lead = removed ?? telling ?? atoms[0];
  if (lead === undefined) throw new Error('A clash without anything to be decided.');
  return lead;
}

function builtWith(jobs: ThreeJobs, tree: MergeNode, sides: ReadonlyMap<string, Side>): Job {
  const choose = (atom: Atom): Side => sides.get(atom.key) ?? changedBy(atom) ?? 'theirs';
  // Parts of jobs that were read, put together by rules that keep them readable; the property tests hold that they do.
  return withMergedNames(withMergedLabels(buildMerged(tree, choose) as Job, jobs), jobs);
}

/** The side of each part of each clash, whatever has been decided of it. */
const sidesOf = (clashes: readonly Clash[], decisions: Decisions): ReadonlyMap<string, Side> =>
  new Map(
    clashes.flatMap(({ key, parts }) => parts.map((part) => [part.key, decisions.get(key) ?? 'theirs'])),
  );

/**
 * Merges two states of a job that both began with the same: by thing and by field. What one side changed is taken, and
 * what both changed alike; what they changed unlike, and what one removed that the other changed or refers to, is a clash.
 * The merged job can be read, whatever is decided.
 */
export function mergeJobs(base: Job, mine: Job, theirs: Job): JobMerge {
  const jobs = { base, mine, theirs };
  const tree = comparedStates(jobs);
  const atoms = atomsOf(tree).filter((atom) => !isNameThatFollows(atom, jobs));
  const clashes = undecidedOf(atoms, bondsBetween(atoms, jobs)).map(({ atoms: parts, about }) => ({
    ...leadOf(parts),
    parts,
    about,
  }));
  return { merged: builtWith(jobs, tree, sidesOf(clashes, new Map())), clashes, of: jobs, tree };
}

/** The merged job as a person decided: each clash, with all its parts, as mine or as theirs. */
export const decide = ({ clashes, of, tree }: JobMerge, decisions: Decisions): Job =>
  builtWith(of, tree, sidesOf(clashes, decisions));
