import { describe, expect, it } from 'vitest';
import { pointsApart } from '#engine/rules/points-apart.ts';
import type { Point } from '#model/installation.ts';
import { pointOf, saidBy } from './facts-builder.ts';
import { houseOf, wantedOn } from './house-builder.ts';

const onWall = (id: string, alongMm: number, partial: Partial<Point> = {}): Point =>
  pointOf(id, { place: { wall: 's', side: 'left', alongMm, heightMm: 450 }, ...partial });
const free = (id: string, x: number, partial: Partial<Point> = {}): Point =>
  pointOf(id, { place: { storey: 'gf', at: [x, 1500], heightMm: 450 }, ...partial });
const said = (...points: Point[]) => saidBy(pointsApart, houseOf({ points }));

// BS 4662 plates, from memory: a twin is 146 mm wide, a single 86 mm, and both are 86 mm high.
describe('two points in one place', () => {
  it('[PO14] are to be decided where both were found: one of the places is wrong', () => {
    expect(said(onWall('r1', 2000), onWall('r2', 2000))).toEqual([
      { outcome: 'decide', messageId: 'recorded', subjectId: 'r2', origin: 'found' },
    ]);
    expect(said(onWall('r1', 2000), onWall('r2', 2144))).toHaveLength(1);
    expect(said(onWall('r1', 2000), onWall('r2', 2146))).toEqual([]);
  });

  it('[PO14] are the same off the walls, nearer than a plate is high', () => {
    expect(said(free('r1', 2000), free('r2', 2085))).toMatchObject([{ outcome: 'decide' }]);
    expect(said(free('r1', 2000), free('r2', 2086))).toEqual([]);
  });

  it('[PO14] fail where a wanted point off the walls is put upon a found one', () => {
    expect(said(free('r1', 2000), free('w1', 2000, { status: 'wanted' }))).toEqual([
      { outcome: 'fails', messageId: 'wanted', subjectId: 'w1', origin: 'scheme' },
    ]);
  });

  it('[PO14] fail where a wanted point that no connection joins is put upon a found one', () => {
    const facts = houseOf({ points: [onWall('r1', 2000), wantedOn(2000, 450)] });
    const unjoined = { ...facts, things: { ...facts.things, accessories: [] } };
    expect(saidBy(pointsApart, unjoined)).toMatchObject([{ outcome: 'fails', subjectId: 'p' }]);
  });

  it('[PO14] are left to the rule of the plates where the scheme fits one of them on a wall', () => {
    expect(said(onWall('r1', 2000), wantedOn(2000, 450))).toEqual([]);
  });

  it('[PO14] are none where one of the two goes, is not placed, or is a joint', () => {
    expect(said(onWall('r1', 2000), onWall('r2', 2000, { status: 'removed' }))).toEqual([]);
    expect(said(onWall('r1', 2000), onWall('r2', 2000, { status: 'replaced' }))).toEqual([]);
    expect(said(onWall('r1', 2000), pointOf('r2'))).toEqual([]);
    expect(said(onWall('r1', 2000), onWall('j1', 2000, { kind: 'joint' }))).toEqual([]);
  });
});
