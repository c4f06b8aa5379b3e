import { withoutTurns } from '#engine/price/list/without-turns.ts';
import type { ShoppingEntry, ShoppingGroup } from '#engine/price/shopping/shopping-list.ts';
import { type CutList, plainMetres } from './cut-lists.ts';
import { entryMarks } from './entry-marks.ts';
import { entryNotes, entryWords, merchantWords } from './entry-words.ts';
import type { InCase } from './in-case.ts';
import { type ShoppingSheet, UNCOUNTED_TITLE } from './shopping-sheet.ts';

/** What a name holds of line ends and the like must not look like lines of the list. */
const oneLine = (words: string): string =>
  withoutTurns(words)
    .replace(/[\p{Cc}\u2028\u2029]+/gu, ' ')
    .trimEnd();

/** Lines under one another; parts of the text stand apart by an empty line. */
const text = (blocks: readonly (readonly string[])[]): string =>
  `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.map(oneLine).join('\n'))
    .join('\n\n')}\n`;

/**
 * The whole list as plain text, for whoever goes for it: with what each thing is for, what is left over, and the cut list.
 * Lines end in line feeds; what can be ticked begins with "[ ]".
 */
export function shoppingText(sheet: ShoppingSheet): string {
  const { reference, title, schemeName, date, state, list, cutLists, demoNote } = sheet;
  return text([
    [`Shopping list, ${reference}: ${title}`, schemeName, `${date}, state ${state}`],
    [sheet.stillOpen.words, ...sheet.stillOpen.lines.map((line) => `  ${line}`)].filter(
      (line) => line !== '',
    ),
    ...(list.groups.length === 0 ? [['Nothing to buy, and nothing from the van.']] : []),
    ...list.groups.map((group) => [
      group.title.toUpperCase(),
      ...group.entries.flatMap((entry) => ownLines(entry, sheet)),
    ]),
    ...(sheet.uncounted.length === 0
      ? []
      : [[UNCOUNTED_TITLE.toUpperCase(), ...sheet.uncounted.map((line) => `[ ] ${line}`)]]),
    ...goesBackBlocks(sheet),
    [...strayLines(sheet), sheet.instead.sumWords].filter((line) => line !== ''),
    [sheet.costWords, ...(demoNote === null ? [] : [demoNote])],
    ...(cutLists.length === 0 ? [] : [['CUT LIST']]),
    ...cutLists.map(cutLines),
    sheet.cautions,
  ]);
}

function ownLines(entry: ShoppingEntry, sheet: ShoppingSheet): readonly string[] {
  const under = entryNotes(entry, sheet.forWords.get(entry.key) ?? '').join('; ');
  const marks = entryMarks(entry, sheet);
  return [
    `[ ] ${entryWords(entry)}`,
    ...[...marks, under].filter((line) => line !== '').map((line) => `    ${line}`),
  ];
}

/** What was taken instead of what is on the list no longer. */
const strayLines = ({ instead: { strays } }: ShoppingSheet): readonly string[] =>
  strays.map(({ words }) => `No longer on the list. ${words}`);

/** What goes back unopened, outcome by outcome; nothing where all is as counted. */
function goesBackBlocks({ inCase: { goesBack } }: ShoppingSheet): readonly (readonly string[])[] {
  if (goesBack.length === 0) return [];
  return [
    ['WHAT CAN GO BACK UNOPENED'],
    ...goesBack.map(({ title, lines }) => [title, ...lines.map((line) => `  ${line}`)]),
  ];
}

function cutLines({ description, bars, without, nearMisses, proof }: CutList): readonly string[] {
  return [
    description,
    ...bars.flatMap(({ words, cuts, leftMm }) => [
      `  ${words}`,
      ...cuts.map(({ number, lengthMm, label }) => `    ${number}. ${plainMetres(lengthMm)}  ${label}`),
      `    ${leftMm > 0 ? `${plainMetres(leftMm)} left over` : 'nothing left over'}`,
    ]),
    ...(without.length === 0 ? [] : ['  Nothing on the price list is long enough for']),
    ...without.map(({ number, lengthMm, label }) => `    ${number}. ${plainMetres(lengthMm)}  ${label}`),
    ...[...nearMisses, proof].filter((sentence) => sentence !== '').map((sentence) => `  ${sentence}`),
  ];
}

/**
 * What is to be bought as a message to a merchant: reference, counters, what to ask for by their own numbers. Nothing of
 * the customer, of prices or of the van.
 *
 * @param had keys of the entries that are ticked already: they are left out.
 * @returns empty where nothing is left to buy.
 */
export function merchantText({ reference, list, inCase }: ShoppingSheet, had: ReadonlySet<string>): string {
  const groups = list.groups
    .filter(({ place }) => place !== 'van')
    .map((group) => ({ ...group, entries: group.entries.filter(({ key }) => !had.has(key)) }))
    .filter(({ entries }) => entries.length > 0);
  if (groups.length === 0) return '';
  return text([
    [`To collect, our reference ${reference}`],
    ...groups.map((group) => merchantLines(group, inCase)),
  ]);
}

function merchantLines({ title, place, entries }: ShoppingGroup, { back }: InCase): readonly string[] {
  const head = place === 'unlisted' ? 'Have you these, and what do they cost?' : title;
  const line = (entry: ShoppingEntry): string => {
    const theirs = merchantWords(entry);
    const ours = back.get(entry.key);
    const mark = ours === undefined ? '' : `; in case, may come back unopened: ${ours}`;
    return `- ${entryWords(entry)}${theirs === '' ? '' : ` (${theirs})`}${mark}`;
  };
  return [head, ...entries.map(line)];
}
