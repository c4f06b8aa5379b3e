import { storeyDraft } from '#drawing/draft/storey-draft.ts';
import type { PlanRequest } from '#drawing/plan/plan-scene.ts';
import { type PlanSheet, planSheets } from '#drawing/plan/plan-sheets.ts';
import type { SheetName } from '#drawing/plan/sheet-layout.ts';
import { type StoreyToDraw, storeysToDraw } from '#drawing/plan/storeys-to-draw.ts';
import { svgOf } from '#drawing/svg.ts';
import { MAKER } from '#engine/engine-version.ts';
import { cautionsOf } from '#engine/work/cautions-of.ts';
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
  /** Its lists that have no room beside it, a sheet a file, by the numbers of the sheets; none where all stand beside it. */
  readonly lists: () => readonly { readonly name: string; readonly svg: string }[];
  /** The same for drafting programs, in millimetres of the house. */
  readonly dxfName: string;
  readonly dxf: () => string;
}

/** What plans are made of. */
export type PlanPapers = Pick<Papers, 'drawn' | 'shown' | 'status' | 'state' | 'demoNote' | 'firm'>;

/** The storeys, those with something to draw first. */
const storeysInOrder = ({ shown }: PlanPapers): readonly StoreyToDraw[] =>
  storeysToDraw(shown).toSorted((a, b) => Number(a.isEmpty) - Number(b.isEmpty));

/** Those of a set of sheets: all that have something to draw, or the first, which says that there is nothing. */
const storeysOfSet = (papers: PlanPapers): readonly StoreyToDraw[] =>
  storeysInOrder(papers).filter(({ isEmpty }, i) => i === 0 || !isEmpty);

/** A drawing as a file, which says what made it where only programs look. */
const signed = (svg: string): string => svg.replace(/>/, `><!-- ${MAKER} -->`);

function requestFor(papers: PlanPapers, paper: SheetName | undefined): Omit<PlanRequest, 'storeyId'> {
  const { drawn, shown, status, state, demoNote, firm } = papers;
  return {
    ...drawn,
    cautions: cautionsOf(shown.worked).map(({ short }) => short),
    ...{
      worked: shown.worked,
      findings: shown.findings,
      schemeName: shown.name,
      status,
      state,
      demoNote,
      firm,
    },
    ...(paper === undefined ? {} : { paper }),
  };
}

function setOf(papers: PlanPapers, paper: SheetName | undefined): readonly PlanSheet[] {
  const ids = storeysOfSet(papers).map(({ id }) => id);
  return planSheets(requestFor(papers, paper), ids);
}

/**
 * One plan a storey, at least one, those with something to draw first: the first as wiring-plan.svg, each other by its
 * storey's name. Each as a sheet with the sheets of its lists, and as a drawing for drafting programs.
 *
 * @param paper that all sheets are to be on; absent: as each plan asks.
 */
export function planFiles(papers: PlanPapers, paper?: SheetName): readonly PlanFile[] {
  const used = new Set<string>();
  let drawn: readonly PlanSheet[] | null = null;
  const sheets = (): readonly PlanSheet[] => {
    drawn ??= setOf(papers, paper);
    return drawn;
  };
  const sheetOf = (storeyId: string): PlanSheet | undefined => {
    const own = sheets().find((sheet) => sheet.storeyId === storeyId && sheet.isPlan);
    return own ?? planSheets(requestFor(papers, paper), [storeyId])[0];
  };
  return storeysInOrder(papers).map((storey, i) => {
    const plain = fileWord(storey.name, 'storey');
    const word = used.has(plain) ? `${plain}-${i + 1}` : plain;
    used.add(word);
    const base = i === 0 ? 'wiring-plan' : `wiring-plan-${word}`;
    return {
      storeyId: storey.id,
      storeyName: storey.name,
      isEmpty: storey.isEmpty,
      name: `${base}.svg`,
      svg: () => {
        const sheet = sheetOf(storey.id);
        if (sheet === undefined) throw new Error(`The storey "${storey.id}" has no sheet.`);
        return signed(svgOf(sheet.scene));
      },
      lists: () =>
        sheets().flatMap(({ storeyId, isPlan, scene }, index) =>
          isPlan || storeyId !== storey.id
            ? []
            : [{ name: `wiring-plan-sheet-${index + 1}.svg`, svg: signed(svgOf(scene)) }],
        ),
      dxfName: `${base}.dxf`,
      dxf: () => dxfFile(storeyDraft({ ...requestFor(papers, paper), storeyId: storey.id })),
    };
  });
}

/** The sheets of a scheme's plans in order, as scenes. */
export const planScenes = (papers: PlanPapers, paper?: SheetName): readonly PlanSheet['scene'][] =>
  setOf(papers, paper).map(({ scene }) => scene);

/**
 * The plans of all storeys that have something to draw as one PDF, a sheet a page, each followed by the lists that have no room beside it;
 * of a job with nothing to draw the one sheet that says so.
 *
 * @param paper that all plans are to be on; absent: as each asks.
 */
export function planPdf(papers: PlanPapers, paper?: SheetName): Promise<Uint8Array> {
  const { title, date } = papers.drawn;
  return sheetsPdf({ title: `${title}: wiring plan`, date, sheets: planScenes(papers, paper) });
}
