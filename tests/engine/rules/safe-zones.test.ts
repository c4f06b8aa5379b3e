import { describe, expect, it } from 'vitest';
import { safeZones } from '#engine/rules/safe-zones.ts';
import type { Segment } from '#engine/ways/run.ts';
import { wall } from '#tests/engine/plan/small-house.ts';
import { runOf, saidBy } from './facts-builder.ts';
import { type HouseLiteral, houseOf, levelOf, uprightOf, wantedOn } from './house-builder.ts';

const said = (segment: Segment, literal: HouseLiteral = {}) =>
  saidBy(safeZones, houseOf({ points: [wantedOn(2000, 450)], runs: [runOf('r', [segment])], ...literal }));

describe('zones of cable hidden in walls', () => {
  it('[RT6] passes a drop in line with the plate, to its very edge', () => {
    expect(said(uprightOf(2073, [0, 450]))).toMatchObject([{ outcome: 'passes', messageId: 'inZone' }]);
  });

  it('[RT6] fails a drop just beside it', () => {
    expect(said(uprightOf(2074, [0, 450]))).toMatchObject([
      { outcome: 'fails', messageId: 'outside', origin: 'scheme' },
    ]);
  });

  it('[RT6] passes a level run at the plate’s height and fails one under it', () => {
    expect(said(levelOf([500, 2000], 407))).toMatchObject([{ outcome: 'passes' }]);
    expect(said(levelOf([500, 2000], 406))).toMatchObject([{ outcome: 'fails' }]);
  });

  it('[RT6] knows the 150 mm along the top and at a corner, not along the bottom', () => {
    expect(said(levelOf([500, 2000], 2250))).toMatchObject([{ outcome: 'passes' }]);
    expect(said(levelOf([500, 2000], 2249))).toMatchObject([{ outcome: 'fails' }]);
    // The inside corner is 50 mm along the wall's centre line.
    expect(said(uprightOf(200, [0, 2400]))).toMatchObject([{ outcome: 'passes' }]);
    expect(said(uprightOf(201, [0, 2400]))).toMatchObject([{ outcome: 'fails' }]);
    expect(said(levelOf([500, 2000], 50))).toMatchObject([{ outcome: 'fails' }]);
  });

  it('[RT6] fails a slope unless it is 50 mm from both faces', () => {
    const slope = (depthMm: number | null, thicknessMm: number) =>
      said(uprightOf(2000, [0, 450], { direction: 'sloping', depthMm }), { wall: { thicknessMm } });
    expect(slope(null, 100)).toMatchObject([{ outcome: 'fails', messageId: 'sloping' }]);
    expect(slope(50, 100)).toMatchObject([{ outcome: 'passes', messageId: 'deep' }]);
    expect(slope(49, 100)).toMatchObject([{ outcome: 'fails' }]);
    expect(slope(50, 99)).toMatchObject([{ outcome: 'fails' }]);
  });

  it('[RT6] reads zones through walls of up to 100 mm', () => {
    const other = uprightOf(2000, [0, 450], { side: 'right' });
    expect(said(other, { wall: { thicknessMm: 100 } })).toMatchObject([{ outcome: 'passes' }]);
    expect(said(other, { wall: { thicknessMm: 101 } })).toMatchObject([{ outcome: 'fails' }]);
  });

  it('[RT6] reads zones on along a face over the next wall in line, and not round a corner or on its other side', () => {
    // The wall s in two: its second part begins at 1950.
    const of = (id: string, from: [number, number], to: [number, number]) => wall(id, from, to);
    const walls = [
      of('s', [-50, -50], [1950, -50]),
      of('s2', [1950, -50], [4050, -50]),
      of('e', [4050, -50], [4050, 3050]),
      of('n', [4050, 3050], [-50, 3050]),
      of('w', [-50, 3050], [-50, -50]),
    ];
    const sides = walls.map(({ id }) => ({ wall: id, side: 'left' as const }));
    const rooms = [{ id: 'room', name: 'Room', use: 'living', block: 'main', walls: sides } as const];
    const inTwo = (segment: Segment, thicknessMm = 100) =>
      said(segment, {
        points: [wantedOn(1930, 450)],
        storey: { walls: walls.map((each) => ({ ...each, thicknessMm })), rooms: [...rooms] },
      });
    const second = { wallId: 's2' } as const;
    expect(inTwo(levelOf([2000, 3500], 450, second))).toMatchObject([{ outcome: 'passes' }]);
    expect(inTwo(levelOf([2000, 3500], 406, second))).toMatchObject([{ outcome: 'fails' }]);
    // 73 mm from the plate's middle, past the joint.
    expect(inTwo(uprightOf(2003, [0, 450], second))).toMatchObject([{ outcome: 'passes' }]);
    expect(inTwo(uprightOf(2004, [0, 450], second))).toMatchObject([{ outcome: 'fails' }]);
    const behind = levelOf([2000, 3500], 450, { ...second, side: 'right' });
    expect(inTwo(behind)).toMatchObject([{ outcome: 'passes' }]);
    expect(inTwo(behind, 101)).toMatchObject([{ outcome: 'fails' }]);
    const round = levelOf([500, 2000], 450, { wallId: 'n' });
    expect(inTwo(round)).toMatchObject([{ outcome: 'fails' }]);
  });

  it('[RT6] is not proven where the path is assumed', () => {
    expect(said(uprightOf(3000, [0, 450], { certainty: 'assumed' }))).toMatchObject([
      { outcome: 'not-proven', messageId: 'pathAssumed' },
    ]);
  });

  it('[RT6] lets armour stand for the zones', () => {
    const cable = { type: 'steel-wire-armoured', lineMm2: 2.5, cpcMm2: 2.5 } as const;
    expect(
      saidBy(safeZones, houseOf({ runs: [runOf('r', [uprightOf(3000, [0, 450])], { cable })] })),
    ).toMatchObject([{ outcome: 'passes', messageId: 'armoured' }]);
  });
});
