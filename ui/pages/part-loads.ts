import type { JobRoute } from '../controllers/router.ts';
import type { Step } from '../job-view.ts';

/** Has the files of a part fetched, for every part that the first page, the list of jobs, does without: in the order in which they come by themselves. */
export const partLoads = {
  job: () => import('./job-page.ts'),
  'as-found': () => import('../elements/as-found/as-found-step.ts'),
  wanted: () => import('../elements/wanted/wanted-step.ts'),
  ways: () => import('../elements/ways/ways-step.ts'),
  kit: () => import('../elements/kit/kit-step.ts'),
  price: () => import('../elements/price/price-step.ts'),
  papers: () => import('../elements/papers/papers-step.ts'),
  compare: () => import('../elements/ways/compare-view.ts'),
  firm: () => import('./firm-page.ts'),
  people: () => import('./people-page.ts'),
  account: () => import('./account-page.ts'),
  archives: () => Promise.all([import('#archive/read-archive.ts'), import('#archive/write-archive.ts')]),
};

/** The part that a job's page shows beside the plan. */
export const partOf = ({ step, compare }: Pick<JobRoute, 'step' | 'compare'>): Step | 'compare' =>
  compare ? 'compare' : step;

/** Whether a page is a part. */
export const isPart = (page: string): page is keyof typeof partLoads => Object.hasOwn(partLoads, page);
