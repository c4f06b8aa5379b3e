import { describe, expect, it } from 'vitest';
import { axesAt } from '#engine/ways/joist-axes.ts';
import { joistSpans, joistSupports } from '#engine/ways/joist-supports.ts';
import type { Opening, Room, Storey, Wall } from '#model/building.ts';
import { fourWalls, planOf, room, storey, timberFloor, wall } from '#tests/engine/plan/small-house.ts';

const along = axesAt(0);
const box = fourWalls(6000, 3000);
const stud = { core: 'timber-stud' } as const;

interface More {
  readonly walls?: Wall[];
  readonly rooms?: Room[];
  /** Walls and rooms of the lower storey; null: there is no lower storey. */
  readonly below?: { readonly walls: Wall[]; readonly rooms: Room[] } | null;
  readonly storey?: Partial<Storey>;
}

const under = fourWalls(6000, 3000, { prefix: 'g-' });
const wholeBelow = { walls: under.walls, rooms: [room('g', under.sides)] };

/** Six metres by three, joists along x, over one room of the same size. */
function house({ walls, rooms, below = wholeBelow, storey: more }: More = {}) {
  const up = storey('ff', {
    floorLevelMm: 2700,
    floor: timberFloor,
    walls: walls ?? box.walls,
    rooms: rooms ?? [room('r', box.sides)],
    ...more,
  });
  return planOf(below === null ? [up] : [storey('gf', below), up]);
}

const spansOf = (plan: ReturnType<typeof house>, acrossMm = 1600) =>
  joistSpans(plan, 'ff', along, acrossMm)
    .map(({ fromMm, toMm, isAssumed }) => [fromMm, toMm, isAssumed] as const)
    .filter(([fromMm]) => fromMm >= 0);

/** The same six metres as two rooms with a wall between them at x 2000; walls close where they end. */
function parted(core: Partial<Wall>, prefix = '') {
  const id = (name: string) => `${prefix}${name}`;
  const walls = [
    wall(id('s1'), [-50, -50], [2050, -50]),
    wall(id('s2'), [2050, -50], [6050, -50]),
    wall(id('e'), [6050, -50], [6050, 3050]),
    wall(id('n2'), [6050, 3050], [2050, 3050]),
    wall(id('n1'), [2050, 3050], [-50, 3050]),
    wall(id('w'), [-50, 3050], [-50, -50]),
    wall(id('part'), [2050, -50], [2050, 3050], core),
  ];
  const rooms = [
    room(id('left'), [
      [id('s1'), 'left'],
      [id('part'), 'left'],
      [id('n1'), 'left'],
      [id('w'), 'left'],
    ]),
    room(id('right'), [
      [id('s2'), 'left'],
      [id('e'), 'left'],
      [id('n2'), 'left'],
      [id('part'), 'right'],
    ]),
  ];
  return { walls, rooms };
}

