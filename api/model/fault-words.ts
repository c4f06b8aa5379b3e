import type { Flaw } from './fault.ts';
import { pathWords } from './path-words.ts';
import { foundWords, kindWords, listWords, quoted } from './value-words.ts';

interface Words {
  readonly message: string;
  readonly remedy: string;
}

type FlawOf<Code extends Flaw['code']> = Extract<Flaw, { code: Code }>;

const MOST_CHOICES = 12;

const words: { readonly [Code in Flaw['code']]: (flaw: FlawOf<Code>) => Words } = {
  missing: ({ path, expected }) => ({
    message: `${quoted(String(path.at(-1) ?? ''))} is missing`,
    remedy: `Add it: ${expected}`,
  }),
  'wrong-type': ({ expected, found }) => ({
    message: `found ${found}, where ${expected} belongs`,
    remedy: `Put ${expected} there`,
  }),
  'unknown-key': ({ path, allowed, meant }) => ({
    message: `${quoted(String(path.at(-1) ?? ''))} is not a key that belongs here`,
    remedy:
      meant === undefined
        ? `Take it out; the keys here are ${allowed.join(', ')}`
        : `Rename it to ${quoted(meant)}`,
  }),
  'unknown-value': ({ allowed, found, meant }) => ({
    message: `found ${found}, which is not one of the allowed values`,
    remedy: `${meant === undefined ? '' : `Perhaps ${quoted(meant)} was meant; `}${meant === undefined ? 'U' : 'u'}se ${listWords(allowed.map(foundWords))}`,
  }),
  'out-of-range': ({ least, most, found }) => ({
    message: `found ${found}, which cannot be`,
    remedy: `Give a number ${rangeWords(least, most)}`,
  }),
  'not-whole': ({ found }) => ({
    message: `found ${found}, where only a whole number can be`,
    remedy: 'Give a whole number',
  }),
  'wrong-count': ({ expected, count }) => ({
    message: `found a list of ${count}, where ${expected} belongs`,
    remedy: `Make it ${expected}`,
  }),
  'wrong-length': ({ least, most, length }) => ({
    message: length === 0 ? 'found a text with nothing in it' : `found a text of ${length} characters`,
    remedy: `Give ${least} to ${most} characters`,
  }),
  'bad-id': ({ found }) => ({
    message: `found ${found}, which cannot be an id`,
    remedy: 'Use 1 to 64 characters, without spaces and without "/", here and wherever it is referred to',
  }),
  'bad-date': ({ found }) => ({
    message: `found ${found}, which is no day of the calendar`,
    remedy: 'Write it year-month-day, such as "2025-03-31"',
  }),
  'unclear-shape': ({ shapes, found }) => ({
    message: `found ${found}, which is none of the forms that belong here`,
    remedy: `Use ${listWords(shapes)}`,
  }),
  'not-allowed': ({ reason, found }) => ({
    message: `found ${found}, which is not allowed: ${reason}`,
    remedy: 'Correct it or take it out',
  }),
  'duplicate-id': ({ id, kind, first, firstKind }) => ({
    message: `the id ${quoted(id)} of this ${kind} is already that of ${kindWords([firstKind])}, at ${pathWords(first)}`,
    remedy: 'Give one of the two another id, and change whatever refers to it',
  }),
  'dangling-reference': danglingWords,
  'wrong-format': ({ format, found }) => ({
    message: `this is no Ringwright job file: found ${found}, where one says ${quoted(format)}`,
    remedy: `Open a job file, or write ${quoted(format)} here if this is one`,
  }),
  'newer-version': ({ version, current }) => ({
    message: 'this job needs a newer version',
    remedy: `Open it with a newer version of the program; the job is of version ${version}, this one reads up to ${current}`,
  }),
  'no-upgrade': ({ version, current }) => ({
    message: `found version ${version}, which no version of the program has ever written`,
    remedy: `Correct the number; this program writes version ${current}`,
  }),
  'upgrade-failed': ({ version, reason }) => ({
    message: `the job could not be brought up from version ${version}: ${reason}`,
    remedy: `Mend it with the program that wrote version ${version}, and open it again`,
  }),
};

/** A flaw in words, message and remedy both without a full stop. */
export function faultWords(flaw: Flaw): Words {
  // The table is typed by code; the compiler cannot follow that the entry and the flaw have the same one.
  const say = words[flaw.code] as (flaw: Flaw) => Words;
  return say(flaw);
}

function danglingWords({ id, kinds, instead, choices, words, meant }: FlawOf<'dangling-reference'>): Words {
  const what = kindWords(kinds);
  const found =
    instead === undefined
      ? `nothing in the job has the id ${quoted(id)}, where the id of ${what} belongs`
      : `${quoted(id)} is ${kindWords([instead.kind])} (at ${pathWords(instead.path)}), where the id of ${what} belongs`;
  const ways = meant === undefined ? [] : [`Perhaps ${quoted(meant)} was meant`];
  if (choices.length > 0) ways.push(`use the id of ${what}: ${choiceWords(choices)}`);
  if (words.length > 0)
    ways.push(`${choices.length > 0 ? 'or ' : 'use '}the word ${listWords(words.map(quoted))}`);
  ways.push(`or add the ${listWords(kinds)} that is missing`);
  return { message: found, remedy: capitalised(ways.join(', ')) };
}

function capitalised(sentence: string): string {
  return sentence.replace(/^or /, '').replace(/^./, (letter) => letter.toUpperCase());
}

function choiceWords(ids: readonly string[]): string {
  const shown = ids.slice(0, MOST_CHOICES).join(', ');
  return ids.length > MOST_CHOICES ? `${shown} and ${ids.length - MOST_CHOICES} more` : shown;
}

function rangeWords(least: FlawOf<'out-of-range'>['least'], most: FlawOf<'out-of-range'>['most']): string {
  const parts: string[] = [];
  if (least) parts.push(least.inclusive ? `of ${least.limit} or more` : `more than ${least.limit}`);
  if (most) parts.push(most.inclusive ? `up to ${most.limit}` : `less than ${most.limit}`);
  return parts.join(' and ');
}
