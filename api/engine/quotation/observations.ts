import type { Finding } from '../rules/finding.ts';
import type { SchemeEstimate } from '../schemes/estimate-result.ts';
import type { OptionLetter, QuotedExtra } from './document.ts';
import { type Offered, optionWords, sumsSaid } from './offered.ts';
import { pounds } from './said.ts';

/** Something of the house that is not what was asked for, in the customer's words. */
interface Told {
  /** Rules and messages that say it. */
  readonly findings: readonly string[];
  readonly words: string;
  readonly remedy: string;
}

/** What a customer is told of; in this order, the gravest first. */
const told: readonly Told[] = [
  {
    findings: ['ST3 unsafe'],
    words: 'The fuse box, or where the supply comes in, is dangerous as it is.',
    remedy: 'It has to be put right before we add anything.',
  },
  {
    findings: ['ST1 absent'],
    words: 'We found no earth connection. In a fault, metal parts could become live and stay so.',
    remedy: 'It has to be put right before we add anything.',
  },
  {
    findings: ['ST2 missing', 'ST2 gasNotTold', 'ST2 notTold', 'ST2 nothingTold', 'ST2 assumed'],
    words:
      'A metal pipe that comes into the house may have no earth wire on it (main bonding), or we have not seen it.',
    remedy: 'We look before we start; where it is missing it has to be fitted.',
  },
  {
    findings: ['RG1 broken', 'RG1 openLoop', 'RG1 lollipop', 'RG1 interconnected', 'RG1 loopsDiffer'],
    words: 'The loop of cable that feeds your sockets is not whole, or is joined up wrongly.',
    remedy: 'It has to be found and mended before we add anything.',
  },
  {
    findings: ['SC5 perished', 'SC5 noCpc'],
    words: 'Some of the cable in the house is of an old kind that has reached its end, or has no earth wire.',
    remedy: 'It should be renewed.',
  },
  {
    findings: ['SU3 small', 'SU4 small'],
    words: 'An earth wire at the supply or to a pipe is thinner than is asked for today.',
    remedy: 'It can be renewed.',
  },
  {
    findings: ['SU2 over'],
    words: 'Everything in the house together may draw more than the main fuse carries.',
    remedy: 'Ask the company that owns the cable in the street for a larger one, or use less at once.',
  },
  {
    findings: ['RC2 foundAC'],
    words:
      'The cut-out (RCD) that these sockets are behind is of an older type (AC), which may not act with some modern electronics.',
    remedy: 'It can be changed for one of the type made for sockets today (A).',
  },
  {
    findings: ['ST3 worn'],
    words: 'The fuse box is old or worn, though not dangerous.',
    remedy: 'Think of a new one in the coming years.',
  },
  {
    findings: ['LS2 near', 'LS1 atOnce'],
    words:
      'If several heavy appliances run at the same time for long, one stretch of cable carries more than it is meant to.',
    remedy: 'Do not run them all at once for long; or ask us about a circuit of their own.',
  },
  {
    findings: ['PR1 recommended', 'PR1 foundWithout', 'PR1 newWithout', 'PR1 newUnknown'],
    words:
      'There are devices that cut the power when a damaged cable or a bad contact sparks (arc fault detection). They help against fires.',
    remedy: 'One can be fitted if your fuse box takes it.',
  },
  {
    findings: ['PR2 offer', 'PR2 newBoard'],
    words: 'There are devices that keep surges, as from lightning, from your appliances (surge protection).',
    remedy: 'One can be fitted; tell us if you want it, or that you do not.',
  },
  {
    findings: ['PR2 wanted'],
    words:
      'You would like surge protection. The fuse box stays, and whether it takes such a device is for its maker to say: it is not in this price.',
    remedy: 'We ask the maker and price it for you.',
  },
];

const keyOf = ({ rule, messageId }: Finding): string => `${rule} ${messageId}`;
const known: ReadonlySet<string> = new Set(told.flatMap(({ findings }) => findings));

const open = (scheme: SchemeEstimate): readonly Finding[] =>
  scheme.findings.filter(({ outcome }) => outcome !== 'passes');

/** The dearest of what the remedies of these findings add: one of them serves for several that name the same. */
function addedPence(findings: readonly Finding[]): number | null {
  const sums = findings.flatMap(({ consequencePence }) =>
    consequencePence === null ? [] : [consequencePence],
  );
  return sums.length === 0 ? null : Math.max(...sums);
}

/** One line for the options in which something was found. */
function extraOf(
  offered: readonly Offered[],
  words: Pick<Told, 'words' | 'remedy'>,
  isIt: (finding: Finding) => boolean,
): readonly QuotedExtra[] {
  const of = offered.flatMap(({ letter, scheme }) => {
    const findings = open(scheme).filter(isIt);
    return findings.length === 0 ? [] : [{ letter, grossPence: addedPence(findings) }];
  });
  if (of.length === 0) return [];
  const letters = of.map(({ letter }): OptionLetter => letter);
  const sums = of.flatMap(({ letter, grossPence }) => (grossPence === null ? [] : [{ letter, grossPence }]));
  const known = sumsSaid(sums, offered, pounds);
  return [
    {
      ...words,
      forOptions: optionWords(letters, offered),
      sums,
      sumWords: known === '' ? 'priced when you ask' : `adds ${known}`,
    },
  ];
}

/** Failures of what was there before that have no customer's words of their own: as the check says them. */
function untold(offered: readonly Offered[]): readonly QuotedExtra[] {
  const rest = offered.flatMap(({ scheme }) =>
    open(scheme).filter(
      (finding) => finding.origin === 'found' && finding.outcome === 'fails' && !known.has(keyOf(finding)),
    ),
  );
  return [...new Set(rest.map(({ message }) => message))].flatMap((message) => {
    const remedy = rest.find((finding) => finding.message === message)?.remedy ?? 'To be put right.';
    return extraOf(offered, { words: message, remedy }, (finding) => finding.message === message);
  });
}

/** What was found or can be had beside the work, with what the engine knows it to add to each option. */
export const observationsOf = (offered: readonly Offered[]): readonly QuotedExtra[] => [
  ...told.flatMap(({ findings, words, remedy }) =>
    extraOf(offered, { words, remedy }, (finding) => findings.includes(keyOf(finding))),
  ),
  ...untold(offered),
];

/** The messages of rules that have words for customers: for the test that holds them against the rules. */
export const toldMessages: readonly string[] = [...known];