// A joiner's reading, common practice, no source: joists bear on masonry and on what is known to be structural, on their own
// storey or below; they go on beneath partitions that stand on them.
describe('a joist', () => {
  it('goes from wall to wall that carries', () => {
    expect(spansOf(house())).toEqual([[0, 6000, false]]);
    expect(joistSupports(house(), 'ff', along, [2000, 1600]).span).toMatchObject({
      low: { mm: 0, on: 'wall', wallId: 'w' },
      high: { mm: 6000, on: 'wall', wallId: 'e' },
    });
  });

  it('goes on beneath a stud wall that stands on it, over an open room', () => {
    expect(spansOf(house(parted(stud)))).toEqual([[0, 6000, false]]);
  });

  it('bears on masonry, and on studs that are structural, of its own storey or below', () => {
    const both = [
      [0, 2000, false],
      [2100, 6000, false],
    ];
    expect(spansOf(house(parted({})))).toEqual(both);
    expect(spansOf(house(parted({ ...stud, structural: true })))).toEqual(both);
    const below = { ...wholeBelow, walls: [...under.walls, wall('mid', [2050, -50], [2050, 3050])] };
    expect(spansOf(house({ below }))).toEqual(both);
    expect(joistSupports(house({ below }), 'ff', along, [2050, 1600])).toEqual({
      span: null,
      isOverSupport: true,
    });
  });

  it('goes on over masonry that is known not to be structural; what is only thought so leaves it assumed', () => {
    const mid = (more: Partial<Wall>) =>
      house({
        below: { ...wholeBelow, walls: [...under.walls, wall('mid', [2050, -50], [2050, 3050], more)] },
      });
    expect(spansOf(mid({ structural: false }))).toEqual([[0, 6000, false]]);
    expect(spansOf(mid({ structural: false, certainty: { structural: 'assumed' } }))).toEqual([
      [0, 6000, true],
    ]);
    expect(spansOf(mid({ certainty: { core: 'assumed' } }))).toEqual([
      [0, 2000, true],
      [2100, 6000, true],
    ]);
    // Studs below that nobody has looked at may carry.
    expect(spansOf(mid(stud))).toEqual([[0, 6000, true]]);
    expect(spansOf(mid({ ...stud, structural: false }))).toEqual([[0, 6000, false]]);
  });

  it('ends at a room’s edge where nothing is drawn below, or a partition stands on one below; that is assumed', () => {
    const both = [
      [0, 2000, true],
      [2100, 6000, true],
    ];
    expect(spansOf(house({ ...parted(stud), below: { walls: [], rooms: [] } }))).toEqual(both);
    expect(spansOf(house({ ...parted(stud), below: null }))).toEqual(both);
    const onStuds = parted(stud, 'g-');
    expect(spansOf(house({ ...parted(stud), below: onStuds }))).toEqual(both);
  });

  it('is assumed throughout on the lowest floor, whose sleeper walls nobody sees', () => {
    expect(spansOf(house({ below: null }))).toEqual([[0, 6000, true]]);
  });

  it('is trimmed at a stairwell and before a chimney breast, and beside them it is not', () => {
    const well = [
      [0, 1000],
      [900, 1000],
      [900, 2400],
      [0, 2400],
    ] as [number, number][];
    const plan = house({ storey: { stairwells: [well] } });
    expect(spansOf(plan)).toEqual([[900, 6000, true]]);
    expect(spansOf(plan, 800)).toEqual([[0, 6000, false]]);
    const breast: Opening = {
      id: 'b',
      kind: 'breast',
      alongMm: 1000,
      widthMm: 1000,
      sillMm: 0,
      headMm: 2400,
      side: 'left',
    };
    const walls = box.walls.map((each) => (each.id === 'e' ? { ...each, openings: [breast] } : each));
    const withBreast = house({ storey: { walls } });
    expect(spansOf(withBreast)).toEqual([[0, 5650, true]]);
    expect(spansOf(withBreast, 2400)).toEqual([[0, 6000, false]]);
  });

  it('has no span where it bears on nothing that is drawn', () => {
    const nothing = planOf([storey('gf'), storey('ff', { floorLevelMm: 2700 })]);
    expect(joistSupports(nothing, 'ff', along, [2000, 1600])).toEqual({ span: null, isOverSupport: false });
  });

  it('is the same by joists along x and along y, in a house turned with them', () => {
    const turned = fourWalls(3000, 6000);
    const plan = planOf([
      storey('gf', fourWalls(3000, 6000, { prefix: 'g-' })),
      storey('ff', { floorLevelMm: 2700, walls: turned.walls, rooms: [room('r', turned.sides)] }),
    ]);
    const [span] = joistSpans(plan, 'ff', axesAt(90), -1600).filter(({ toMm }) => toMm > 0);
    expect(span).toMatchObject({ fromMm: 0, toMm: 6000, isAssumed: false });
  });
});
