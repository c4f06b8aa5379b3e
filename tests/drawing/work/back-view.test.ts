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
    const nearest = names.toSorted((a, b) => Math.abs(a.at[0] - endX) - Math.abs(b.at[0] - endX))[0];
    expect(nearest?.text).toBe(terminalWords[conductors[i]?.terminal ?? 'L']);
  }
  const levels = drawn.map(({ points }) => points[1]?.[1]);
  expect(new Set(levels).size).toBe(levels.length);
  lettersAreClear(scene);
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
