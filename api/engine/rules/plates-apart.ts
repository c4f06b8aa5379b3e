import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { foundAccessories, newAccessories, type PlacedAccessory } from './placed.ts';
import { overlapOnWall } from './plate-overlap.ts';
import { type CheckResult, rule } from './rule.ts';

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
