import { parseArgs } from 'node:util';

/** What is timed, and how often. */
export interface BenchArguments {
  /** Whether the search is timed stage by stage, in the place of the benchmark's figures. */
  readonly stages: boolean;
  readonly rounds: number;
  readonly rooms: readonly number[];
  readonly wanted: number;
  readonly rcd: boolean;
  readonly browser: boolean;
  readonly json: boolean;
  /** Of the batch. */
  readonly jobs: number;
  /** The figures that are measured, by the names of their groups; empty: all. */
  readonly only: readonly string[];
  /** How long the load run takes, s; null: there is none. */
  readonly loadS: number | null;
}

export const usage = `Usage: npm run -s bench -- [--json] [--rounds N] [--jobs N] [--only NAME,NAME]
       npm run -s bench -- --load [--seconds N]
       npm run -s bench -- --stages [--json] [--rounds N] [--rooms 10,20,40,80] [--wanted N] [--without-rcd] [--browser]

Measures what the product promises of its speed, and prints each figure beside its goal (npm run -s build first). What is compared
is measured in turns in the same run, and told by the medians over the rounds (5). Times are those of the clock or of the processor,
whichever is less, but for what answers over a connection.
  --json         one object, a figure a name; null where there is none
  --jobs         how many jobs the batch has (10000)
  --only         these alone: growth, network, search, buying, workbook, estimate, read, drag, load, start, batch
Exit: 0 measured; 1 an optimum or a value differs from that of the program it is compared with.

With --load a stored job is read over loopback for so many seconds (10), beside the bare framework that sends the same bytes.

With --stages the search is timed stage by stage, for the demo jobs and for invented houses of several sizes, and how
the times grow with the number of rooms. Each round has houses of its own, the same at every call.
  --rooms        the sizes, rooms in the house; one ring for every ten
  --wanted       new points in each invented house (4)
  --without-rcd  no RCD guards their rings, so each of them that is touched asks for an RCBO
  --browser      also moves one of six wanted points of each demo job in the built screen`;

const isCount = (value: number): boolean => Number.isInteger(value) && value >= 1;
/** Fewer rooms than these do not make two rows on two storeys. */
const FEWEST_ROOMS = 4;

/** Reads the command line; a string instead says what is wrong with it. */
export function benchArguments(argv: readonly string[]): BenchArguments | string {
  try {
    const { values } = parseArgs({
      args: [...argv],
      options: {
        rounds: { type: 'string', default: '5' },
        rooms: { type: 'string', default: '10,20,40,80' },
        wanted: { type: 'string', default: '4' },
        'without-rcd': { type: 'boolean', default: false },
        browser: { type: 'boolean', default: false },
        json: { type: 'boolean', default: false },
        stages: { type: 'boolean', default: false },
        jobs: { type: 'string', default: '10000' },
        only: { type: 'string', default: '' },
        load: { type: 'boolean', default: false },
        seconds: { type: 'string', default: '10' },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    if (values.help) return usage;
    const [rounds, wanted, jobs, seconds] = [values.rounds, values.wanted, values.jobs, values.seconds].map(
      Number,
    ) as [number, number, number, number];
    const rooms = values.rooms.split(',').map(Number);
    if (
      ![rounds, wanted, jobs, seconds, ...rooms].every(isCount) ||
      rooms.some((many) => many < FEWEST_ROOMS)
    )
      return `--rounds, --jobs, --seconds, --rooms and --wanted want whole numbers, of rooms ${FEWEST_ROOMS} at least.\n\n${usage}`;
    const only = values.only === '' ? [] : values.only.split(',');
    const { stages, browser, json } = values;
    const loadS = values.load ? seconds : null;
    return { stages, rounds, rooms, wanted, rcd: !values['without-rcd'], browser, json, jobs, only, loadS };
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n\n${usage}`;
  }
}
