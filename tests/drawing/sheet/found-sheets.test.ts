import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import type { Scene, Shape } from '#drawing/scene.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import { floorPlaces } from '#engine/work/floors/floor-places.ts';
import { referencesOf } from '#engine/work/references.ts';
import { type Papers, papersOf } from '#exports/papers.ts';
import { planScenes } from '#exports/plan-files.ts';
import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { faultsOnPaper } from './sheet-faults.ts';

type Text = Extract<Shape, { kind: 'text' }>;

const textsOf = (shapes: readonly Shape[]): readonly Text[] =>
  shapes.flatMap((shape) =>
    shape.kind === 'group' ? textsOf(shape.shapes) : shape.kind === 'text' ? [shape] : [],
  );

/** What is lettered on plans, and what is said in their lists, row after row. */
function lettered(scenes: readonly Scene[]): { readonly drawn: readonly string[]; readonly told: string } {
  const texts = (isList: boolean): readonly string[] =>
    scenes.flatMap(({ layers }) =>
      layers
        .filter(({ name }) => (name === 'words') === isList)
        .flatMap(({ shapes }) => textsOf(shapes).map(({ text }) => text)),
    );
  const rows = texts(true).join(' ');
  const [, after = ''] = rows.split('Not marked for want of room');
  return { drawn: texts(false), told: rows.includes('Not marked') ? after : '' };
}

/** The marks that a scheme's plans owe: points, new cables, joints and units, joists and boards. */
function owed({ shown: { worked } }: Papers): readonly string[] {
  const references = referencesOf(worked);
  const floors = floorPlaces(worked);
  const placed = worked.job.points.filter(
    ({ id, kind }) => kind !== 'joint' && worked.plan.positionOfPoint.has(id),
  );
  const things = [...worked.things.joints, ...worked.things.fusedUnits].filter(
    (thing) => thing.position !== null && !('pointId' in thing && thing.pointId !== null),
  );
  return [
    ...placed.map(({ label }) => label),
    ...worked.runs.filter(({ segments }) => segments.length > 0).map(({ id }) => references.cable(id)),
    ...things.map(({ id }) => references.place(id)),
    ...[...floors.boards, ...floors.joists].map(({ mark }) => mark),
  ];
}

const isMarked = (mark: string, { drawn, told }: ReturnType<typeof lettered>): boolean =>
  drawn.some((text) => text === mark || text.startsWith(`${mark} `)) || told.includes(mark);

describe.each(demoNames)('the sheets of every way found for %s', (name) => {
  const job = demoJob(name);
  const { schemes } = findSchemes(job, demoLibrary());
  const sets = schemes.flatMap(({ scheme }) => {
    const when = { date: '2026-11-27', revision: 1, schemeId: scheme.id };
    const papers = papersOf({ ...job, schemes: [scheme] }, demoLibrary(), when);
    if (papers === null) throw new Error('no papers');
    return (['A4', 'A3'] as const).map((paper) => ({
      of: `${scheme.id} on ${paper}`,
      papers,
      scenes: planScenes(papers, paper),
    }));
  });

  it('have no word over another, on a sign or struck out, and nothing past the frame', async () => {
    expect(sets.length).toBeGreaterThanOrEqual(100);
    expect(await faultsOnPaper(sets.flatMap(({ scenes }) => scenes))).toEqual([]);
  });

  it('mark every point, cable, joint, board and joist, or say that there was no room for it', () => {
    const silent = sets.flatMap(({ of, papers, scenes }) => {
      const seen = lettered(scenes);
      return owed(papers).flatMap((mark) => (isMarked(mark, seen) ? [] : [`${of}: ${mark}`]));
    });
    expect(silent).toEqual([]);
  });
});
