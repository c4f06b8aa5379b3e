import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { overlapMm2, type Rectangle } from '#drawing/label-placer.ts';
import { LOCK_WORDS, lockMark } from '#drawing/lock-mark.ts';
import { planSheets } from '#drawing/plan/plan-sheets.ts';
import { screenPlan } from '#drawing/plan/screen-plan.ts';
import type { Scene, Shape } from '#drawing/scene.ts';
import { svgOf } from '#drawing/svg.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { demoJob, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const job = demoJob('saltglass-row');
const SCHEME = 'spurs-rcbo';
const locked = produce(job, (draft) => {
  const scheme = draft.schemes.find(({ id }) => id === SCHEME);
  scheme?.locks.push(...scheme.connections.map(({ id }) => id));
});

const groupsOf = (scene: Scene, layer: string): readonly Extract<Shape, { kind: 'group' }>[] =>
  (scene.layers.find(({ name }) => name === layer)?.shapes ?? []).filter((shape) => shape.kind === 'group');

const screens = (of: typeof job): readonly Scene[] => {
  const { worked, findings } = schemeOf(estimateOf(of), SCHEME);
  return worked.plan.storeys.map(
    ({ storey }) => screenPlan({ worked, storeyId: storey.id, findings, scale: 60 }).scene,
  );
};

describe('the mark of a lock', () => {
  it('stands beside every locked cable and point that is drawn, and nowhere without a lock', () => {
    for (const scene of screens(job)) expect(groupsOf(scene, 'locks')).toEqual([]);
    const marked = screens(locked).flatMap((scene) => groupsOf(scene, 'locks').map(({ subject }) => subject));
    const { worked } = schemeOf(estimateOf(locked), SCHEME);
    for (const { connections } of job.schemes.filter(({ id }) => id === SCHEME))
      for (const connection of connections) {
        const own = worked.runs.filter(({ connectionId }) => connectionId === connection.id);
        expect(own.some(({ id, to }) => marked.includes(id) || marked.includes(to.pointId ?? ''))).toBe(true);
      }
  });

  it('is said in the name of its thing, so that it is heard', () => {
    const things = screens(locked).flatMap((scene) => [
      ...groupsOf(scene, 'points'),
      ...groupsOf(scene, 'cables'),
    ]);
    const marks = screens(locked).flatMap((scene) => groupsOf(scene, 'locks'));
    for (const { subject } of marks)
      expect(things.find((thing) => thing.subject === subject)?.title).toMatch(/, held fast$/);
    const ids = new Set(marks.map(({ subject }) => subject));
    expect(things.filter(({ subject, title }) => !ids.has(subject) && title.includes('held fast'))).toEqual(
      [],
    );
  });

  it('covers no other mark', () => {
    const boxOf = (shape: Shape): readonly Rectangle[] => {
      if (shape.kind === 'group') return shape.shapes.flatMap(boxOf);
      if (shape.kind !== 'line') return [];
      const [xs, ys] = [shape.points.map(([x]) => x), shape.points.map(([, y]) => y)];
      return [
        {
          leftMm: Math.min(...xs),
          rightMm: Math.max(...xs),
          topMm: Math.min(...ys),
          bottomMm: Math.max(...ys),
        },
      ];
    };
    for (const scene of screens(locked)) {
      const boxes = [...groupsOf(scene, 'locks'), ...groupsOf(scene, 'findings')].map(
        (group) => boxOf(group)[0],
      );
      for (const [i, one] of boxes.entries())
        for (const other of boxes.slice(i + 1)) expect(one && other ? overlapMm2(one, other) : 0).toBe(0);
    }
  });

  it('is told from all else without colour: a body with a keyhole under a bow, in ink', () => {
    const shapes = lockMark(sheetPoint(0, 0));
    expect(shapes.map(({ kind }) => kind)).toEqual(['circle', 'arc', 'line', 'circle']);
    expect(new Set(shapes.map((shape) => ('ink' in shape ? shape.ink : '')))).toEqual(
      new Set(['halo', 'symbol', 'symbol-solid']),
    );
  });

  it('is in the legend of a sheet that has one, and in no other', () => {
    const sheet = (of: typeof job): string => {
      const whole = estimateOf(of);
      const { worked, findings, name: schemeName } = schemeOf(whole, SCHEME);
      const [storey] = worked.plan.storeys;
      const storeyId = storey?.storey.id ?? '';
      const told = { schemeName, firm: 'A firm', state: 'STATE', status: 'For the work', demoNote: null };
      return planSheets({ ...whole, ...told, worked, findings }, [storeyId])
        .map(({ scene }) => svgOf(scene))
        .join('');
    };
    expect(sheet(locked)).toContain(LOCK_WORDS);
    expect(sheet(job)).not.toContain('held fast');
  });
});
