import { readFileSync } from 'node:fs';

/** What a process has used so far. */
export interface ProcessUse {
  /** Of all its threads, in it and for it, s. */
  readonly cpuS: number;
  /** The most memory that it ever had, MB. */
  readonly peakMB: number;
}

/** Ticks of the processor's time a second, as Linux counts for programs on every machine. */
const TICKS_A_SECOND = 100;
const KB_A_MB = 1000;

/** What a running process has used, by the system's own account; null where it has gone, or the system keeps none. */
export function useOf(pid: number): ProcessUse | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // Behind the name, which may have anything in it: user and system time are the 14th and 15th fields of all.
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    const ticks = Number(fields[11]) + Number(fields[12]);
    const peak = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'));
    if (peak === null) return null;
    return { cpuS: ticks / TICKS_A_SECOND, peakMB: (Number(peak[1]) * 1.024) / KB_A_MB };
  } catch {
    return null;
  }
}
