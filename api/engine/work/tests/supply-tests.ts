import type { NetworkCircuit } from '../../circuit/network.ts';
import { readingsBefore } from '../../circuit/readings-before.ts';
import { hasSurgeDevice } from '../../connections/surge-device.ts';
import type { Worked } from '../../connections/worked.ts';
import { isGuess } from '../../plan/is-guess.ts';
import { CONDITIONAL_KA } from '../../proof/expected-limits.ts';
import { bandAbout } from '../../proof/reading-band.ts';
import { type SourceLoop, sourceLoop } from '../../proof/source-loop.ts';
import { NOMINAL_V } from '../../proof/spur-load.ts';
import type { Wanted } from './listing.ts';
import type { BoardGroup, TestLimit } from './sheet-test.ts';

/** A board that the scheme's circuits come from. */
export interface TestedBoard {
  readonly id: string;
  readonly label: string;
  /** Those of the scheme, in its order. */
  readonly circuits: readonly NetworkCircuit[];
  /** What the survey has of the loop before them. */
  readonly source: SourceLoop;
}

/** The boards of a scheme's circuits, in the order of these. */
export function testedBoards(worked: Worked, circuitIds: readonly string[]): readonly TestedBoard[] {
  const circuits = circuitIds.flatMap((id) => worked.proposed.circuits.find((one) => one.id === id) ?? []);
  const boards = new Map(circuits.flatMap(({ board }) => (board === null ? [] : [[board.id, board]])));
  return [...boards.values()].map(({ id, label }) => {
    const own = circuits.filter(({ board }) => board?.id === id);
    return { id, label, circuits: own, source: sourceLoop(worked, own[0]?.id ?? '') };
  });
}

/** The loop that lets a fault current flow at the nominal voltage, Ω; above nought. */
export const loopOfKA = (kA: number): number => NOMINAL_V / (kA * 1000); // kA to A

/** The fault current that a loop above nought lets flow at the nominal voltage, kA. */
export const faultKA = (ohm: number): number => NOMINAL_V / ohm / 1000; // A to kA

/** The tests of a board: its supply once more after the work, or what its surge device shows, where it has one. */
export function boardTests(worked: Worked, board: TestedBoard, group: BoardGroup): readonly Wanted[] {
  const common = { group, subject: board.id, at: board.id, expected: null, limit: null } as const;
  if (group === 'spd-indicator')
    return hasSurgeDevice(worked, board.id)
      ? [
          {
            ...common,
            which: 'shows',
            mark: 'shows that it protects',
            unit: null,
            limit: { bound: 'right', words: 'its maker’s sheet' },
            asked: { kind: group },
          },
        ]
      : [];
  const { ohm, from } = board.source;
  return [
    {
      ...common,
      which: 'polarity',
      mark: 'polarity of the supply',
      unit: null,
      limit: { bound: 'right', words: 'BS 7671 643.6' },
      asked: { kind: 'polarity' },
    },
    {
      ...common,
      which: 'loop',
      mark: from === 'board' ? 'Zs at the board' : 'Ze',
      unit: 'Ω',
      expected: ohm === null ? null : bandAbout(ohm),
      asked: { kind: from === 'board' ? 'zs' : 'ze' },
    },
    {
      ...common,
      which: 'fault-current',
      mark: 'fault current',
      unit: 'kA',
      expected: expectedLoop(worked),
      limit: faultCurrentLimit(board),
      asked: { kind: 'pfc' },
    },
  ];
}

/** What lets the fault current of the survey flow, the highest where it was read several times; null where nobody has said. */
function expectedLoop({ job }: Worked) {
  const { pfcKA, certainty } = job.supply;
  const told = pfcKA === undefined || isGuess(certainty?.pfcKA) ? [] : [pfcKA];
  const kA = Math.max(0, ...told, ...readingsBefore(job, 'pfc').map((reading) => reading.kA));
  return kA === 0 ? null : bandAbout(loopOfKA(kA));
}

/** What a consumer unit bears as a whole; what the devices of this work break by themselves is said beside it. */
function faultCurrentLimit({ circuits }: TestedBoard): TestLimit {
  const broken = circuits.flatMap(({ device }) => device?.breakingKA ?? []);
  const least = Math.min(...broken);
  const alone =
    broken.length === 0
      ? ''
      : `; above ${least} kA see that it is marked for more than its devices break alone`;
  return {
    bound: 'most',
    value: CONDITIONAL_KA,
    words: `a consumer unit tested as a whole, BS EN 61439-3${alone}`,
  };
}
