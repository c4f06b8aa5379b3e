import type { SchemeEstimate } from '../schemes/estimate-result.ts';
import type { OptionLetter, QuotedAssumption } from './document.ts';
import { type Offered, optionWords, sumsSaid } from './offered.ts';
import { wholePounds } from './said.ts';

/** What a price takes for granted: when it does, in which words, what follows otherwise, and what that may cost. */
interface Taken {
  readonly words: string;
  readonly otherwise: string;
  /** Questions of the survey whose worth is what it can move, together; absent: no sum is known. */
  readonly questions?: readonly string[];
  /** Findings that say it is taken for granted: rule and message; absent: the question alone says so. */
  readonly findings?: readonly string[];
}

const asChange = 'we show you, and agree the change and its price with you first';

/** In the order in which they are printed: what stops the work, what moves the price, what is merely hoped. */
const taken: readonly Taken[] = [
  {
    words: 'The wiring that is there is whole and passes the tests that we make before we add to it.',
    otherwise: 'the work waits; we tell you what is wrong and what mending it costs before anything is done',
    findings: [
      'RG1 unproved',
      'RG1 untold',
      'ST1 unknown',
      'ST1 assumed',
      'ST3 unknown',
      'ST4 hold',
      'ST5 hold',
      'SU4 unknown',
      'SU7 unknown',
      'ZS1 untold',
      'ZS1 noLoop',
      'VD1 untold',
      'BC1 unknown',
    ],
  },
  {
    words: 'The sockets run in the order that we expect, and those we join on to are part of the loop.',
    otherwise: `we join on at another place; if that changes the price, ${asChange}`,
    questions: ['ring-order'],
    findings: ['SP2 cablesNotSeen', 'SP3 ringNotTold', 'SP4 notTold', 'RG5 noLeg', 'TM1 notCounted'],
  },
  {
    words: 'The metal boxes behind the sockets that we join on to are deep enough for one more cable.',
    otherwise: `they are changed for deeper ones, or get a frame under the plate; ${asChange}`,
    questions: ['box-depths'],
    findings: ['BX1 assumed', 'BX1 unknown'],
  },
  {
    words: 'The floors lift where the new cables run below them.',
    otherwise: `the cable goes another way; ${asChange}`,
    questions: ['boards-liftable'],
  },
  {
    words:
      'The new cables can go the way that we expect, behind walls and below floors that nobody has opened yet.',
    otherwise: `the cable goes another way; ${asChange}`,
    questions: ['ways'],
    findings: ['RT2 depthUnknown', 'RT3 depthUnknown', 'RT3 spanUnknown'],
  },
  {
    words:
      'The new points go where they are drawn; those that are not drawn count with a typical length of cable.',
    otherwise: 'the price is worked out anew when they are settled',
    questions: ['places'],
  },
  {
    words: 'The maker of your fuse box still sells the cut-out (RCBO) that fits it.',
    otherwise: `a cut-out (RCD) is fitted in a box beside the fuse box; ${asChange}`,
    questions: ['rcbo-available'],
    findings: ['DV2 notTold', 'DV2 boardUnknown'],
  },
  {
    words: 'Your sockets have a cut-out (RCD) as far as the work needs one, which we have not seen yet.',
    otherwise: `one is fitted; ${asChange}`,
    questions: ['rcd-found'],
  },
  {
    words: 'The earth connections of your water and gas pipes are there, and as thick as today’s rules ask.',
    otherwise: `they are fitted or renewed; ${asChange}`,
    questions: ['bond-water', 'bond-gas', 'bond-oil', 'bond-steel', 'bond-other'],
  },
  {
    words: 'Your fuse box has room for what is new.',
    otherwise: `it goes into a small box beside it; ${asChange}`,
    questions: ['spare-ways'],
  },
  {
    words: 'You do not want surge protection in the new fuse box.',
    otherwise: `a device is fitted in it; ${asChange}`,
    questions: ['surge-protection'],
  },
  {
    words: 'The walls that we cut into are built as they look from outside.',
    otherwise: `cutting takes longer, or less; ${asChange}`,
    questions: ['wall-build'],
  },
  {
    words: 'The cables that are there do not lie in thick insulation, and are as sound as those that we saw.',
    otherwise: `we tell you what they can carry, and ${asChange.replace('we show you, and ', '')}`,
    findings: ['CA1 foundNotSeen', 'CA2 methodUnknown', 'CA3 methodUnknown', 'SP5 methodUnknown'],
  },
  {
    words:
      'No pipe or cable is hidden where we cut or drill. We look with a detector, which does not find everything.',
    otherwise: 'we stop, and tell you what it means for the work and its price',
    findings: ['RT13 untraced'],
  },
  {
    words:
      'There is no asbestos where we work. Homes from before 2000 can have it in textured ceilings, old floor tiles and boards.',
    otherwise:
      'we stop at once and have it sampled, which is extra; removal by people licensed for it is not in this price',
    questions: ['asbestos'],
    findings: ['SC3 possible', 'SC3 ageUnknown', 'SC3 suspected'],
  },
  {
    words:
      'You are content that we cut, no deeper than needed, into the wall that you share with your neighbours.',
    otherwise: `we fix boxes or cover strip on its surface instead; ${asChange}`,
    findings: ['BX3 flush', 'RT8 chased'],
  },
  {
    words:
      'What you plug in behind one fuse runs within what it carries (13 A, about 3 kW) at any one time: a kettle alone takes most of it.',
    otherwise: 'the fuse blows and has to be changed each time; ask us for a way without it',
    findings: ['FU2 plainOutlets', 'FU2 willOperate', 'FU2 othersMayCome'],
  },
  {
    words: 'You own the home, or its owner agrees to the work.',
    otherwise: 'the work waits until the owner agrees in writing',
    findings: ['PR4 missing', 'PR4 unknown'],
  },
];

