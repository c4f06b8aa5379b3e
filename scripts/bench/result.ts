import type { BrowserDrags } from './moves-in-browser.ts';
import type { StageTimes } from './stages.ts';

/** What one subject of the benchmark took: medians over the rounds. */
export interface Timed {
  readonly name: string;
  /** Absent for the demo jobs, which are of no stated size. */
  readonly rooms?: number;
  readonly ms: StageTimes;
}

/** Everything that the benchmark says. */
export interface BenchResult {
  readonly rounds: number;
  readonly wanted: number;
  readonly times: readonly Timed[];
  /** By stage the e of time ~ rooms^e. */
  readonly growth: StageTimes;
  /** Absent where it was not asked for. */
  readonly drags?: BrowserDrags;
}
