import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { planScene } from '#drawing/plan/plan-scene.ts';
import { svgOf } from '#drawing/svg.ts';
import { demoMarks, demoNotice } from '#engine/demo-marks.ts';
import { stateTag } from '#engine/state-tag.ts';
import { demoEstimate, demoNames, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

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
  const estimate = demoEstimate('saltglass-row');
  const scheme = schemeOf(estimate, 'spurs-rcbo');
  const scene = planScene({ ...estimate, worked: scheme.worked, storeyId: 'first-flr1', findings: scheme.findings, schemeName: scheme.name, state: stateTag(scheme.worked.job), demoNote: demoNotice(demoMarks(demoLibrary())) });
  return { figures: `${JSON.stringify(figures, null, 2)}\n`, picture: svgOf(scene) };
}