/** What holds of every job, whatever was looked at. */
const always: readonly Taken[] = [
  {
    words: 'Somebody lets us in, and we can get at the walls, floors and fuse box where we work.',
    otherwise: 'we agree another day',
  },
];

function isTaken({ questions = [], findings }: Taken, scheme: SchemeEstimate): boolean {
  const asked = scheme.openQuestions.some(({ question }) => questions.includes(question));
  return (
    asked ||
    scheme.findings.some(
      ({ rule, messageId, outcome }) =>
        outcome !== 'passes' && (findings ?? []).includes(`${rule} ${messageId}`),
    )
  );
}

function worth({ questions = [] }: Taken, { openQuestions }: SchemeEstimate): number | null {
  const asked = openQuestions.filter(({ question }) => questions.includes(question));
  return asked.length === 0 ? null : asked.reduce((sum, { worthPence }) => sum + worthPence, 0);
}

function assumption(one: Taken, of: readonly Offered[], offered: readonly Offered[]): QuotedAssumption {
  const letters = of.map(({ letter }): OptionLetter => letter);
  const sums = of.flatMap(({ letter, scheme }) => {
    const grossPence = worth(one, scheme);
    return grossPence === null ? [] : [{ letter, grossPence }];
  });
  const known = sumsSaid(sums, offered, wholePounds);
  return {
    words: one.words,
    forOptions: optionWords(letters, offered),
    otherwise: one.otherwise,
    sums,
    sumWords:
      known !== '' ? `about ${known}` : one.otherwise.includes('price') ? 'priced if it turns up' : '',
  };
}

/** What the prices of the options take for granted, and by how much each can move them where that is known. */
export function assumptionsOf(offered: readonly Offered[]): readonly QuotedAssumption[] {
  if (offered.length === 0) return [];
  const found = taken.flatMap((one) => {
    const of = offered.filter(({ scheme }) => isTaken(one, scheme));
    return of.length === 0 ? [] : [assumption(one, of, offered)];
  });
  return [...found, ...always.map((one) => assumption(one, offered, offered))];
}

/** The messages of rules by which something is taken for granted: for the test that holds them against the rules. */
export const assumedMessages: readonly string[] = taken.flatMap(({ findings }) => findings ?? []);
