import { describe, expect, it } from 'vitest';
import { screenPlan } from '#drawing/plan/screen-plan.ts';
import type { Shape } from '#drawing/scene.ts';
import { toSheet } from '#engine/plan/sheet-frame.ts';
import { demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const scheme = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
const storeyIds = scheme.worked.plan.storeys.map(({ storey }) => storey.id);
const drawn = (storeyId: string, scale: number) =>
  screenPlan({ worked: scheme.worked, storeyId, findings: scheme.findings, scale });
const subjectsIn = (shapes: readonly Shape[]): string[] =>
  shapes.flatMap((shape) => (shape.kind === 'group' ? [shape.subject] : []));

describe('the plan on screen', () => {
  it('shows every placed point of the storey, and the new cables that lie on it', () => {
    for (const storeyId of storeyIds) {
      const { scene } = drawn(storeyId, 20);
      const subjects = new Set(scene.layers.flatMap(({ shapes }) => subjectsIn(shapes)));
      const placed = scheme.worked.job.points.filter(
        ({ id, kind }) =>
          kind !== 'joint' && scheme.worked.plan.positionOfPoint.get(id)?.storeyId === storeyId,
      );
      expect(placed.filter(({ id }) => !subjects.has(id))).toEqual([]);
      const runs = scheme.worked.runs.filter((run) => run.from.position?.storeyId === storeyId);
      expect(runs.filter(({ id }) => !subjects.has(id))).toEqual([]);
    }
  });

  it('keeps lettering at its size and moves places apart when coming nearer', () => {
    const [storeyId = ''] = storeyIds;
    const sizes = (scale: number): number[] =>
      drawn(storeyId, scale)
        .scene.layers.flatMap(({ shapes }) => shapes)
        .flatMap((shape) => (shape.kind === 'group' ? shape.shapes : [shape]))
        .flatMap((shape) => (shape.kind === 'text' ? [shape.sizeMm] : []));
    expect(new Set(sizes(40))).toEqual(new Set(sizes(10)));
    expect(drawn(storeyId, 10).scene.widthMm).toBeGreaterThan(drawn(storeyId, 40).scene.widthMm * 2);
  });

  it('tells where things stand so that they can be brought into view', () => {
    const [storeyId = ''] = storeyIds;
    const { spots, frame } = drawn(storeyId, 20);
    for (const [id, position] of scheme.worked.plan.positionOfPoint) {
      if (position.storeyId !== storeyId || !spots.has(id)) continue;
      const [x, y] = toSheet(frame, position.at);
      const spot = spots.get(id) ?? [0, 0];
      // Things at one place are drawn side by side, a few units apart.
      expect(Math.hypot(spot[0] - x, spot[1] - y)).toBeLessThan(12);
    }
    expect([...spots.keys()].filter((id) => scheme.runs.some((run) => run.id === id)).length).toBeGreaterThan(
      0,
    );
  });

  it('marks what fails, and nothing twice', () => {
    const bad = schemeOf(demoEstimate('saltglass-row'), 'two-on-one');
    const marks = storeyIds.flatMap((storeyId) => {
      const { scene } = screenPlan({ worked: bad.worked, storeyId, findings: bad.findings, scale: 20 });
      return subjectsIn(scene.layers.find(({ name }) => name === 'findings')?.shapes ?? []);
    });
    expect(marks.length).toBeGreaterThan(0);
    expect(new Set(marks).size).toBeLessThanOrEqual(marks.length);
  });

  it('draws an empty storey too', () => {
    const { scene } = drawn('no-such-storey', 20);
    expect(scene.widthMm).toBeGreaterThan(0);
  });
});
