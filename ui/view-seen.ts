import type { JobView } from './job-view.ts';

/** What plan, price and checks show: a found scheme that is tried stands there in place of the shown one. */
export const viewSeen = (view: JobView): JobView =>
  view.ways.tried === null ? view : { ...view, scheme: view.ways.tried };
