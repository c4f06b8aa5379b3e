import { describe, expect, it } from 'vitest';
import { buyFigures } from '../../scripts/bench/figures/buying.ts';
import { networkFigures } from '../../scripts/bench/figures/network.ts';
import { workbookFigures } from '../../scripts/bench/figures/workbook.ts';
import { figureNames, figureTable, goals, isKept } from '../../scripts/bench/figures.ts';
import { byTurns } from '../../scripts/bench/measuring.ts';
import { useOf } from '../../scripts/bench/process-use.ts';

/** What a busy machine may make of a ratio that was measured side by side. */
const NOISE = 2;

describe('the figures of the benchmark', () => {
  it('have a goal each, and say whether it is kept', () => {
    expect(goals.map(({ name }) => name)).toEqual(figureNames);
    for (const goal of goals) {
      const bound = goal.most ?? goal.least ?? Number.NaN;
      const beyond = goal.most === undefined ? bound * 0.99 : bound * 1.01;
      expect([isKept(goal, bound), isKept(goal, beyond), isKept(goal, null)]).toEqual([true, false, null]);
    }
  });

  it('are told beside their goals, those that are none too', () => {
    const table = figureTable({ networkSolveVsNgspice: 99.4, buyVsHighs: null, coldStartMs: 1499 });
    expect(table).toMatch(/networkSolveVsNgspice +99\.4 +≥ 100 +NOT KEPT/);
    expect(table).toMatch(/buyVsHighs +– +≥ 20 +none/);
    expect(table).toMatch(/coldStartMs +1499 +≤ 1500 +kept/);
    expect(table).not.toContain('firstLoadKBGzip');
  });

  it('are measured in turns, each first as often as the other', async () => {
    const order: string[] = [];
    const work = (name: string) => (round: number) => {
      order.push(`${name}${round}`);
      return round;
    };
    const times = await byTurns(3, { a: work('a'), b: work('b') });
    expect(order).toEqual(['a0', 'b0', 'b1', 'a1', 'a2', 'b2']);
    expect(times).toEqual({ a: [0, 1, 2], b: [0, 1, 2] });
  });

  it('take what a process uses from the system', () => {
    const use = useOf(process.pid);
    const used = process.cpuUsage();
    if (use === null) {
      expect(process.platform).not.toBe('linux');
      return;
    }
    const cpuS = (used.user + used.system) / 1e6;
    expect(Math.abs(use.cpuS - cpuS)).toBeLessThan(1 + cpuS / 10);
    expect(use.peakMB).toBeGreaterThan((process.memoryUsage().rss / 1e6) * 0.9);
    expect(useOf(2 ** 30)).toBeNull();
  });

  it('keep the cheap ones of their goals, as loosely as a busy machine wants it, on equal answers', async () => {
    const measured = {
      ...(await networkFigures.measure({ rounds: 1, jobs: 1 })),
      ...(await buyFigures.measure({ rounds: 1, jobs: 1 })),
      ...(await workbookFigures.measure({ rounds: 1, jobs: 1 })),
    };
    expect(measured.networkSolveVsNgspice).toBeGreaterThan(100 / NOISE);
    expect(measured.buyVsHighs).toBeGreaterThan(20 / NOISE);
    expect(measured.workbookVsRawExceljs).toBeLessThan(1.3 * NOISE);
  });
});
