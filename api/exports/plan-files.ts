import { storeyDraft } from '#drawing/draft/storey-draft.ts';
import { planScene, storeysToDraw } from '#drawing/plan/plan-scene.ts';
import { svgOf } from '#drawing/svg.ts';
import { dxfFile } from './dxf/dxf-file.ts';
import { fileWord } from './file-word.ts';
import type { Papers } from './papers.ts';

/** The plan of one storey, by the name of its file; drawn only when asked for. */
export interface PlanFile {
  /** Empty when the job has no storey. */
  readonly storeyId: string;
  readonly storeyName: string;
  readonly name: string;
  /** True where there is nothing to draw: the sheet says so. */
  readonly isEmpty: boolean;
  readonly svg: () => string;
  /** The same for drafting programs, in millimetres of the house. */
  readonly dxfName: string;
  readonly dxf: () => string;
}

/**
 * One plan a storey, at least one, those with something to draw first: the first as wiring-plan.svg, each other by its
 * storey's name. Each as a sheet, and as a drawing for drafting programs.
 */
export function planFiles({
  drawn,
  shown,
  state,
  demoNote,
}: Pick<Papers, 'drawn' | 'shown' | 'state' | 'demoNote'>): readonly PlanFile[] {
  const used = new Set<string>();
  const storeys = storeysToDraw(shown).toSorted((a, b) => Number(a.isEmpty) - Number(b.isEmpty));
  return storeys.map((storey, i) => {
    const plain = fileWord(storey.name, 'storey');
    const word = used.has(plain) ? `${plain}-${i + 1}` : plain;
    used.add(word);
    const base = i === 0 ? 'wiring-plan' : `wiring-plan-${word}`;
    const request = {
      ...drawn,
      worked: shown.worked,
      storeyId: storey.id,
      schemeName: shown.name,
      state,
      demoNote,
    };
    return {
      storeyId: storey.id,
      storeyName: storey.name,
      isEmpty: storey.isEmpty,
      name: `${base}.svg`,
      svg: () => svgOf(planScene({ ...request, findings: shown.findings })),
      dxfName: `${base}.dxf`,
      dxf: () => dxfFile(storeyDraft(request)),
    };
  });
}
