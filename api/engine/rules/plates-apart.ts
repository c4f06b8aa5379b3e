import { HALF_PLATE_HEIGHT_MM, halfPlateWidthMm } from './clearance.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { foundAccessories, newAccessories, type PlacedAccessory } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** Plates that cover each other by no more than a drawing's rounding count as touching, mm. */
const ROUNDING_MM = 1;

type Message = 'covers' | 'unit';

/** A new plate has room on its wall: it does not lie on another one. */
export const platesApart = rule<Message>({
  id: 'PO13',
  title: 'Space between plates',
  source: 'common practice; plates by BS 4662',
  messages: {
    covers: 'Its plate lies on that of {other}: their middles are {actual} mm apart, and need {limit} mm.',
    unit: 'Drawn beside its point it lies on the plate of {other}: choose its place by hand.',
  },
  remedies: {
    covers: 'Move one of them, or enter that the new one replaces the other.',
    unit: 'Place the fused unit where there is room for its plate.',
  },
  couldFail: true,
  check: (facts) => {
    const made = newAccessories(facts);
    const all = [...foundAccessories(facts), ...made];
    return made.flatMap((accessory) => judged(facts, accessory, all));
  },
});

/** What counts of a plate: its kind, and where its middle is. */
export type PlacedPlate = Pick<PlacedAccessory, 'kind' | 'position'>;

/** How far the middles of two plates on one face are apart along the wall, and how far they must be; null if clear. */
export function overlapOnWall(a: PlacedPlate, b: PlacedPlate): { apartMm: number; neededMm: number } | null {
  const [one, two] = [a.position.onWall, b.position.onWall];
  if (!one || !two || one.wallId !== two.wallId || one.side !== two.side) return null;
  if (a.position.storeyId !== b.position.storeyId) return null;
  const neededMm = halfPlateWidthMm(a.kind) + halfPlateWidthMm(b.kind);
  const apartMm = Math.abs(one.alongMm - two.alongMm);
  const upMm = Math.abs(a.position.heightMm - b.position.heightMm);
  const isOver = apartMm < neededMm - ROUNDING_MM && upMm < 2 * HALF_PLATE_HEIGHT_MM - ROUNDING_MM;
  return isOver ? { apartMm, neededMm } : null;
}

function judged(
  facts: Facts,
  accessory: PlacedAccessory,
  all: readonly PlacedAccessory[],
): readonly CheckResult<Message>[] {
  const under = all
    .filter(({ id }) => id !== accessory.id)
    .flatMap((other) => {
      const overlap = overlapOnWall(accessory, other);
      return overlap === null ? [] : [{ other, ...overlap }];
    })
    .sort((a, b) => a.apartMm - b.apartMm)[0];
  if (under === undefined) return [];
  const isPlaced = facts.plan.pointById.has(accessory.id);
  return [
    {
      outcome: isPlaced ? 'fails' : 'decide',
      messageId: isPlaced ? 'covers' : 'unit',
      subjectId: accessory.id,
      origin: 'scheme',
      ...figures(under.apartMm, under.neededMm, 'mm', { other: under.other.label }),
    },
  ];
}
