import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { circuitNeedsA, deviceNeedsA, fuseNeedsA } from '#engine/proof/must-carry.ts';
import { tariffFor } from '#engine/schemes/tariff.ts';
import { wiringOf, workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Device } from '#model/installation.ts';
import type { Connection } from '#model/scheme.ts';
import { demoJob, type demoNames } from '../demo-jobs/demo-estimates.ts';
import { shapeOf } from '../rules/facts-builder.ts';
import { networkOf } from '../ways/small-network.ts';

const library = demoLibrary();

/** What the new cables of a demo job's scheme must carry, A, in their order. */
function needsOf(name: (typeof demoNames)[number], schemeId: string): Readonly<Record<string, number>> {
  const job = demoJob(name);
  const house = workHouse(job, tariffFor(job, library), defaultLengthAllowances);
  const connections: readonly Connection[] = job.schemes.find(({ id }) => id === schemeId)?.connections ?? [];
  return Object.fromEntries(wiringOf(house, connections).mustCarryA);
}

describe('what a new cable must carry', () => {
  // Source: BS 7671 433.1.204 (20 A in a ring and its unfused spurs), 433.1.1 (behind a fuse what it lets through).
  it('is 20 A in a ring and up to a fused unit, and 13 A behind that', () => {
    const needs = needsOf('saltglass-row', 'fused-beds');
    expect(needs['c5-beds-fu/cable-1']).toBe(20);
    expect([needs['c5-beds-fu/cable-2'], needs['c5-beds-fu/cable-3']]).toEqual([13, 13]);
    expect(Object.values(needsOf('saltglass-row', 'ring-to-w2'))).toContain(20);
    expect(new Set(Object.values(needsOf('saltglass-row', 'spurs-rcbo')))).toEqual(new Set([20]));
  });

  it('is the same where nobody has recorded the legs', () => {
    const needs = needsOf('saltglass-row-quoting', 'fused-beds');
    expect([20, 13].every((each) => Object.values(needs).includes(each))).toBe(true);
    expect(Object.values(needs).every((each) => each === 20 || each === 13)).toBe(true);
  });

  it('is the device’s rating on a radial', () => {
    expect(Object.values(needsOf('fernlow-close', 'new-radial')).filter((each) => each !== 20)).toEqual([]);
  });

  it('is more than the figure on a rewireable fuse, and not known where nobody looked at the device', () => {
    const device = (standard: Device['standard']): Device => ({ standard, ratingA: 15 }) as Device;
    // Source: BS 7671 433.1.202, from memory: 15 / 0.725.
    expect(deviceNeedsA(device('BS-3036'))).toBe(20.69);
    expect(deviceNeedsA(device('BS-EN-60898'))).toBe(15);
    expect([deviceNeedsA(device(undefined)), deviceNeedsA(null)]).toEqual([null, null]);
  });

  it('is not known of a circuit of which nobody can say what it is', () => {
    const shape = { ...shapeOf('c'), shape: 'unknown', claimed: null } as const;
    expect(circuitNeedsA(networkOf([], []), shape)).toBeNull();
    expect(circuitNeedsA(networkOf([], []), { ...shape, claimed: 'ring' })).toBe(20);
  });

  it('is that of the largest fuse where nobody looked at it', () => {
    expect([fuseNeedsA(null), fuseNeedsA(undefined), fuseNeedsA(3)]).toEqual([13, 13, 3]);
  });
});
