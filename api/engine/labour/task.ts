/** When on the job a task is done. */
export type Stage = 'before' | 'first-fix' | 'second-fix' | 'test' | 'after';

/** A quantity of one kind of work, with the minutes it takes by the firm's norms. */
export interface LabourTask {
  /** The norm's id. */
  readonly task: string;
  readonly description: string;
  readonly stage: Stage;
  readonly quantity: number;
  readonly lowQuantity: number;
  readonly highQuantity: number;
  readonly unit: 'job' | 'each' | 'm' | 'circuit' | 'room';
  /** Minutes for the whole quantity; null when the library has no norm for the task. */
  readonly lowMin: number | null;
  readonly typicalMin: number | null;
  readonly highMin: number | null;
  /** Minutes for one that were given for this job alone: neither norms nor the job's multipliers count then. Absent: the norms'. */
  readonly own?: { readonly lowMin: number; readonly typicalMin: number; readonly highMin: number };
  readonly causes: readonly string[];
}
