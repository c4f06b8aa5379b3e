import type { Point } from '#model/installation.ts';
import type { Choice } from '../fields/choice-field.ts';

type Unit = NonNullable<Point['unit']>;

/** Whether a fused unit has an outlet for a flex in its plate, as people choose it. */
export const flexOutletChoices: readonly Choice[] = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
];

/** What stands while nobody has said: a new unit is bought with one where no cable leaves it, as the kit counts it. */
export const flexOutletUnsaid = ({ status }: Pick<Point, 'status'>): string =>
  status === 'wanted' ? 'Automatic: one where no cable leaves it' : 'Not known';

/** What was said of a unit; null where nothing was. */
export const flexOutletSaid = ({ flexOutlet }: Unit): string | null =>
  flexOutlet === undefined ? null : flexOutlet ? 'yes' : 'no';

/** The unit with another answer; null takes it back. */
export function withFlexOutlet({ flexOutlet: _before, ...unit }: Unit, said: string | null): Unit {
  return said === null ? unit : { ...unit, flexOutlet: said === 'yes' };
}
