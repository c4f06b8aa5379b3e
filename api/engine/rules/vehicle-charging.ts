import type { Point } from '#model/installation.ts';
import { rule } from './rule.ts';

/** Vehicle charging has rules of its own, which are not checked here. */
export const vehicleCharging = rule({
  id: 'SC1',
  title: 'Vehicle charging',
  source: 'BS 7671 722',
  messages: {
    outOfScope:
      'The load “{actual}” reads like vehicle charging, which has a section of its own and is out of scope here.',
  },
  remedies: {
    outOfScope: 'Design it on its own, with its own circuit; do not charge a vehicle from an added outlet.',
  },
  couldFail: false,
  check: ({ job }) =>
    job.points
      .filter((point) => point.status === 'wanted' && isForVehicle(point))
      .map(({ id, label, load }) => ({
        outcome: 'decide' as const,
        messageId: 'outOfScope' as const,
        subjectId: id,
        origin: 'scheme' as const,
        actual: load?.use ?? label,
      })),
});

/** Words by which people name it; a plain `charger` is asked about rather than let through. */
function isForVehicle({ label, load }: Point): boolean {
  return /\b(evs?|evse|vehicles?|chargers?|charge ?points?|(car|van) charging)\b/i.test(
    `${label} ${load?.use ?? ''}`,
  );
}
