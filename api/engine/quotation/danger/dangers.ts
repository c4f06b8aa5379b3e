import type { Job } from '#model/job.ts';
import type { QuestionId } from '../../rules/checklist.ts';
import type { Finding } from '../../rules/finding.ts';
import { capital } from '../said.ts';

/** Something found that is dangerous as it is, in the customer's words. */
export interface Danger {
  readonly heading: string;
  /** What was found. */
  readonly found: string;
  /** What it can do. */
  readonly harm: string;
  readonly mustNot: readonly string[];
  /** What is to be done about it, and by whom. */
  readonly toDo: string;
}

type Telling = (finding: Finding, job: Job) => Danger;

/** A finding that shuts a stop gate, by what was found and not by what nobody has looked at. */
export const isDangerous = ({ outcome, stopGate, origin }: Finding): boolean =>
  outcome === 'fails' && stopGate && origin === 'found';

/**
 * What was found dangerous, the gravest first, alike ones once. What a scheme would put right is told all the same:
 * until then it is as it is.
 *
 * @param findings of the house as found.
 */
export function dangersOf(job: Job, findings: readonly Finding[]): readonly Danger[] {
  const dangers = findings
    .filter(isDangerous)
    .toSorted((a, b) => graveness(a) - graveness(b))
    .map((finding) => {
      const danger = (told[`${finding.rule} ${finding.messageId}`] ?? untold)(finding, job);
      return isHearsay(finding, job) ? { ...danger, found: `${danger.found} ${HEARSAY}` } : danger;
    });
  const heads = dangers.map(({ heading, found }) => `${heading} ${found}`);
  return dangers.filter((_, i) => heads.indexOf(heads[i] ?? '') === i);
}

/** Which answer of the checklist a gate goes by. */
const answered: Readonly<Record<string, QuestionId>> = { ST1: 'means-of-earthing', ST3: 'board-condition' };

const HEARSAY = 'This was told to us and we have not seen it ourselves yet: until we have, we take it as so.';

/** Whether what shuts the gate is only assumed. */
const isHearsay = ({ rule }: Finding, { answers }: Job): boolean =>
  answers.some(({ question, certainty }) => question === answered[rule] && certainty === 'assumed');

const circuitSaid = ({ subject }: Finding, { circuits }: Job): string => {
  const name = circuits.find(({ id }) => id === subject)?.name ?? '';
  return name.trim() === '' ? 'one circuit' : `“${name}”`;
};

const pipes: Readonly<Record<string, string>> = {
  water: 'water pipe',
  gas: 'gas pipe',
  oil: 'oil pipe',
  steel: 'steel frame of the house',
};

const noEarth: Telling = () => ({
  heading: 'No connection to earth',
  found:
    'Where the electricity comes into the house we found no connection to earth, or one that is cut off.',
  harm: 'If a live wire touches a metal case or a pipe, nothing may cut the power. Whoever touches that metal can be killed by an electric shock.',
  mustNot: [
    'Do not use appliances with a metal case, such as a washing machine, cooker or fridge. With the power off at the main switch, unplug what you can.',
    'Do not touch metal cases, taps or pipes while the power is on.',
  ],
  toDo: 'An earth has to be provided and tested. Where it comes with the supply, that is for the company that owns the cable in the street: call it today. Where the house has an earth rod of its own, it is for an electrician.',
});

const noBond: Telling = ({ subject }) => {
  const service = subject.replace('supply/bond-', '');
  const pipe = pipes[service] ?? 'metal that comes into the house';
  return {
    heading: `No earth wire on the ${pipe}`,
    found: `We found no earth wire (main bonding) on the ${pipe}.`,
    harm: 'In a fault it can become live against other metal, with all that is joined to it. Whoever touches both can be killed by an electric shock.',
    mustNot: [
      'Do not use an electric appliance while you touch taps, radiators or other metal that is joined to it.',
      'Do not cut, part or take away any metal pipe or earth wire.',
    ],
    toDo: `A main bonding conductor has to be fitted close to where it comes in, and tested, by an electrician.${service === 'gas' ? ' The gas meter itself is not touched: it belongs to the company that supplies the gas.' : ''}`,
  };
};

const badBoard: Telling = () => ({
  heading: 'A dangerous fuse box or supply',
  found:
    'The fuse box, or where the supply comes in, is scorched, broken or open, or live parts of it can be touched.',
  harm: 'It can kill by electric shock, and it can start a fire.',
  mustNot: [
    'Do not touch it or open it, and put nothing near it. Keep children and pets away.',
    'Do not switch on again what is off there, and do not put a fuse back.',
  ],
  toDo: 'It has to be mended or exchanged, and tested: the fuse box by an electrician; the meter, the main fuse and whatever is sealed by the companies that they belong to. If it smokes, crackles or smells of burning, leave the house and ring 999.',
});

