import type { Terms } from '#model/job.ts';
import type { Library, Multiplier, Norms } from '#model/library.ts';
import { remembered } from '../plan/remembered.ts';
import { twelveDigits } from '../takeoff/twelve-digits.ts';
import { knownTasks } from './known-tasks.ts';
import type { Stage } from './task.ts';

/**
 * The multipliers that a job can choose from where the firm has none of its own. From memory, no page found: an order of
 * size, to be replaced by what the firm finds. A furnished house is what the norms are for, so it has none.
 */
export const usualMultipliers: readonly Multiplier[] = [
  {
    id: 'empty-house',
    words: 'An empty house: nothing to move or to cover',
    factor: 0.85,
    on: ['first-fix', 'second-fix', 'after'],
    origin: 'demo',
  },
  {
    id: 'fragile-finishes',
    words: 'Fragile plaster or a listed house',
    factor: 1.3,
    on: ['first-fix', 'after'],
    origin: 'demo',
  },
  {
    id: 'alone',
    words: 'Alone, where cables want two to pull',
    factor: 1.2,
    on: ['first-fix'],
    origin: 'demo',
  },
  {
    id: 'repeated-points',
    words: 'Many points alike: rooms after the first go faster',
    factor: 0.85,
    on: ['first-fix', 'second-fix'],
    origin: 'demo',
  },
];

/** What a firm's jobs can choose from. */
export const multipliersOf = ({ multipliers }: Pick<Norms, 'multipliers'>): readonly Multiplier[] =>
  multipliers ?? usualMultipliers;

/** Those that a job has chosen, in the order of the norms; an id that the norms do not have is left out. */
export const chosenMultipliers = (
  { multipliers: ids = [] }: Pick<Terms, 'multipliers'>,
  norms: Pick<Norms, 'multipliers'>,
): readonly Multiplier[] => multipliersOf(norms).filter(({ id }) => ids.includes(id));

/** Those of some multipliers that count at a stage of the work. */
const onStage = (stage: Stage, chosen: readonly Multiplier[]): readonly Multiplier[] =>
  chosen.filter(({ on }) => on.includes(stage));

/** What some multipliers come to at a stage of the work. */
export const factorOn = (stage: Stage, chosen: readonly Multiplier[]): number =>
  onStage(stage, chosen).reduce((all, { factor }) => all * factor, 1);

const stageOfTask: ReadonlyMap<string, Stage> = new Map(knownTasks.map(({ id, stage }) => [id, stage]));

function multiplied({ norms }: Pick<Library, 'norms'>, chosen: readonly Multiplier[]): Norms {
  const tasks = norms.tasks.map((norm) => {
    const stage = stageOfTask.get(norm.task);
    const factor = stage === undefined ? 1 : factorOn(stage, chosen);
    const times = (minutes: number): number => twelveDigits(minutes * factor);
    return factor === 1
      ? norm
      : {
          ...norm,
          lowMin: times(norm.lowMin),
          typicalMin: times(norm.typicalMin),
          highMin: times(norm.highMin),
        };
  });
  // Nothing is left to choose from: so minutes are never multiplied twice.
  return { ...norms, tasks, multipliers: [] };
}

const librariesOf = remembered((_library: Library) => new Map<string, Library>());

/**
 * The library as a job is worked out with it: minutes of its norms multiplied by what the job has chosen. So labour, range,
 * search and tariff all go by the same minutes. The very library where nothing is chosen; the same object for the same
 * choice.
 */
export function libraryFor({ terms }: { readonly terms: Terms }, library: Library): Library {
  const chosen = chosenMultipliers(terms, library.norms);
  if (chosen.length === 0) return library;
  const key = chosen.map(({ id }) => id).join(' ');
  const known = librariesOf(library);
  const found = known.get(key) ?? { ...library, norms: multiplied(library, chosen) };
  known.set(key, found);
  return found;
}
