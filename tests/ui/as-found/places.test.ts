import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { cornerDistances } from '#engine/plan/corners.ts';
import { positionOfPlace } from '#engine/plan/position-of-place.ts';
import { type DemoName, demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { nextLabel } from '../../../ui/edits/next-label.ts';
import { placeWords } from '../../../ui/elements/as-found/place-words.ts';
import { pointInRoom } from '../../../ui/elements/as-found/room-of-place.ts';
import { middleOfFace, spotFromCorner } from '../../../ui/elements/as-found/spot-on-face.ts';
import { faceValue, wallChoices } from '../../../ui/elements/as-found/wall-choices.ts';

const plan = buildPlan(demoJob('saltglass-row'));
const facesOf = (name: DemoName) => wallChoices(buildPlan(demoJob(name)));

describe('the walls to choose from', () => {
  it.each(demoNames)('are each face once, and no two by one name: %s', (name) => {
    const faces = facesOf(name);
    expect(new Set(faces.map(({ value }) => value)).size).toBe(faces.length);
    expect(new Set(faces.map(({ label }) => label)).size).toBe(faces.length);
    expect(faces.length).toBeGreaterThan(10);
  });

  it('are named by their room and by what lies behind them', () => {
    const label = (value: string) => wallChoices(plan).find((face) => face.value === value)?.label;
    expect(label(faceValue('gf-hall-01', 'right'))).toBe('Living room, wall to the hall');
    expect(label(faceValue('gf-hall-01', 'left'))).toBe('Hall, wall to the living room');
    expect(label(faceValue('ff-front-1', 'left'))).toBe('Bedroom 1, outside wall');
  });

  it('hold the wall of every point that stands on one', () => {
    for (const name of demoNames) {
      const values = facesOf(name).map(({ value }) => value);
      const places = demoJob(name).points.flatMap(({ place }) =>
        place !== undefined && 'wall' in place ? [place] : [],
      );
      expect(values).toEqual(expect.arrayContaining(places.map(({ wall, side }) => faceValue(wall, side))));
    }
  });

  it('say where a point is in a line', () => {
    const place = { wall: 'gf-hall-01', side: 'right', alongMm: 2350, heightMm: 450 } as const;
    expect(placeWords(plan, wallChoices(plan), place)).toBe('Living room, wall to the hall, 450 mm up');
    expect(placeWords(plan, [], undefined)).toBe('Not placed yet');
    expect(placeWords(plan, [], place)).toBe('Living room, 450 mm up');
  });

  it('names the room of what stands on no wall, and the storey where no room holds it', () => {
    const [x = 0, y = 0] =
      positionOfPlace(plan, {
        wall: 'gf-hall-01',
        side: 'right',
        alongMm: 2350,
        heightMm: 0,
      })?.at ?? [];
    const free = (at: [number, number]) => placeWords(plan, [], { storey: 'ground-flr', at, heightMm: 300 });
    expect(free([x + 500, y])).toBe('Living room, 300 mm up');
    expect(free([-50_000, -50_000])).toBe('Ground floor, 300 mm up');
  });

  it('tell points in a list apart by their rooms', () => {
    const point = demoJob('saltglass-row').points.find(({ id }) => id === 'r4-dining1');
    if (point === undefined) throw new Error('R4 is gone');
    expect(pointInRoom(plan, point, 'twin')).toBe('R4, Dining room, twin');
    const { place: _place, ...unplaced } = point;
    expect(pointInRoom(plan, unplaced)).toBe('R4');
  });
});

describe('a spot by its distance from a corner', () => {
  const faces = wallChoices(plan);

  it('is that far from the corner on that hand, as the corner’s own measure tells', () => {
    const at = fc.tuple(
      fc.constantFrom(...faces),
      fc.constantFrom('left', 'right'),
      fc.double({ min: 0.05, max: 0.95, noNaN: true }),
    );
    fc.assert(
      fc.property(at, ([{ wallId, side }, hand, share]) => {
        const middle = middleOfFace(plan, wallId, side);
        const corners = cornerDistances(plan, middle);
        const wholeMm = (corners.leftMm ?? Number.NaN) + (corners.rightMm ?? Number.NaN);
        fc.pre(wholeMm > 100);
        const spot = spotFromCorner(plan, middle, hand as 'left' | 'right', Math.round(wholeMm * share));
        expect(spot).not.toBeNull();
        const after = cornerDistances(plan, spot ?? middle);
        const askedMm = Math.round(wholeMm * share);
        const nowMm = hand === 'left' ? after.leftMm : after.rightMm;
        // Spots are whole mm; walls in one line may be set off against each other by less than one.
        expect(Math.abs((nowMm ?? Number.NaN) - askedMm)).toBeLessThanOrEqual(1.5);
      }),
    );
  });

  it('is where it was when asked to be as far as it is', () => {
    for (const { wallId, side } of faces) {
      const middle = middleOfFace(plan, wallId, side);
      const { leftMm } = cornerDistances(plan, middle);
      const again = leftMm === null ? middle : spotFromCorner(plan, middle, 'left', leftMm);
      expect(Math.abs((again?.alongMm ?? Number.NaN) - middle.alongMm)).toBeLessThanOrEqual(1);
    }
  });

  it('is nowhere when there is no corner on that hand', () => {
    const outside = faces.find(({ label }) => label.startsWith('Outside'));
    const spot = middleOfFace(plan, outside?.wallId ?? '', outside?.side ?? 'left');
    const { leftMm } = cornerDistances(plan, spot);
    expect(spotFromCorner(plan, spot, 'left', 100) === null).toBe(leftMm === null);
    expect(spotFromCorner(plan, { wallId: 'none', side: 'left', alongMm: 0 }, 'left', 100)).toBeNull();
  });
});

describe('the next label', () => {
  const labelled = (status: 'existing' | 'wanted', ...labels: string[]) =>
    labels.map((label) => ({ label, status }));

  it('begins with R for what was found and W for what is wanted', () => {
    expect([nextLabel([], false), nextLabel([], true)]).toEqual(['R1', 'W1']);
  });

  it('goes on with the letters most used, past the highest number', () => {
    const points = [...labelled('existing', 'A1', 'A2', 'A10', 'S1', 'Kitchen'), ...labelled('wanted', 'B3')];
    expect([nextLabel(points, false), nextLabel(points, true)]).toEqual(['A11', 'B4']);
  });

  it('is never a label that is taken', () => {
    const label = fc
      .tuple(fc.constantFrom('R', 'W', 'A', 'Kitchen '), fc.nat({ max: 20 }))
      .map(([a, b]) => `${a}${b}`);
    const points = fc.array(
      fc.record({ label, status: fc.constantFrom('existing' as const, 'wanted' as const) }),
    );
    fc.assert(
      fc.property(points, fc.boolean(), (list, isWanted) => {
        expect(list.map((point) => point.label)).not.toContain(nextLabel(list, isWanted));
      }),
    );
  });
});
