import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textWidthMm } from '#drawing/label-placer.ts';
import type { Scene, Shape } from '#drawing/scene.ts';
import { backView } from '#drawing/work/back-view.ts';
import { coreInk, terminalWords } from '#drawing/work/core-words.ts';
import { orderScene } from '#drawing/work/order-scene.ts';
import { circuitOrder } from '#engine/work/circuit-order.ts';
import type { ConnectionPlace } from '#engine/work/connection-place.ts';
import { connectionSheet } from '#engine/work/connection-sheet.ts';
import { referencesOf } from '#engine/work/references.ts';
import { edited } from '#tests/engine/circuit/any-edited-job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { demoSchemes, firstWorked } from '#tests/engine/work/worked-schemes.ts';

const shapesOf = ({ layers }: Scene): readonly Shape[] => layers.flatMap(({ shapes }) => shapes);
const wires = (scene: Scene) =>
  shapesOf(scene).flatMap((shape) => (shape.kind === 'line' && shape.ink.startsWith('core-') ? [shape] : []));

/** Upright boxes of all lettering. */
const boxesOf = (scene: Scene) =>
  shapesOf(scene).flatMap((shape) => {
    if (shape.kind !== 'text') return [];
    const wide = textWidthMm(shape.text, shape.sizeMm);
    const left = shape.at[0] - (shape.anchor === 'middle' ? wide / 2 : 0);
    return [
      {
        text: shape.text,
        left,
        right: left + wide,
        bottom: shape.at[1],
        top: shape.at[1] - shape.sizeMm * 0.75,
      },
    ];
  });

function lettersAreClear(scene: Scene): void {
  const boxes = boxesOf(scene);
  for (const [i, a] of boxes.entries()) {
    expect(a.left, a.text).toBeGreaterThanOrEqual(0);
    expect(a.right, a.text).toBeLessThanOrEqual(scene.widthMm);
    expect(a.bottom, a.text).toBeLessThanOrEqual(scene.heightMm);
    for (const b of boxes.slice(i + 1)) {
      const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
      expect(apart, `${a.text} over ${b.text} in ${scene.title}`).toBe(true);
    }
  }
}

/** The outlines round the screws of bars, by their sides. */
const barsOf = ({ layers }: Scene) =>
  layers
    .filter(({ name }) => name === 'terminals')
    .flatMap(({ shapes }) => shapes)
    .flatMap((shape) => (shape.kind === 'line' && shape.ink === 'symbol' ? [shape.points] : []))
    .map((points) => points.map(([x]) => x))
    .map((xs) => ({ left: Math.min(...xs), right: Math.max(...xs) }));

/** Every conductor is drawn once, from its cable to its own terminal, on a level of its own, with the stroke of its function. */
function holds(place: ConnectionPlace): void {
  const scene = backView(place);
  const conductors = [
    ...place.sides.flatMap(({ ends }) => ends.flatMap((end) => end.conductors)),
    ...place.leads.flatMap((lead) => lead.conductors),
  ];
  const drawn = wires(scene);
  expect(drawn.map(({ ink }) => ink)).toEqual(conductors.map(coreInk));
  const names = shapesOf(scene).flatMap((shape) =>
    shape.kind === 'text' && shape.at[1] < 10 ? [shape] : [],
  );
  for (const [i, { points }] of drawn.entries()) {
    const [endX] = points.at(-1) ?? [0];
    // A bar's name stands over the middle of it.
    const bar = barsOf(scene).find(({ left, right }) => left <= endX && endX <= right);
    const own = bar === undefined ? names : names.filter(({ at }) => bar.left <= at[0] && at[0] <= bar.right);
    const nearest = own.toSorted((a, b) => Math.abs(a.at[0] - endX) - Math.abs(b.at[0] - endX))[0];
    expect(nearest?.text).toBe(terminalWords[conductors[i]?.terminal ?? 'L']);
  }
  const levels = drawn.map(({ points }) => points[1]?.[1]);
  expect(new Set(levels).size).toBe(levels.length);
  noUprightsLieOnAnother(drawn.map(({ points }) => points));
  lettersAreClear(scene);
}

/** Nearer than this two uprights run into one for the eye, mm. */
const APART_MM = 0.7;

/** A core that comes in below a terminal is never read as the conductor that goes into it. */
function noUprightsLieOnAnother(all: readonly (readonly (readonly [number, number])[])[]): void {
  const uprights = all.flatMap(([foot, low, high, screw], i) =>
    foot && low && high && screw
      ? [
          { i, x: foot[0], top: low[1], bottom: foot[1] },
          { i, x: screw[0], top: screw[1], bottom: high[1] },
        ]
      : [],
  );
  for (const [n, a] of uprights.entries())
    for (const b of uprights.slice(n + 1)) {
      if (a.i === b.i || Math.min(a.bottom, b.bottom) <= Math.max(a.top, b.top)) continue;
      expect(Math.abs(a.x - b.x)).toBeGreaterThan(APART_MM);
    }
}

describe('the picture of a place from behind', () => {
  it.each(demoSchemes())('shows every conductor of $name at its terminal', ({ worked }) => {
    const { places } = connectionSheet(worked);
    for (const place of places) holds(place);
    expect(places.flatMap((place) => wires(backView(place))).length).toBeGreaterThan(10);
  });

  it('shows every conductor of any scheme at its terminal', () => {
    fc.assert(
      fc.property(edited, (job) => {
        for (const place of connectionSheet(firstWorked(job)).places) holds(place);
      }),
      { numRuns: 60 },
    );
  });

  it('gives each conductor at a bar a screw of its own, and a device’s own leads no colour that nobody told', () => {
    const board = connectionSheet(firstWorked(demoJob('saltglass-row'))).places.find(
      ({ kind }) => kind === 'board',
    );
    if (board === undefined) throw new Error('no board');
    const scene = backView(board);
    expect(shapesOf(scene).some((shape) => shape.kind === 'text' && shape.text.includes('?'))).toBe(false);
    const drawn = wires(scene);
    const atBars = drawn.flatMap(({ points }) => {
      const [x] = points.at(-1) ?? [0];
      return barsOf(scene).some(({ left, right }) => left <= x && x <= right) ? [x] : [];
    });
    const screws = shapesOf(scene).flatMap((shape) => (shape.kind === 'circle' ? [shape.at[0]] : []));
    // Two earths of the ring and the device's own, and its neutral lead.
    expect(atBars.length).toBe(4);
    for (const x of atBars) expect(screws.filter((at) => Math.abs(at - x) < 0.01).length).toBe(1);
  });

  it('tells line, neutral and earth apart without colour', () => {
    const inks = (['line', 'neutral', 'earth'] as const).map((core) =>
      (['red', 'black', 'brown', 'blue', 'green-yellow', null] as const).map((afterColour) =>
        coreInk({ core, afterColour }),
      ),
    );
    const [line, neutral, earth] = inks.map((each) => new Set(each));
    expect([...(line ?? [])].filter((ink) => neutral?.has(ink) || earth?.has(ink))).toEqual([]);
    expect([...(neutral ?? [])].filter((ink) => earth?.has(ink))).toEqual([]);
  });
});

describe('the picture of a circuit in order', () => {
  it('has no lettering over another, of any scheme', () => {
    fc.assert(
      fc.property(edited, (job) => {
        const worked = firstWorked(job);
        const references = referencesOf(worked);
        for (const id of worked.circuitIds)
          for (const which of ['found', 'proposed'] as const) {
            const order = circuitOrder(worked, which, id, references);
            if (order !== null) lettersAreClear(orderScene(order));
          }
      }),
      { numRuns: 60 },
    );
  });
});
