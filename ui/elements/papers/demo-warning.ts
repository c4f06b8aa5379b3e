import type { DemoMarks } from '#engine/demo-marks.ts';

/** What papers carry that is the demo's still, in a sentence; null when nothing of the demo is left. */
export function demoWarning({ firm, prices, norms }: DemoMarks): string | null {
  const lists = [...(prices ? ['prices'] : []), ...(norms ? ['labour minutes and hourly rate'] : [])];
  const invented = lists.length === 0 ? '' : `invented ${lists.join(', ')}`;
  if (firm)
    return `These papers carry the demo firm’s details${invented === '' ? '' : ` and its ${invented}`}: put in your own.`;
  return invented === '' ? null : `These papers carry the demo firm’s ${invented}: put in your own.`;
}
