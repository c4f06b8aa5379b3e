import type { Stage } from '#engine/labour/task.ts';

/** The stages of the work in their order, in words. */
export const workStages: readonly (readonly [stage: Stage, words: string])[] = [
  ['before', 'Before'],
  ['first-fix', 'First fix'],
  ['second-fix', 'Second fix'],
  ['test', 'Test'],
  ['after', 'After'],
];
