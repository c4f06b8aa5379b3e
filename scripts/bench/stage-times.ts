import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { type DemoName, demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { houseOf } from '#tests/houses/house-of.ts';
import type { BenchArguments } from './arguments.ts';
import { growthExponent, medianOf } from './growth.ts';
import { dragsInBrowser } from './moves-in-browser.ts';
import type { BenchResult, Timed } from './result.ts';
import { type Stage, type StageTimes, stages, timeSearch, timeStages } from './stages.ts';
import { benchTable } from './table.ts';

const library = demoLibrary();
const demos: readonly DemoName[] = ['saltglass-row', 'fernlow-close', 'quarrel-court'];
const stageNames = Object.keys(stages) as Stage[];

interface Subject extends Pick<Timed, 'name' | 'rooms'> {
  /** The job of a round: invented houses are other ones each time, the same at every call. */
  readonly jobIn: (round: number) => Parameters<typeof timeStages>[0];
}

const subjectsOf = ({ rooms, wanted, rcd }: BenchArguments): readonly Subject[] => [
  ...demos.map((name): Subject => ({ name, jobIn: () => demoJob(name) })),
  ...rooms.map(
    (many): Subject => ({
      name: `${many} rooms`,
      rooms: many,
      jobIn: (round) => houseOf({ seed: round + 1, rooms: many, wanted, rcd }),
    }),
  ),
];

function timesOf(subject: Subject, round: number): StageTimes {
  const job = subject.jobIn(round);
  return {
    ...timeStages(job, library),
    best: timeSearch(job, library, { aim: 'pence', kinds: false }),
    whole: timeSearch(job, library, { aim: 'pence', kinds: true }),
    ends: timeSearch(job, library, { kinds: true }),
  };
}

/** Times the search stage by stage, for the demo jobs and for invented houses of several sizes. */
export async function runStages(args: BenchArguments): Promise<number> {
  const subjects = subjectsOf(args);
  // Once for nothing, so that the first subject does not pay for the compiler.
  for (const subject of subjects.slice(0, demos.length + 1)) timesOf(subject, 0);
  // Sizes by turns, so that what else the machine does weighs on all of them alike.
  const rounds = Array.from({ length: args.rounds }, (_, round) =>
    subjects.map((subject) => timesOf(subject, round)),
  );
  const times = subjects.map(({ name, rooms }, i): Timed => {
    const own = rounds.map((round) => round[i] ?? {});
    return { name, ...(rooms === undefined ? {} : { rooms }), ms: mediansOf(own) };
  });
  const result: BenchResult = {
    rounds: args.rounds,
    wanted: args.wanted,
    times,
    growth: growthOf(times),
    ...(args.browser ? { drags: await dragsInBrowser(demos) } : {}),
  };
  process.stdout.write(args.json ? `${JSON.stringify(result, null, 2)}\n` : benchTable(result));
  return 0;
}

const byStage = (msOf: (stage: Stage) => number): StageTimes =>
  Object.fromEntries(
    stageNames.flatMap((stage) => {
      const value = msOf(stage);
      return Number.isFinite(value) ? [[stage, value]] : [];
    }),
  );

const mediansOf = (rounds: readonly StageTimes[]): StageTimes =>
  byStage((stage) => medianOf(rounds.flatMap((times) => times[stage] ?? [])));

function growthOf(times: readonly Timed[]): StageTimes {
  return byStage((stage) =>
    growthExponent(
      times.flatMap(({ rooms, ms }) => {
        const own = ms[stage];
        return rooms === undefined || own === undefined ? [] : [{ size: rooms, ms: own }];
      }),
    ),
  );
}
