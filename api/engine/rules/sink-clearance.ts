import { figures } from './figures.ts';
import { fixturesNear, newAccessories, plateToFixtureMm } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** From the edge of a sink or drainer to an accessory, level, mm. Source: IET guide to the Building Regulations. */
const SINK_MM = 300;

/** Accessories keep away from taps and splashes. */
export const sinkClearance = rule({
  id: 'PO4',
  title: 'Distance from sinks',
  source: 'IET guide to the Building Regulations; not a figure of BS 7671',
  messages: {
    clear: 'The plate’s edge is {actual} mm from the nearest sink or basin.',
    near: 'The plate’s edge is {actual} mm from a sink or basin; the guidance is {limit} mm, and 1 m is preferred by some.',
  },
  remedies: { near: 'Move it along, or choose an enclosure that splashes do not enter.' },
  couldFail: false,
  check: (facts) =>
    newAccessories(facts).flatMap<CheckResult<'clear' | 'near'>>((accessory) => {
      const gaps = fixturesNear(facts, accessory, ['sink', 'basin']).map((sink) =>
        plateToFixtureMm(facts, accessory, sink),
      );
      if (gaps.length === 0) return [];
      const nearestMm = Math.min(...gaps);
      const limitMm = facts.limits.sinkClearanceMm ?? SINK_MM;
      const near = nearestMm < limitMm;
      return [
        {
          outcome: near ? 'decide' : 'passes',
          messageId: near ? 'near' : 'clear',
          subjectId: accessory.id,
          origin: 'scheme',
          ...figures(nearestMm, limitMm, 'mm'),
        },
      ];
    }),
});
