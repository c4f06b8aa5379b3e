import type { NodeRole } from '../circuit/shape.ts';
import { placesOfPoints } from '../proof/room-left.ts';
import type { SchemeEstimate } from '../schemes/estimate-result.ts';
import type { OptionLetter, QuotedPassage } from './document.ts';
import type { Offered } from './offered.ts';
import { listed, pounds } from './said.ts';
import { thingsSaid, wantedPoints } from './thing-said.ts';

// What is in a loop or on a branch of it by the survey's word alone counts as it is told: the paper tells that it is assumed.
const loopRoles: readonly NodeRole[] = ['ring', 'claimed-ring'];
const branchRoles: readonly NodeRole[] = ['unfused-spur', 'claimed-spur'];

/** The new points by how the loop feeds them, without a fuse of their own between. */
export interface FedFromLoop {
  /** Those that the loop's cable passes through. */
  readonly inLoop: readonly string[];
  /** Of these, those whose terminals have room for one more cable. */
  readonly takeMore: readonly string[];
  /** Those at the end of a branch cable. */
  readonly onBranch: readonly string[];
}

/** How the loop feeds the new points of a scheme, each list of ids in the job's order; points fed otherwise are in none. */
export function fedFromLoop({ worked }: Pick<SchemeEstimate, 'worked'>): FedFromLoop {
  const placeOf = placesOfPoints(worked);
  const ids = wantedPoints(worked.job).map(({ id }) => id);
  const inRole = (roles: readonly NodeRole[]): readonly string[] =>
    ids.filter((id) => roles.some((role) => role === placeOf(id)?.role));
  const inLoop = inRole(loopRoles);
  const hasRoom = (id: string): boolean => {
    const node = placeOf(id)?.nodeId;
    const terminal = worked.things.terminals.find(({ nodeId }) => nodeId === node);
    return terminal !== undefined && terminal.cables < terminal.capacityCables;
  };
  return {
    inLoop,
    takeMore: inLoop.filter(hasRoom),
    onBranch: inRole(branchRoles),
  };
}

/** An option with those of its points that it feeds in another way than another option does. */
interface Apart extends FedFromLoop {
  readonly letter: OptionLetter;
  readonly scheme: SchemeEstimate;
}

/** The options by the points that are in the loop in one and on a branch in another. */
function apartOf(offered: readonly Offered[]): readonly Apart[] {
  const all = offered.map((one) => ({ ...one, ...fedFromLoop(one.scheme) }));
  const looped = new Set(all.flatMap(({ inLoop }) => inLoop));
  const differ = new Set(all.flatMap(({ onBranch }) => onBranch.filter((id) => looped.has(id))));
  const only = (ids: readonly string[]): readonly string[] => ids.filter((id) => differ.has(id));
  return all.map(({ inLoop, takeMore, onBranch, ...one }) => ({
    ...one,
    inLoop: only(inLoop),
    takeMore: only(takeMore),
    onBranch: only(onBranch),
  }));
}

const gross = ({ scheme }: Apart): number => scheme.totals.grossPence;

/** Against which option the loop of one is set: the cheapest in which one of its looped points is on a branch. */
const againstOf = (loop: Apart, all: readonly Apart[]): Apart | undefined =>
  all
    .filter(({ onBranch }) => onBranch.some((id) => loop.inLoop.includes(id)))
    .toSorted((a, b) => gross(a) - gross(b))[0];

function differenceSaid(loop: Apart, branch: Apart): string {
  const morePence = gross(loop) - gross(branch);
  const how =
    morePence === 0 ? 'as much as' : `${pounds(Math.abs(morePence))} ${morePence > 0 ? 'more' : 'less'} than`;
  return `Option ${loop.letter} comes to ${how} Option ${branch.letter} in all.`;
}

/** Whether what the loop costs more is worth it, by whether another socket may be wanted there. */
function worthSaid(
  loops: readonly Apart[],
  all: readonly Apart[],
  named: (ids: readonly string[]) => string,
) {
  const dearer = loops.filter((loop) => gross(loop) > gross(againstOf(loop, all) ?? loop));
  const near = dearer.flatMap(({ takeMore }) => takeMore);
  if (near.length === 0) return [];
  return [
    `The loop is worth paying for if you may want another socket near ${named(near)} one day. If not, the branch does the same for less.`,
  ];
}

/**
 * Why one would choose a branch and why the loop carried on, where one option feeds a new point by the one and another by
 * the other; none otherwise.
 * Source: of what may be added, BS 7671 Appendix 15 (one single or twin outlet on an unfused spur of a ring), as the
 * rules on spurs have it.
 */
export function branchOrLoop(offered: readonly Offered[]): readonly QuotedPassage[] {
  const all = apartOf(offered);
  const loops = all.filter(({ inLoop }) => inLoop.length > 0);
  const [first] = loops;
  if (first === undefined) return [];
  const { label } = thingsSaid(first.scheme.worked);
  const named = (ids: readonly string[]): string =>
    listed(first.scheme.worked.job.points.flatMap(({ id }) => (ids.includes(id) ? [label(id)] : [])));
  const byOption = (ids: (one: Apart) => readonly string[]): string =>
    all
      .flatMap((one) => (ids(one).length === 0 ? [] : [`${named(ids(one))} in Option ${one.letter}`]))
      .join('; ');
  const looped = byOption(({ inLoop }) => inLoop);
  const takeMore = byOption((one) => one.takeMore);
  const more =
    takeMore === ''
      ? ''
      : ` Later one more socket can be branched off ${takeMore === looped ? 'there' : `these: ${takeMore}`}.`;
  return [
    {
      heading: 'A branch cable, or the loop carried on?',
      paragraphs: [
        `On a branch: ${byOption(({ onBranch }) => onBranch)}. One cable leads there and ends. Nothing more can be joined on behind it without a fuse: another socket there later takes a new cable from the loop, and what has to be opened for it.`,
        `In the loop: ${looped}. The cable of the loop passes through, as it does at the sockets that you have.${more}`,
        [
          'What you can plug in is the same either way.',
          ...loops.flatMap((loop) => {
            const against = againstOf(loop, all);
            return against === undefined ? [] : [differenceSaid(loop, against)];
          }),
          ...worthSaid(loops, all, named),
        ].join(' '),
      ],
    },
  ];
}
