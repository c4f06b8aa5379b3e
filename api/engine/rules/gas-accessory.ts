import type { Fixture } from '#model/building.ts';
import { HALF_PLATE_HEIGHT_MM, rangeGapMm } from './clearance.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { newAccessories, type PlacedAccessory, plateToFixtureMm } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** From a gas pipe or meter to an accessory, mm. Source: BS 6891 (2005 text, 8.16.2); BS 6400-1 for meters. */
export const GAS_TO_ACCESSORY_MM = 150;

type Message = 'clear' | 'near' | 'heightUnknown';

/** Accessories, which may spark, keep away from gas pipes and meters. */
export const gasAccessory = rule<Message>({
  id: 'PO12',
  title: 'Accessories and gas',
  source: 'BS 6891; BS 6400-1',
  messages: {
    clear:
      'The plate’s edge is {actual} mm from the nearest gas pipe or meter drawn; {limit} mm is asked for.',
    near: 'The plate’s edge is {actual} mm from a gas pipe or meter; {limit} mm is asked for.',
    heightUnknown:
      'A gas pipe or meter stands {actual} mm away on plan; without its height {limit} mm cannot be shown.',
  },
  remedies: { near: 'Move the accessory.', heightUnknown: 'Measure the height of the gas pipe or meter.' },
  couldFail: true,
  check: (facts) =>
    newAccessories(facts).flatMap<CheckResult<Message>>((accessory) => {
      const gaps = facts.plan.fixtures
        .filter(({ fixture }) => fixture.kind === 'gas-pipe' || fixture.kind === 'gas-meter')
        .filter(({ storeyId }) => storeyId === accessory.position.storeyId)
        .map(({ fixture }) => gapTo(facts, accessory, fixture))
        .sort((a, b) => a.gapMm - b.gapMm || Number(a.known) - Number(b.known));
      const known = gaps.find((gap) => gap.known);
      const guessed = gaps.find((gap) => !gap.known);
      const subject = { subjectId: accessory.id, origin: 'scheme' } as const;
      if (known && known.gapMm < GAS_TO_ACCESSORY_MM)
        return [{ ...subject, outcome: 'fails', messageId: 'near', ...numbers(known.gapMm) }];
      if (guessed && guessed.gapMm < GAS_TO_ACCESSORY_MM)
        return [{ ...subject, outcome: 'not-proven', messageId: 'heightUnknown', ...numbers(guessed.gapMm) }];
      const nearest = gaps[0];
      return nearest
        ? [{ ...subject, outcome: 'passes', messageId: 'clear', ...numbers(nearest.gapMm) }]
        : [];
    }),
});

function numbers(gapMm: number) {
  return figures(gapMm, GAS_TO_ACCESSORY_MM, 'mm');
}

/** Through the air from the plate; on plan alone where the pipe's height is not told. */
function gapTo(facts: Facts, accessory: PlacedAccessory, fixture: Fixture) {
  const acrossMm = plateToFixtureMm(facts, accessory, fixture);
  const { fromMm, toMm } = fixture;
  if (fromMm === undefined || toMm === undefined) return { gapMm: acrossMm, known: false };
  const { heightMm } = accessory.position;
  const upMm = rangeGapMm(heightMm - HALF_PLATE_HEIGHT_MM, heightMm + HALF_PLATE_HEIGHT_MM, fromMm, toMm);
  return { gapMm: Math.hypot(acrossMm, upMm), known: true };
}
