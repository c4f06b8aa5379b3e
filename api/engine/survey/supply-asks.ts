import type { Supply } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { readingsBefore } from '../circuit/readings-before.ts';
import type { Worked } from '../connections/worked.ts';
import { isGuess } from '../plan/is-guess.ts';
import {
  bondCertainty,
  bondFact,
  bondsAskedAfter,
  bondsToSettle,
  isBondTold,
  type Service,
} from '../rules/bonds.ts';
import { serviceWords } from '../rules/fitted-devices.ts';
import type { Ask, AskField, FactState } from './ask.ts';
import { checklistAsk } from './checklist-ask.ts';
import { askOf, factState, fieldOf } from './fields.ts';

const atBoard = { stage: 'board', when: 'visit' } as const;

/** What is told at the meter: earthing, fuse, tails, bonds, other sources, the loop and the fault current before the house. */
export function supplyAsks({ job }: Worked): readonly Ask[] {
  const { supply } = job;
  return [
    ...earthAsks(job),
    askOf({
      id: 'earthing',
      short: 'earthing',
      words: 'Look at the intake: what kind of earthing is it?',
      why: 'It decides how thick bonds have to be, what the loop may be, and whether only an RCD disconnects.',
      source: 'BS 7671 312.2, 411.3.1',
      ...atBoard,
      fields: [fieldOf('supply', supply, 'earthing')],
      rules: ['ST1', 'SU3', 'SU5', 'SU7'],
    }),
    askOf({
      id: 'main-fuse',
      short: 'main fuse',
      words: 'Read the main fuse off its carrier',
      why: 'The demand with the new points has to stay within it.',
      source: 'BS 7671 132.16, 311.1',
      money:
        'It moves nothing in the price, only whether work may begin: a larger fuse is for the distributor to agree to, fit and charge.',
      ...atBoard,
      fields: [fieldOf('supply', supply, 'mainFuseA')],
      rules: ['SU2'],
    }),
    askOf({
      id: 'tails',
      short: 'tails',
      words: 'Look how thick the meter tails and the earthing conductor are',
      why: 'The earthing conductor has to be thick enough for the tails.',
      source: 'BS 7671 543.1, Table 54.7',
      money:
        'It moves nothing in the price: a thicker earthing conductor is work of its own, which is entered as work that is not on the drawing once it is known to be needed.',
      ...atBoard,
      fields: [fieldOf('supply', supply, 'tailsMm2'), fieldOf('supply', supply, 'earthingMm2')],
      rules: ['SU4'],
    }),
    ...bondsAskedAfter(supply).map((service) => bondAsk(supply, service)),
    askOf({
      id: 'other-sources',
      short: 'other sources',
      words: 'Ask, and look at the intake: solar panels, a battery, a vehicle charger?',
      why: 'The board may stay live from them when its switch is off, and an RCBO may have to suit both directions.',
      source: 'BS 7671:2018+A3:2024 530.3.201',
      money:
        'It moves nothing in the price by itself: where there are some, an RCBO that suits both directions may cost more than the one on your price list.',
      ...atBoard,
      fields: [fieldOf('supply', supply, 'otherSources')],
      rules: ['SU1', 'SU6'],
    }),
    ...loopAsks(job),
  ];
}

/** Whose kind of earthing was seen has an earth; it is asked for where nobody saw the kind, or once somebody answered. */
function earthAsks(job: Job): readonly Ask[] {
  const { earthing, certainty } = job.supply;
  const isSeen = earthing !== undefined && !isGuess(certainty?.earthing);
  const ask = checklistAsk(job, 'means-of-earthing', {
    stage: 'board',
    why: 'Without an earth a fault does not disconnect: nothing is added before there is one.',
    source: 'BS 7671 132.16, 411.3.1',
    rules: ['ST1'],
  });
  return isSeen && ask.subjects.length > 0 ? [] : [ask];
}

const loopAsks = (job: Job): readonly Ask[] => [
  askOf({
    id: 'ze',
    short: 'Ze',
    words: 'Measure the loop before the circuit: Ze at the intake, or Z at the board or an outlet',
    why: 'Whether the new points disconnect in a fault is judged from it.',
    source: 'BS 7671 411.4, 643.7.3',
    money:
      'It moves nothing in this price, only whether the new points may be connected as they are: what a loop that is too high asks for, a thicker cable or another device, is priced once it is chosen.',
    stage: 'board',
    when: 'isolated',
    fields: [{ subjectId: 'supply', fact: 'zeOhm', state: loopState(job) }],
    rules: ['SU7', 'ZS1'],
  }),
  askOf({
    id: 'fault-current',
    short: 'fault current',
    words: 'Measure the fault current at the board',
    why: 'The devices have to be able to break it.',
    source: 'BS 7671 434.1, 434.5.1',
    stage: 'board',
    when: 'isolated',
    fields: [
      {
        subjectId: 'supply',
        fact: 'pfcKA',
        state:
          readingsBefore(job, 'pfc').length > 0
            ? 'measured'
            : factState(job.supply.pfcKA, job.supply.certainty?.pfcKA),
      },
    ],
    rules: ['BC1'],
  }),
];

/** Measured wherever it was: at the intake, at a board, or at an outlet with the circuit before it. */
function loopState(job: Job): FactState {
  const { supply, boards } = job;
  const isRead = readingsBefore(job, 'ze').length > 0 || readingsBefore(job, 'zs').length > 0;
  const atBoard = boards.some(({ zdbOhm, certainty }) => zdbOhm !== undefined && !isGuess(certainty?.zdbOhm));
  return isRead || atBoard ? 'measured' : factState(supply.zeOhm, supply.certainty?.zeOhm);
}

function bondAsk(supply: Supply, service: Service): Ask {
  const isOpen = bondsToSettle(supply).includes(service);
  const bond = `bond to ${serviceWords(service)}`;
  const isThere = isOpen && supply.bonding.some((one) => one.service === service && one.seen);
  const field: AskField = { subjectId: 'supply', fact: bondFact(service), state: bondState(supply, service) };
  return askOf({
    id: bondFact(service),
    short: isThere ? `size of the ${bond}` : bond,
    words: isThere ? `Look how thick the main ${bond} is` : `Look for the main ${bond}, and how thick it is`,
    why: 'Nothing is added while it is missing; one that is too small may have to be renewed.',
    source: 'BS 7671 411.3.1.2, 544.1.1, Table 54.8',
    ...atBoard,
    fields: [field],
    rules: ['ST2', 'SU3'],
    ...(isOpen ? { closing: { settles: [bondFact(service)] } } : {}),
  });
}

/** A bond whose size nobody saw is not told in full. */
function bondState(supply: Supply, service: Service): FactState {
  const bond = supply.bonding.find((one) => one.service === service);
  const isSized = bond?.seen !== true || bond.mm2 !== undefined;
  return factState(isBondTold(supply, service) && isSized ? true : null, bondCertainty(supply, service));
}
