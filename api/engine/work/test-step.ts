import type { TaskGroup } from './task-groups.ts';

/** A step that is looked, tested or proved; at a hold the work goes on only if it is so. */
export interface TestStep {
  readonly id: string;
  readonly group: TaskGroup;
  readonly words: string;
  /** What has to be so, as a question, and what is done if it is not. */
  readonly hold: string | null;
  /** Circuits, points, boards or cables that it is about. */
  readonly subjects: readonly string[];
  /** Whether it comes before the priced work of its group, and not after it. */
  readonly isFirst: boolean;
}

/** A step with what is usual of it left out. */
export const step = (
  id: string,
  group: TaskGroup,
  words: string,
  told: Partial<Pick<TestStep, 'hold' | 'subjects' | 'isFirst'>> = {},
): TestStep => ({ id, group, words, hold: null, subjects: [], isFirst: false, ...told });
