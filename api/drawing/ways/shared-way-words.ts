import type { Worked } from '#engine/connections/worked.ts';
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
    return other === undefined ? [] : [`Beside ${runName(worked, other)}: ${partsOf(way).join('; ')}`];
  });
}

function partsOf(way: SharedWay): readonly string[] {
  const told: readonly (readonly [amount: number, words: (amount: number) => string])[] = [
    [way.oneChaseMm, (mm) => `${lengthWords(mm)} of chase, one for both`],
    [way.ownChasesMm, (mm) => `${lengthWords(mm)} of chase, one for each cable`],
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

const wallsInWords = (count: number): string => (count === 1 ? 'the same wall' : `the same ${count} walls`);
