import { listed, pounds } from '#engine/quotation/said.ts';
import { counted } from '#engine/rules/counted.ts';
import { kindOrder, type MatterKind } from '#engine/schemes/outcomes/open-matter.ts';
import type { OutcomePlan, OutcomeQuestion } from '#engine/schemes/outcomes/outcome-plan.ts';
import { kitWords } from './kit-words.ts';

/** What a list does not serve, because nobody has looked at it and nobody said to buy for it. */
export interface StillOpen {
  /** "Still open: 2 boxes. … costs £3.36 more." Empty where nothing is open. */
  readonly words: string;
  /** What may be needed and is not on the list, a question a line, in the order of the plan. */
  readonly lines: readonly string[];
}

/** A list that nothing is open for, or of which nobody asked. */
export const nothingOpen: StillOpen = { words: '', lines: [] };

const kindWords: Readonly<Record<MatterKind, readonly [one: string, many: string]>> = {
  box: ['box', 'boxes'],
  spur: ['start of a cable', 'starts of cables'],
  rcd: ['RCD', 'RCDs'],
  rcbo: ['RCBO', 'RCBOs'],
  surge: ['surge device', 'surge devices'],
  floor: ['floor', 'floors'],
};

const notServed = ({ outcomes }: OutcomeQuestion): OutcomeQuestion['outcomes'] =>
  outcomes.filter(({ isServed }) => !isServed);

/** What a plan leaves open, in words; which of the schemes is carried out is not asked here. */
export function stillOpenOf({
  questions,
  openPence,
  openUnpriced,
}: Pick<OutcomePlan, 'questions' | 'openPence' | 'openUnpriced'>): StillOpen {
  const open = questions.filter((question) => question.kind !== 'scheme' && notServed(question).length > 0);
  if (open.length === 0) return nothingOpen;
  return {
    words: `Still open: ${countsOf(open)}. This list serves ${open.length === 1 ? 'it' : 'them'} only as chosen; to have the kit along for every outcome ${costs(openPence, openUnpriced)}.`,
    lines: open.map(lineOf),
  };
}

function countsOf(open: readonly OutcomeQuestion[]): string {
  const kinds = kindOrder.filter((kind) => open.some((one) => one.kind === kind));
  return listed(
    kinds.map((kind) => counted(open.filter((one) => one.kind === kind).length, ...kindWords[kind])),
  );
}

function costs(pence: number, unpriced: number): string {
  if (unpriced === 0) return pence > 0 ? `costs ${pounds(pence)} more` : 'costs no more';
  const beside = `${counted(unpriced, 'thing')} that the price list does not hold`;
  return pence > 0 ? `costs ${pounds(pence)} more, and ${beside}` : `costs what is asked for ${beside}`;
}

function lineOf(question: OutcomeQuestion): string {
  const outcomes = notServed(question).map(({ words, kit }) => {
    const { more } = kitWords(kit);
    return more === '' ? words : `${words}, which takes ${more}`;
  });
  return `${question.words} Not on this list: ${outcomes.join('; or ')}.`;
}
