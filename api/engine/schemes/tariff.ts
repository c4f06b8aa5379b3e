import type { Medium } from '#model/cable.ts';
import type { Library } from '#model/library.ts';
import type { Tariff } from '../ways/run.ts';

/** The norm whose minutes a metre of each medium costs, and whether it is made good afterwards. */
const tasks: Readonly<Record<Medium, readonly string[]>> = {
  'void-along': ['thread-cable'],
  'void-across': ['thread-cable', 'drill-joist'],
  'void-open': ['thread-cable'],
  'wall-chase': ['chase-block', 'contain-chase', 'fill-chase'],
  'stud-cavity': ['thread-cable'],
  'surface-clipped': ['clip-cable'],
  'surface-channel': ['fit-channel'],
  'through-wall': ['drill-wall'],
  riser: ['thread-cable'],
  loft: ['thread-cable'],
  buried: ['dig-trench'],
  outside: ['clip-cable'],
};

/**
 * What a metre of way costs by its medium, from the library's norms at its rate: the costs that the ways
 * stage weighs, which knows no prices itself. A task without a norm weighs nothing.
 */
export function tariffOf(library: Library): Tariff {
  const minutes = new Map(library.norms.tasks.map((norm) => [norm.task, norm.typicalMin]));
  const entries = Object.entries(tasks).map(
    ([medium, names]) => [medium, names.reduce((sum, name) => sum + (minutes.get(name) ?? 0), 0)] as const,
  );
  const minutesPerM = Object.fromEntries(entries) as Record<Medium, number>;
  const pencePerM = Object.fromEntries(
    entries.map(([medium, min]) => [medium, Math.round((min * library.norms.ratePencePerHour) / 60)]),
  ) as Record<Medium, number>;
  return { minutesPerM, pencePerM };
}
