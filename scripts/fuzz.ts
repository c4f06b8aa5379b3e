import { parseArgs } from 'node:util';
import { fuzzRun } from '#tests/fuzz/fuzz-run.ts';
import { runCommand } from './product/run-command.ts';

const USAGE = `Usage: npm run -s fuzz -- [--cases N] [--seed N] [--minutes N]

Gives job files, libraries, price lists, pictures, archives and every route N (1000000) cases of bad input. Ends with 1 where
anything breaks: a crash, an answer of 500, a case that takes over a second of this program's own time, resident memory more than a
tenth above its level when warm. The same seed gives the same cases.`;

interface FuzzArguments {
  readonly cases: number;
  readonly seed: number;
  readonly mostMs: number;
}

function fuzzArguments(argv: readonly string[]): FuzzArguments | string {
  try {
    const { values } = parseArgs({
      args: [...argv],
      options: {
        cases: { type: 'string', default: '1000000' },
        seed: { type: 'string', default: '1' },
        minutes: { type: 'string' },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    if (values.help) return USAGE;
    const [cases, seed, minutes] = [Number(values.cases), Number(values.seed), Number(values.minutes ?? 1)];
    const areWhole = [cases, seed, minutes].every((number) => Number.isSafeInteger(number) && number > 0);
    if (!areWhole) return `--cases, --seed and --minutes take whole numbers from 1.\n\n${USAGE}`;
    return { cases, seed, mostMs: values.minutes === undefined ? Infinity : minutes * 60_000 };
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`;
  }
}

await runCommand({
  args: fuzzArguments(process.argv.slice(2)),
  usage: USAGE,
  run: async (asked: FuzzArguments) => {
    const say = (line: string): void => {
      process.stdout.write(`${line}\n`);
    };
    const began = performance.now();
    const result = await fuzzRun({ ...asked, say, holdMemory: true });
    for (const breach of result.breaches) say(`Breach: ${breach}`);
    for (const [name, { cases, cpuMs }] of Object.entries(result.byTarget))
      say(`${name}: ${cases} cases, ${(cpuMs / cases).toFixed(2)} ms each`);
    const { slowest } = result;
    say(
      `${result.cases} cases of seed ${asked.seed} in ${Math.round((performance.now() - began) / 1000)} s, ${result.breaches.length} breaches; slowest: case ${slowest.at} (${slowest.name}), ${slowest.cpuMs} ms; memory ${result.rssWarmMb} MB warm, ${result.rssEndMb} MB in the end.`,
    );
    // The store of the routes holds its file open.
    process.exit(result.breaches.length === 0 ? 0 : 1);
  },
});
