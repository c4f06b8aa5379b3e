import { figures } from './figures.ts';
import { fixturesNear, newAccessories, plateToFixtureMm } from './placed.ts';
import { rule } from './rule.ts';

/** Nearer than this to something hot an accessory is looked at, mm. Common practice, no source. */
const HEAT_MM = 100;

/** Accessories keep away from radiators and other heat. */
export const heatSource = rule({
  id: 'PO11',
  title: 'Distance from heat',
  source: 'BS 7671 522.2, 528.3; the distance is common practice',
  messages: { near: 'The plate’s edge is {actual} mm from a {kind}; {limit} mm is usual.' },
  remedies: { near: 'Move it along, or shield it.' },
  couldFail: false,
  check: (facts) =>
    newAccessories(facts).flatMap((accessory) => {
      const near = fixturesNear(facts, accessory, ['radiator', 'oven', 'boiler'])
        .map(({ kind, ...rest }) => ({ kind, gapMm: plateToFixtureMm(facts, accessory, { kind, ...rest }) }))
        // A boiler's own unit is meant to be beside it: only what is behind or over it is hot.
        .filter(({ kind, gapMm }) => gapMm < (kind === 'boiler' ? 1 : HEAT_MM))
        .sort((a, b) => a.gapMm - b.gapMm)[0];
      if (!near) return [];
      return [
        {
          outcome: 'advice' as const,
          messageId: 'near' as const,
          subjectId: accessory.id,
          origin: 'scheme' as const,
          ...figures(near.gapMm, HEAT_MM, 'mm', { kind: near.kind }),
        },
      ];
    }),
});
