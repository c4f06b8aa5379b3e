import { describe, expect, it } from 'vitest';
import { overlapMm2 } from '#drawing/label-placer.ts';
import { letteringBox } from '#drawing/lettering-box.ts';
import { screenExtent, screenPlan } from '#drawing/plan/screen-plan.ts';
import type { Shape } from '#drawing/scene.ts';
import { isInside } from '#engine/plan/polygon.ts';
import { fromSheet, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import { demoEstimate, demoNames, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const estimate = demoEstimate('saltglass-row');
const scheme = schemeOf(estimate, 'spurs-rcbo');
const storeyIds = scheme.worked.plan.storeys.map(({ storey }) => storey.id);
const drawn = (storeyId: string, scale: number) =>
  screenPlan({ worked: scheme.worked, storeyId, findings: scheme.findings, scale });

type Layers = ReturnType<typeof screenPlan>['scene']['layers'];
const shapesOf = (layers: Layers, name: string): readonly Shape[] =>
  layers.find((layer) => layer.name === name)?.shapes ?? [];
const subjectsIn = (shapes: readonly Shape[]): string[] =>
  shapes.flatMap((shape) => (shape.kind === 'group' ? [shape.subject] : []));
const flat = (shapes: readonly Shape[]): readonly Shape[] =>
  shapes.flatMap((shape) => (shape.kind === 'group' ? flat(shape.shapes) : [shape]));
const textsIn = (layers: Layers, names: readonly string[]) =>
  names.flatMap((name) =>
    flat(shapesOf(layers, name)).flatMap((shape) => (shape.kind === 'text' ? [shape] : [])),
  );

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
    const sizes = (scale: number) =>
      new Set(textsIn(drawn(storeyId, scale).scene.layers, ['points', 'cables']).map(({ sizeMm }) => sizeMm));
    expect(sizes(40)).toEqual(sizes(10));
    expect(drawn(storeyId, 10).scene.widthMm).toBeGreaterThan(drawn(storeyId, 40).scene.widthMm * 2);
  });

  it('writes nothing smaller than can be read, 2.5 units or 12.5 px, save letters within symbols', () => {
    for (const name of demoNames)
      for (const { worked, findings } of demoEstimate(name).schemes)
        for (const { storey } of worked.plan.storeys)
          for (const scale of [20, 80, 170]) {
            const { scene } = screenPlan({ worked, storeyId: storey.id, findings, scale });
            const small = textsIn(scene.layers, ['fixtures', 'rooms', 'cables', 'findings']).filter(
              ({ sizeMm }) => sizeMm < 2.5,
            );
            expect(small).toEqual([]);
          }
  });

  it('writes each room’s name within the room when the whole house fits a desk', () => {
    for (const storeyId of storeyIds) {
      const { scene, frame } = drawn(storeyId, 75);
      for (const room of scheme.worked.plan.roomById.values()) {
        if (room.storeyId !== storeyId) continue;
        const name = textsIn(scene.layers, ['rooms']).find(({ text }) => text === room.room.name);
        if (name === undefined) throw new Error(`${room.room.name} is not named`);
        expect(isInside(room.outline, fromSheet(frame, sheetPoint(name.at[0], name.at[1] - 1)))).toBe(true);
      }
    }
  });

  it('lets no name be struck out: cables lie below it, and other lettering keeps off', () => {
    for (const storeyId of storeyIds)
      for (const scale of [60, 100, 170]) {
        const { layers } = drawn(storeyId, scale).scene;
        const order = layers.map(({ name }) => name);
        expect(order.indexOf('rooms')).toBeGreaterThan(order.indexOf('cables'));
        const rooms = textsIn(layers, ['rooms']).map(letteringBox);
        const others = textsIn(layers, ['points', 'fixtures']).map(letteringBox);
        const struck = rooms.filter((room) => others.some((other) => overlapMm2(room, other) > 0.2));
        expect(struck, `${storeyId} at ${scale}`).toEqual([]);
      }
  });

  it('says a plain room’s size, wall face to wall face', () => {
    const texts = textsIn(drawn('ground-flr', 40).scene.layers, ['rooms']).map(({ text }) => text);
    expect(texts).toContain('2.60 × 2.90 m');
    expect(texts).toContain('4.20 × 3.20 m');
  });

  it('tells where things stand so that they can be brought into view', () => {
    const [storeyId = ''] = storeyIds;
    const { spots, frame } = drawn(storeyId, 20);
    const near = [...scheme.worked.plan.positionOfPoint].filter(
      ([id, position]) => position.storeyId === storeyId && spots.has(id),
    );
    expect(near.length).toBeGreaterThan(5);
    for (const [id, position] of near) {
      const [x, y] = toSheet(frame, position.at);
      const spot = spots.get(id) ?? [Number.NaN, Number.NaN];
      // Things at one place are drawn side by side, a few units apart.
      expect(Math.hypot(spot[0] - x, spot[1] - y)).toBeLessThan(12);
    }
    expect([...spots.keys()].filter((id) => scheme.runs.some((run) => run.id === id)).length).toBeGreaterThan(
      0,
    );
  });

  it('marks what fails or is to decide, and nothing twice', () => {
    const bad = schemeOf(estimate, 'two-on-one');
    const marks = storeyIds.flatMap((storeyId) => {
      const { scene } = screenPlan({ worked: bad.worked, storeyId, findings: bad.findings, scale: 20 });
      const subjects = subjectsIn(shapesOf(scene.layers, 'findings'));
      expect(new Set(subjects).size).toBe(subjects.length);
      return subjects;
    });
    const grave = bad.findings.filter(({ outcome }) => outcome === 'fails' || outcome === 'decide');
    expect(marks).toContain('w2-bedroom');
    expect(marks.filter((subject) => !grave.some((finding) => finding.subject === subject))).toEqual([]);
  });

  it('names things by what they are and how they stand, for who hears them', () => {
    const titles = storeyIds.flatMap((storeyId) =>
      drawn(storeyId, 40).scene.layers.flatMap(({ shapes }) =>
        shapes.flatMap((shape) => (shape.kind === 'group' ? [shape.title] : [])),
      ),
    );
    expect(titles).toContain('W1 h 450 mm above floor: twin socket-outlet, wanted');
    expect(titles.filter((title) => /^New cable, .* \d+\.\d\d m$/.test(title)).length).toBeGreaterThan(0);
    expect(titles.filter((title) => /^Cable as found, .*, way assumed$/.test(title)).length).toBeGreaterThan(
      0,
    );
  });

  it('begins names with the lettering, for who speaks to the screen', () => {
    for (const scale of [40, 160])
      for (const storeyId of storeyIds) {
        const { layers } = drawn(storeyId, scale).scene;
        for (const shape of shapesOf(layers, 'points')) {
          if (shape.kind !== 'group') throw new Error('a point that belongs to nothing');
          const last = shape.shapes.at(-1);
          if (last?.kind === 'text') expect(shape.title).toContain(last.text);
        }
      }
  });

  it('draws wanted points before there is a scheme when they are asked for', () => {
    const { worked } = estimate.asFound;
    const asked = (withWanted: boolean): string[] =>
      subjectsIn(
        shapesOf(
          screenPlan({ worked, storeyId: 'ground-flr', findings: [], scale: 40, withWanted }).scene.layers,
          'points',
        ),
      );
    expect(asked(true)).toContain('w1-living1');
    expect(asked(false)).not.toContain('w1-living1');
  });

  it('writes lengths and the sizes of rooms as large as it is asked to, and nothing else', () => {
    const request = { worked: scheme.worked, findings: [], scale: 40 };
    for (const storeyId of storeyIds) {
      const { layers } = screenPlan({ ...request, storeyId, figuresMm: 3.2 }).scene;
      const figures = textsIn(layers, ['cables', 'rooms']).filter(({ text }) => /^\d/.test(text));
      expect(figures.length).toBeGreaterThan(0);
      expect(figures.filter(({ sizeMm }) => sizeMm !== 3.2).map(({ text }) => text)).toEqual([]);
      const usual = screenPlan({ ...request, storeyId }).scene.layers;
      const others = (of: Layers) => textsIn(of, ['fixtures']).map(({ text, sizeMm }) => [text, sizeMm]);
      expect(others(layers)).toEqual(others(usual));
    }
  });

  it('says less of things when they are far away', () => {
    const labels = (scale: number): string[] =>
      textsIn(drawn('ground-flr', scale).scene.layers, ['points']).map(({ text }) => text);
    expect(labels(60)).toContain('W1 h 450');
    expect(labels(160)).toContain('W1');
  });

  it('takes a storey without walls for six metres at least, whatever stands on it', () => {
    const [low, high] = screenExtent(scheme.worked, 'no-such-storey');
    expect([high[0] - low[0], high[1] - low[1]]).toEqual([6000, 6000]);
  });

  it('draws an empty storey too', () => {
    const { scene } = drawn('no-such-storey', 20);
    expect(scene.widthMm).toBeGreaterThan(0);
    expect(scene.layers.flatMap(({ shapes }) => shapes)).toEqual([]);
  });
});
