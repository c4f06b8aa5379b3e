import type { Finish, Point } from '#model/installation.ts';
import type { Terms } from '#model/job.ts';

/** What a plate is of: `metal` is a metal plate of which nobody chose how it looks. */
export type PlateFinish = Finish | 'metal';

/**
 * The finish of an accessory that is fitted: the point's own, else the metal that the point was said to be of, else the
 * job's, else the firm's, else white moulded. What is weatherproof is of plastic, whatever was chosen.
 *
 * @param point null for a unit that a connection brings along: it goes by the job's.
 * @param firm null or silent: white moulded.
 */
export function plateFinish(
  point: Pick<Point, 'finish' | 'features'> | null,
  job: Pick<Terms, 'finish'>,
  firm: Pick<Terms, 'finish'> | null,
): PlateFinish {
  if (point?.features.includes('ip66') === true) return 'white';
  if (point?.finish !== undefined) return point.finish;
  return point?.features.includes('metal') === true ? 'metal' : (job.finish ?? firm?.finish ?? 'white');
}

/** What an accessory has because of its finish, in place of what was said of metal: a metal plate wants more of its box. */
export const withFinish = (features: readonly string[], finish: PlateFinish): readonly string[] => [
  ...features.filter((feature) => feature !== 'metal'),
  ...(finish === 'white' ? [] : ['metal']),
];
