import { describe, expect, it } from 'vitest';
import { oldCable } from '#engine/rules/old-cable.ts';
import type { Cable } from '#model/cable.ts';
import { factsOf, legOf, pointOf, saidBy, shapeOf, twin25, twinOf } from './facts-builder.ts';

const said = (...cables: Cable[]) =>
  saidBy(
    oldCable,
    factsOf({
      job: {
        points: ['r0', 'r1', 'r2', 'r3'].map((id) => pointOf(id)),
        legs: cables.map((cable, i) => legOf(`l${i}`, `r${i}`, `r${i + 1}`, { cable })),
      },
      shapes: [shapeOf('c')],
    }),
  );

describe('old cable', () => {
  it('[SC5] is to be renewed where it is rubber or lead, or has no protective conductor', () => {
    expect(said({ ...twin25, era: 'VIR rubber, 1950s' })).toMatchObject([
      { outcome: 'decide', messageId: 'perished', subjectId: 'c', actual: 'R0 – R1' },
    ]);
    expect(said(twinOf(2.5, 0))).toMatchObject([{ outcome: 'decide', messageId: 'noCpc' }]);
  });

  it('[SC5] wants a calculation with exactly 1.0 mm² beside 2.5, not with more', () => {
    expect(said(twinOf(2.5, 1))).toMatchObject([{ outcome: 'advice', messageId: 'smallCpc' }]);
    expect(said(twinOf(2.5, 1.01))).toEqual([]);
    expect(said(twinOf(1.5, 1))).toEqual([]);
  });

  it('[SC5] names imperial legs together, by the points that they join', () => {
    const imperial: Cable = { type: 'imperial', lineMm2: 2.98, cpcMm2: 1.28 };
    expect(said(imperial, twin25, imperial)).toMatchObject([
      { outcome: 'advice', messageId: 'imperial', actual: 'R0 – R1; R2 – R3' },
    ]);
  });

  it('[SC5] is silent where legs are unknown', () => {
    expect(said()).toEqual([]);
  });
});
