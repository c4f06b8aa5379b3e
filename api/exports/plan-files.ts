import { storeyDraft } from '#drawing/draft/storey-draft.ts';
import { type PlanRequest, planScene, type StoreyToDraw, storeysToDraw } from '#drawing/plan/plan-scene.ts';
import { svgOf } from '#drawing/svg.ts';
import { dxfFile } from './dxf/dxf-file.ts';
import { fileWord } from './file-word.ts';
import type { Papers } from './papers.ts';
import { sheetsPdf } from './plan/plan-pdf.ts';

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

/** What plans are made of. */
type PlanPapers = Pick<Papers, 'drawn' | 'shown' | 'state' | 'demoNote'>;

/** The storeys, those with something to draw first. */
const storeysInOrder = ({ shown }: PlanPapers): readonly StoreyToDraw[] =>
  storeysToDraw(shown).toSorted((a, b) => Number(a.isEmpty) - Number(b.isEmpty));

const requestFor = ({ drawn, shown, state, demoNote }: PlanPapers, storeyId: string): PlanRequest => ({
  ...drawn,
  worked: shown.worked,
  findings: shown.findings,
  storeyId,
  schemeName: shown.name,
  state,
  demoNote,
});

/**
 * One plan a storey, at least one, those with something to draw first: the first as wiring-plan.svg, each other by its
 * storey's name. Each as a sheet, and as a drawing for drafting programs.
 */
export function planFiles(papers: PlanPapers): readonly PlanFile[] {
  const used = new Set<string>();
  return storeysInOrder(papers).map((storey, i) => {
    const plain = fileWord(storey.name, 'storey');
    const word = used.has(plain) ? `${plain}-${i + 1}` : plain;
    used.add(word);
    const base = i === 0 ? 'wiring-plan' : `wiring-plan-${word}`;
    const request = requestFor(papers, storey.id);
    return {
      storeyId: storey.id,
      storeyName: storey.name,
      isEmpty: storey.isEmpty,
      name: `${base}.svg`,
      svg: () => svgOf(planScene(request)),
      dxfName: `${base}.dxf`,
      dxf: () => dxfFile(storeyDraft(request)),
    };
  });
}

/** The plans of all storeys that have something to draw as one PDF, a page each; of a job with nothing to draw the one sheet that says so. */
export function planPdf(papers: PlanPapers): Promise<Uint8Array> {
  const { title, date } = papers.drawn;
  const [first, ...rest] = storeysInOrder(papers);
  const storeys = [...(first === undefined ? [] : [first]), ...rest.filter(({ isEmpty }) => !isEmpty)];
  const sheets = storeys.map(({ id }) => planScene(requestFor(papers, id)));
  return sheetsPdf({ title: `${title}: wiring plan`, date, sheets });
}
