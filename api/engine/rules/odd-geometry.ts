import { type Oddity, oddGeometry } from '../plan/odd-geometry.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = Oddity['kind'];

/** What is drawn so that it cannot be is said, and worked with as far as it goes: lengths and ways there are not to be relied on. */
export const oddlyDrawn = rule<Message>({
  id: 'HG1',
  title: 'The house as drawn',
  source: 'common practice',
  messages: {
    'room-open':
      'The walls of {name} do not close round it: it has no floor area, and cables find no way along its walls.',
    'no-length': 'A wall of {storey} has no length.',
    'walls-cross': 'Two walls of {storey} go through each other where neither is parted.',
    'opening-beyond': '{name} reaches {actual} mm past the end of its wall.',
    'openings-overlap': '{name} lies {actual} mm over the opening beside it.',
    'off-wall': '{name} stands {actual} mm past the end of its wall.',
    'above-ceiling': '{name} is {actual} mm above the ceiling.',
  },
  remedies: {
    'room-open': 'Under Rooms and walls: open the room and measure its sides again, or walk round it.',
    'no-length': 'Under Rooms and walls: take the wall away, or draw the room again.',
    'walls-cross': 'Under Rooms and walls: move one of them, or part both where they meet.',
    'opening-beyond': 'Under Rooms and walls: open the wall, and measure where the opening is and how wide.',
    'openings-overlap': 'Under Rooms and walls: open the wall, and measure both openings from its corner.',
    'off-wall': 'Drag it on the plan onto the wall, or measure it again from the corner.',
    'above-ceiling': 'Correct its height, or the height of the storey.',
  },
  couldFail: false,
  check: (facts) => oddGeometry(facts.job, facts.plan).map((oddity) => told(facts, oddity)),
});

const told = (facts: Facts, { kind, subjectId, otherId, byMm }: Oddity): CheckResult<Message> => ({
  outcome: 'not-proven',
  messageId: kind,
  subjectId,
  origin: 'found',
  values: { name: nameOf(facts, subjectId), storey: storeyOf(facts, otherId ?? subjectId) },
  ...(byMm === undefined ? {} : { actual: byMm, unit: 'mm' }),
});

const openingWords = {
  door: 'A door',
  window: 'A window',
  opening: 'An opening',
  breast: 'A chimney breast',
};

function nameOf({ job, plan }: Facts, id: string): string {
  const thing = [...job.points, ...job.boards].find((one) => one.id === id);
  const opening = [...plan.wallById.values()]
    .flatMap(({ wall }) => wall.openings)
    .find((one) => one.id === id);
  return thing?.label ?? plan.roomById.get(id)?.room.name ?? (opening ? openingWords[opening.kind] : id);
}

function storeyOf({ plan }: Facts, wallId: string): string {
  const storeyId = plan.wallById.get(wallId)?.storeyId;
  return (storeyId === undefined ? undefined : plan.storeyById.get(storeyId)?.storey.name) ?? 'the house';
}
