import type { Segment } from '../ways/run.ts';
import { distanceToFixtureMm, rangeGapMm } from './clearance.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { rule } from './rule.ts';

/** Least distance from a gas pipe of up to 35 mm to a cable, mm. Source: BS 6891; the larger pipe asks for 50. */
export const GAS_TO_CABLE_MM = 25;

/** Cable keeps away from gas pipes. */
export const gasCable = rule({
  id: 'RT12',
  title: 'Cable and gas pipes',
  source: 'BS 6891',
  messages: {
    clear:
      'The nearest gas pipe drawn is {actual} mm away; {limit} mm is asked for (50 mm from pipes over 35 mm).',
    near: 'The run comes within {actual} mm of a gas pipe; {limit} mm is asked for unless an insulating barrier parts them.',
  },
  remedies: { near: 'Move the run, or put an insulating barrier between; 50 mm from pipes over 35 mm.' },
  couldFail: false,
  check: (facts) =>
    facts.runs.flatMap((run) => {
      const gaps = run.segments.flatMap((segment) => gasGapsMm(facts, segment));
      if (gaps.length === 0) return [];
      const nearestMm = Math.min(...gaps);
      const near = nearestMm < GAS_TO_CABLE_MM;
      return [
        {
          outcome: near ? ('decide' as const) : ('passes' as const),
          messageId: near ? ('near' as const) : ('clear' as const),
          subjectId: run.id,
          origin: 'scheme' as const,
          ...figures(nearestMm, GAS_TO_CABLE_MM, 'mm'),
        },
      ];
    }),
});

/** A pipe whose heights are not told may be at any height. */
function gasGapsMm(facts: Facts, segment: Segment): readonly number[] {
  return facts.plan.fixtures
    .filter(({ fixture }) => fixture.kind === 'gas-pipe' || fixture.kind === 'gas-meter')
    .filter(({ storeyId }) => storeyId === segment.from.storeyId)
    .map(({ fixture }) => {
      const { from, to } = segment;
      const acrossMm = distanceToFixtureMm({ from: from.at, to: to.at }, fixture);
      const [lowMm, highMm] = [Math.min(from.heightMm, to.heightMm), Math.max(from.heightMm, to.heightMm)];
      const upMm = rangeGapMm(
        lowMm,
        highMm,
        fixture.fromMm ?? Number.NEGATIVE_INFINITY,
        fixture.toMm ?? Number.POSITIVE_INFINITY,
      );
      return Math.hypot(acrossMm, upMm);
    });
}
