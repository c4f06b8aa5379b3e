import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { overlapMm2 } from '#drawing/label-placer.ts';
import { screenExtent, screenPlan } from '#drawing/plan/screen-plan.ts';
import type { Scene, Shape } from '#drawing/scene.ts';
import { papersOf } from '#exports/papers.ts';
import { planFiles } from '#exports/plan-files.ts';
import { demoJob, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const job = demoJob('saltglass-row');
const asset = { id: 'a'.repeat(64), name: 'Photo', mediaType: 'image/jpeg', bytes: 1 };
const pictured = produce(job, (draft) => {
  draft.assets.push(asset);
  for (const point of draft.points.slice(0, 4)) point.photos.push(asset.id);
  for (const board of draft.boards) board.photos = [asset.id];
  const [storey] = draft.storeys;
  if (storey === undefined) throw new Error('The demo job has a storey.');
  storey.underlay = {
    asset: asset.id,
    at: [0, 0],
    widthPx: 1000,
    heightPx: 500,
    scaleMmPerPx: 40,
    angleDeg: 90,
    opacity: 0.5,
  };
});

const worked = (of: typeof job) => estimateOf(of).asFound.worked;
const paperOf = (of: typeof job) => {
  const papers = papersOf(of, demoLibrary(), { date: '2026-11-25', revision: 1, schemeId: null });
  if (papers === null) throw new Error('There are no papers.');
  return papers;
};
const groupsOf = (scene: Scene): readonly Extract<Shape, { kind: 'group' }>[] =>
  (scene.layers.find(({ name }) => name === 'photos')?.shapes ?? []).filter(
    (shape) => shape.kind === 'group',
  );
const screens = (of: typeof job): readonly Scene[] =>
  of.storeys.map(({ id }) => screenPlan({ worked: worked(of), storeyId: id, findings: [], scale: 60 }).scene);

describe('the mark of a photo', () => {
  it('stands beside each point and board that there is one of, and nowhere else', () => {
    const marked = screens(pictured).flatMap((scene) => groupsOf(scene).map(({ subject }) => subject));
    const withPhotos = [...pictured.points, ...pictured.boards].filter(
      ({ photos = [] }) => photos.length > 0,
    );
    expect(marked.toSorted()).toEqual(withPhotos.map(({ id }) => id).toSorted());
    expect(screens(job).flatMap(groupsOf)).toEqual([]);
  });

  it('lies on no other mark', () => {
    for (const scene of screens(pictured)) {
      const boxes = groupsOf(scene).flatMap(({ shapes }) =>
        shapes.flatMap((shape) =>
          shape.kind === 'circle' && shape.radiusMm > 1
            ? [
                {
                  leftMm: shape.at[0] - 1.9,
                  rightMm: shape.at[0] + 1.9,
                  topMm: shape.at[1] - 1.9,
                  bottomMm: shape.at[1] + 1.9,
                },
              ]
            : [],
        ),
      );
      for (const [i, a] of boxes.entries())
        for (const b of boxes.slice(i + 1)) expect(overlapMm2(a, b)).toBe(0);
    }
  });

  it('is not printed, nor is the picture under the plan anywhere on paper', () => {
    const paper = (of: typeof job): readonly string[] => planFiles(paperOf(of)).map(({ svg }) => svg());
    expect(paper(pictured).length).toBeGreaterThan(0);
    expect(paper(pictured)).toEqual(paper(job));
  });
});

describe('a picture under the plan', () => {
  it('is in sight whole, as it is turned, and counts for nothing once it is hidden', () => {
    const [storey] = pictured.storeys;
    const id = storey?.id ?? '';
    const [low, high] = screenExtent(worked(pictured), id);
    expect(low[1]).toBeLessThanOrEqual(-20_000);
    expect(high[1]).toBeGreaterThanOrEqual(20_000);
    expect(low[0]).toBeLessThanOrEqual(-10_000);
    expect(low[0]).toBeGreaterThan(-12_000);
    const hidden = produce(pictured, (draft) => {
      const underlay = draft.storeys[0]?.underlay;
      if (underlay !== undefined) underlay.hidden = true;
    });
    expect(screenExtent(worked(hidden), id)).toEqual(screenExtent(worked(job), id));
  });
});
