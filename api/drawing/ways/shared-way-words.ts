import type { Worked } from '#engine/connections/worked.ts';
import type { WhyApart } from '#engine/ways/chase-slots.ts';
import { joistsInWords } from '#engine/ways/cut-words.ts';
import { lengthWords } from '#engine/ways/length-words.ts';
import type { Run } from '#engine/ways/run.ts';
import { type SharedWay, sharedWays } from '#engine/ways/shared-ways.ts';
import { runName } from './run-name.ts';

/**
 * What a new cable shares with others of its scheme, a sentence each in the order of the runs, and whether that is counted once
 * or for each: "Beside R8 to W2: 3.2 m of chase, one for each cable; a board up once for both". Empty where it shares nothing.
 */
export function sharedWayWords(worked: Worked, run: Run): readonly string[] {
  const others = new Map(worked.runs.map((each) => [each.id, each]));
  return (sharedWays(worked.runs).get(run.id) ?? []).flatMap((way) => {
    const other = others.get(way.runId);
    return other === undefined
      ? []
      : [`Beside ${runName(worked, other)}: ${partsOf(worked, way).join('; ')}`];
  });
}

function partsOf(worked: Worked, way: SharedWay): readonly string[] {
  const told: readonly (readonly [amount: number, words: (amount: number) => string])[] = [
    [way.oneChaseMm, (mm) => `${lengthWords(mm)} of chase, one for both`],
    [
      way.ownChasesMm,
      (mm) => `${lengthWords(mm)} of chase, one for each cable${whyWords(worked, way.whyApart)}`,
    ],
    [way.oneChannelMm, (mm) => `${lengthWords(mm)} of channel, one for both`],
    [way.ownChannelsMm, (mm) => `${lengthWords(mm)} of channel, one for each cable`],
    [way.jointHoles, (count) => `the same ${joistsInWords(count)}, one hole for both`],
    [way.ownHoles, (count) => `the same ${joistsInWords(count)}, a hole for each cable`],
    [way.jointWallHoles, (count) => `${wallsInWords(count)}, one hole for both`],
    [way.ownWallHoles, (count) => `${wallsInWords(count)}, a hole for each cable`],
    [way.boards, (count) => `${count === 1 ? 'a board' : `${count} boards`} up once for both`],
  ];
  return told.flatMap(([amount, words]) => (amount > 0 ? [words(amount)] : []));
}

/** Why it is a chase for each, in brackets; empty where that was drawn so. */
function whyWords(worked: Worked, why: WhyApart | undefined): string {
  const nameOf = (id: string): string => {
    const run = worked.runs.find((each) => each.id === id);
    return run === undefined ? id : runName(worked, run);
  };
  switch (why?.kind) {
    case 'capacity':
      return ` (one for ${why.cables === 2 ? 'both' : 'three'} would leave ${nameOf(why.of)} with ${why.carriesA} A, ${why.mustCarryA} A needed)`;
    case 'depth':
      return ` (one for both would go ${Math.round(why.intoMm)} mm into the masonry, ${Math.floor(why.limitMm)} mm allowed)`;
    case 'untold':
      return ` (what ${nameOf(why.of)} must carry, or carries there, is not told)`;
    case 'full':
      return ` (${why.most} at the most lie in one)`;
    default:
      return '';
  }
}

const wallsInWords = (count: number): string => (count === 1 ? 'the same wall' : `the same ${count} walls`);