const badInsulation: Telling = (finding, job) => {
  const circuit = circuitSaid(finding, job);
  return {
    heading: `Wiring that leaks: ${circuit}`,
    found: `The insulation of the wiring of ${circuit} measures ${finding.actual} MΩ. The least that is asked for is ${finding.limit} MΩ.`,
    harm: 'Current flows where it should not. That can give an electric shock, and it makes heat that can start a fire.',
    mustNot: [`Do not use what ${circuit} feeds, and do not switch it on again.`],
    toDo: 'The fault has to be found and mended, and the circuit tested again, by an electrician.',
  };
};

const wrongWay: Telling = ({ actual }) => ({
  heading: `Live and neutral the wrong way round: ${actual}`,
  found: `Live and neutral are connected the wrong way round at ${actual}.`,
  harm: 'A switch or a fuse then cuts the wrong wire: what looks switched off stays live inside, and can kill.',
  mustNot: [`Do not use ${actual}. With the power off at the main switch, unplug what is plugged in there.`],
  toDo: 'The connections have to be put right and tested by an electrician. If they are wrong where the supply comes in, the company that owns the cable in the street has to be called at once, and the power of the whole house stays off until it has come.',
});

const overheats =
  'A part of the cable can carry more than it is made for, and get hot enough to start a fire.';

const brokenLoop: Telling = (finding, job) => {
  const circuit = circuitSaid(finding, job);
  return {
    heading: `A broken loop of cable: ${circuit}`,
    found: `The loop of cable that feeds the sockets of ${circuit} is broken: it does not close.`,
    harm: `${overheats} Sockets may be without a sound earth, so that a fault makes metal live.`,
    mustNot: [
      `Do not run heaters, kettles, ovens, washing machines or dryers from the sockets of ${circuit}; better, leave it off at the fuse box.`,
    ],
    toDo: 'The gap has to be found and mended, and the circuit tested again, by an electrician.',
  };
};

const singleFeed: Telling = (finding, job) => {
  const circuit = circuitSaid(finding, job);
  return {
    heading: `A loop of cable fed through one cable: ${circuit}`,
    found: `The loop of cable that feeds the sockets of ${circuit} hangs on one single cable, which carries all of it.`,
    harm: overheats,
    mustNot: [
      `Do not run heaters, kettles, ovens, washing machines or dryers together from the sockets of ${circuit}; better, leave it off at the fuse box.`,
    ],
    toDo: 'Both ends of the loop have to be brought to the fuse box, or a smaller breaker fitted, and the circuit tested again, by an electrician.',
  };
};

const joinedUp: Telling = (finding, job) => {
  const circuit = circuitSaid(finding, job);
  return {
    heading: `Circuits joined together: ${circuit}`,
    found: `The wiring of ${circuit} has a second loop, or is joined to another circuit.`,
    harm: `It can stay live while its own switch in the fuse box is off, and kill whoever takes it to be dead. ${overheats}`,
    mustNot: [
      'Do not open a socket, a switch or a lamp, and let nobody work on the wiring who does not know of this letter: one switch off does not make it dead.',
    ],
    toDo: 'The circuits have to be parted and tested again, by an electrician.',
  };
};

/** What every shut gate is called to a customer, by its rule and message, the gravest first. */
const told: Readonly<Record<string, Telling>> = {
  'ST3 unsafe': badBoard,
  'ST1 absent': noEarth,
  'ST5 wrong': wrongWay,
  'ST2 missing': noBond,
  'ST4 low': badInsulation,
  'RG1 broken': brokenLoop,
  'RG1 openLoop': brokenLoop,
  'RG1 lollipop': singleFeed,
  'RG1 interconnected': joinedUp,
};

/** A gate without words of its own: as the check says it. */
const untold: Telling = ({ title, message, remedy }) => ({
  heading: capital(title),
  found: message,
  harm: 'Left as it is, it can hurt or kill somebody, or start a fire.',
  mustNot: ['Do not use what it concerns; leave it off at the fuse box.'],
  toDo: remedy ?? 'It has to be put right and tested by an electrician.',
});

/** Its place in that order; without words of its own first, for nobody knows how grave it is. */
const graveness = ({ rule, messageId }: Finding): number => Object.keys(told).indexOf(`${rule} ${messageId}`);

/** The rules and messages that have words for customers: for the test that holds them against the rules. */
export const toldDangers: readonly string[] = Object.keys(told);
