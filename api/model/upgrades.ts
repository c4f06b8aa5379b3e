import type { Flaw } from './fault.ts';
import { JOB_VERSION } from './job.ts';
import { foundWords } from './value-words.ts';

/** One step from a version of the job file to the next. */
export interface Upgrade {
  /** The version that it reads; it gives back the next one. */
  readonly from: number;
  /** Rewrites the job without changing the one it is given; it may throw on what it cannot understand. */
  readonly upgrade: (job: Readonly<Record<string, unknown>>) => Record<string, unknown>;
}

/** Every step there is, in order. Version 1 is the first, so there is none yet. */
const allUpgrades: readonly Upgrade[] = [];

/** A job brought up to the version that this program reads, or the one reason why not. */
export type Upgraded =
  | { readonly ok: true; readonly job: Readonly<Record<string, unknown>> }
  | { readonly ok: false; readonly flaw: Flaw };

/**
 * Brings a job of an older version up to the present one, step by step.
 *
 * A job whose version is no number at all comes back as it is: the schema says what is wrong with it.
 */
export function upgradeJob(
  raw: Readonly<Record<string, unknown>>,
  upgrades: readonly Upgrade[] = allUpgrades,
): Upgraded {
  let job = raw;
  while (typeof job.version === 'number' && job.version !== JOB_VERSION) {
    const { version } = job;
    const path = ['version'];
    if (version > JOB_VERSION)
      return { ok: false, flaw: { path, code: 'newer-version', version, current: JOB_VERSION } };
    const step = upgrades.find(({ from }) => from === version);
    if (step === undefined)
      return {
        ok: false,
        flaw: { path, code: 'no-upgrade', version: foundWords(version), current: JOB_VERSION },
      };
    try {
      job = { ...step.upgrade(job), version: version + 1 };
    } catch (error) {
      // A step may trip over a job that was never sound in its own version; that is a fault of the file.
      return { ok: false, flaw: { path, code: 'upgrade-failed', version, reason: String(error) } };
    }
  }
  return { ok: true, job };
}
