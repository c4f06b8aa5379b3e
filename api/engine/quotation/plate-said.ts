import type { Point } from '#model/installation.ts';
import type { Terms } from '#model/job.ts';
import { type PlateFinish, plateFinish } from '../connections/finish.ts';
import type { NewAccessory } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import { listed } from './said.ts';

/** What a plate is of, before its noun: `black metal plates`. */
const finishSaid: Readonly<Record<PlateFinish, string>> = {
  white: 'white plastic',
  brushed: 'brushed metal',
  polished: 'polished metal',
  black: 'black metal',
  metal: 'metal',
};

/** What is weatherproof is of plastic in the colour that its maker gives it. */
const WEATHERPROOF = 'weatherproof plastic';

/** What follows where a metal was asked for and nobody chose how it looks. */
const lookOpen = (finish: PlateFinish): string => (finish === 'metal' ? ', its look to be agreed' : '');

/**
 * What the plate of a wanted point is of, as it will be fitted: `black metal`. Null for a joint, which has no plate.
 *
 * @param job the job's terms, and `firm` the firm's: who of them has said how plates look (`plateFinish`).
 */
export function plateOfPoint(
  point: Pick<Point, 'kind' | 'finish' | 'features'>,
  job: Pick<Terms, 'finish'>,
  firm: Pick<Terms, 'finish'>,
): string | null {
  if (point.kind === 'joint') return null;
  if (point.features.includes('ip66')) return WEATHERPROOF;
  const finish = plateFinish(point, job, firm);
  return finishSaid[finish] + lookOpen(finish);
}

/** What the plate of something that a scheme fits is of. */
function plateFitted({ features, finish }: NewAccessory): string {
  if (features.includes('ip66')) return WEATHERPROOF;
  return finishSaid[finish ?? (features.includes('metal') ? 'metal' : 'white')];
}

/**
 * The plates that a scheme fits, by what they are of: `white plastic plates`, or where there are several
 * `plates in black metal (W1 and W2) and white plastic (W3)`, in the job's order of points, a unit of no point last.
 *
 * @returns null where it fits none.
 */
export function platesSaid({ job, things }: Pick<Worked, 'job' | 'things'>): string | null {
  const order = new Map(job.points.map(({ id }, at) => [id, at]));
  const at = ({ pointId }: NewAccessory): number => order.get(pointId ?? '') ?? job.points.length;
  const byFinish = new Map<string, Set<string>>();
  for (const accessory of things.accessories.toSorted((a, b) => at(a) - at(b))) {
    const words = plateFitted(accessory);
    const label = job.points[at(accessory)]?.label ?? 'the new fuse';
    byFinish.set(words, (byFinish.get(words) ?? new Set()).add(label));
  }
  const [only, ...more] = byFinish.keys();
  if (only === undefined) return null;
  if (more.length === 0) return `${only} plates`;
  return `plates in ${listed([...byFinish].map(([words, labels]) => `${words} (${listed([...labels])})`))}`;
}
