import type { JobView, Step } from './job-view.ts';

/** The steps that are done, by what the job holds; a step is done only where those before it are. */
export function stepsDone(view: Pick<JobView, 'job' | 'scheme'>): ReadonlySet<Step> {
  const { job, scheme } = view;
  const wanted = job.points.filter(({ status }) => status === 'wanted');
  const joinsAll =
    scheme !== null &&
    !scheme.findings.some(
      ({ rule, outcome }) => rule === 'CN2' && (outcome === 'fails' || outcome === 'not-proven'),
    );
  const marks: readonly (readonly [Step, boolean])[] = [
    ['as-found', job.circuits.length > 0 && job.points.some(({ status }) => status === 'existing')],
    ['wanted', wanted.length > 0 || job.points.some(({ status }) => status === 'replaced')],
    ['ways', joinsAll && scheme.complies === 'yes'],
    ['kit', joinsAll && scheme.price.bill.every((line) => line.priced || line.quantity === 0)],
    ['price', joinsAll && scheme.labour.every((task) => task.typicalMin !== null)],
  ];
  const firstOpen = marks.findIndex(([, done]) => !done);
  return new Set((firstOpen < 0 ? marks : marks.slice(0, firstOpen)).map(([step]) => step));
}
