import { parseArgs } from 'node:util';

/** What is timed, and how often. */
export interface BenchArguments {
  readonly rounds: number;
  readonly rooms: readonly number[];
  readonly wanted: number;
  readonly rcd: boolean;
  readonly browser: boolean;
  readonly json: boolean;
}

export const usage = `Usage: npm run -s bench -- [--rounds N] [--rooms 10,20,40,80] [--wanted N] [--without-rcd] [--browser] [--json]

Times the search for schemes, stage by stage, for the demo jobs and for invented houses of several sizes, and says how
the times grow with the number of rooms. Medians over the rounds (5); each round has houses of its own, the same at
every call. Times are those of the clock or of the processor, whichever is less.
  --rooms        the sizes, rooms in the house; one ring for every ten
  --wanted       new points in each invented house (4)
  --without-rcd  no RCD guards their rings, so each of them that is touched asks for an RCBO
  --browser      also moves one of six wanted points of each demo job in the built screen (npm run -s build first)
  --json         one object, for programs`;

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
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    if (values.help) return usage;
    const [rounds, wanted] = [Number(values.rounds), Number(values.wanted)];
    const rooms = values.rooms.split(',').map(Number);
    if (![rounds, wanted, ...rooms].every(isCount) || rooms.some((many) => many < FEWEST_ROOMS))
      return `--rounds, --rooms and --wanted want whole numbers, of rooms ${FEWEST_ROOMS} at least.\n\n${usage}`;
    return { rounds, rooms, wanted, rcd: !values['without-rcd'], browser: values.browser, json: values.json };
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n\n${usage}`;
  }
}
