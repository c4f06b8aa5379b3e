import { describe, expect, it } from 'vitest';
import { outdoorEnclosure } from '#engine/rules/outdoor-enclosure.ts';
import type { Point } from '#model/installation.ts';
import { saidBy } from './facts-builder.ts';
import { houseOf, wantedOn } from './house-builder.ts';

const outside = { wall: 's', side: 'right', alongMm: 2000, heightMm: 450 } as const;
const said = (point: Partial<Point>, external = true) =>
  saidBy(outdoorEnclosure, houseOf({ wall: { external }, points: [wantedOn(2000, 450, point)] }));

describe('accessories outside', () => {
  it('[PO9] leaves one on the outer face without a named enclosure to be decided', () => {
    expect(said({ place: outside })).toMatchObject([
      { outcome: 'decide', messageId: 'unknown', limit: 'IP66' },
    ]);
  });

  it('[PO9] reminds of the RCD once the enclosure is named', () => {
    expect(said({ place: outside, features: ['ip66'] })).toMatchObject([
      { outcome: 'advice', messageId: 'weatherproof' },
    ]);
  });

  it('[PO9] is silent on the inner face and behind an internal wall', () => {
    expect(said({})).toEqual([]);
    expect(said({ place: outside }, false)).toEqual([]);
  });

  it('[PO9] knows a place that is called outside', () => {
    const facts = houseOf({ room: { use: 'outside' }, points: [wantedOn(2000, 450)] });
    expect(saidBy(outdoorEnclosure, facts)).toMatchObject([{ outcome: 'decide' }]);
  });
});
