import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { papersOf } from '#exports/papers.ts';
import { planFiles } from '#exports/plan-files.ts';
import { demoEstimate, demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';

/** The greatest of some figures, to a thousandth; null where none is known. */
function most(figures: readonly (number | null)[]): number | null {
  const known = figures.filter((figure) => figure !== null);
  return known.length === 0 ? null : Math.round(Math.max(...known) * 1000) / 1000;
}

/** The few figures of each demo scheme whose movement should be noticed and explained. */
function figuresOf(name: (typeof demoNames)[number]) {
  return demoEstimate(name).schemes.map((scheme) => ({
    id: scheme.id,
    complies: scheme.complies,
    totals: scheme.totals,
    range: scheme.range,
    runs: Object.fromEntries(scheme.runs.map((run) => [run.id, run.lengthMm])),
    proof: Object.fromEntries(scheme.proof.map(({ circuit, points }) => [circuit, { dropV: most(points.map(({ dropV }) => dropV)), zsHotOhm: most(points.map(({ zsHotOhm }) => zsHotOhm)) }])),
    fails: scheme.findings.filter((finding) => finding.outcome === 'fails').map((finding) => `${finding.rule} ${finding.messageId} ${finding.subject}`),
  }));
}

/** Our own output: the demo jobs' figures as JSON text, and the picture that the README shows. */
export function golden(): { readonly figures: string; readonly picture: string } {
  const figures = Object.fromEntries(demoNames.map((name) => [name, figuresOf(name)]));
  const papers = papersOf(demoJob('saltglass-row'), demoLibrary(), { date: '2026-11-25', revision: 1, schemeId: 'spurs-rcbo' });
  const plan = papers === null ? undefined : planFiles(papers).find(({ storeyId }) => storeyId === 'first-flr1');
  if (plan === undefined) throw new Error('The picture has no plan.');
  return { figures: `${JSON.stringify(figures, null, 2)}\n`, picture: plan.svg() };
}
