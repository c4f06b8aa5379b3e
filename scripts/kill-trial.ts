import { parseArgs } from 'node:util';
import { killTrial } from '#tests/kill/kill-trial.ts';
import { runCommand } from './product/run-command.ts';

const USAGE = `npm run -s kill-trial -- [--kills N] [--work-ms N]

Kills the server without warning under clients that save, N times (200), each time at a random moment within so many ms
(4000), starts it again and compares what is there with what it acknowledged. Ends with 1 where anything is lost.`;

interface KillArguments {
  readonly kills: number;
  readonly workMs: number;
}

function killArguments(words: readonly string[]): KillArguments | string {
  try {
    const { values } = parseArgs({
      args: [...words],
      options: { kills: { type: 'string' }, 'work-ms': { type: 'string' }, help: { type: 'boolean' } },
    });
    if (values.help === true) return USAGE;
    const [kills, workMs] = [Number(values.kills ?? 200), Number(values['work-ms'] ?? 4000)];
    const whole = [kills, workMs].every((number) => Number.isSafeInteger(number) && number > 0);
    return whole ? { kills, workMs } : `--kills and --work-ms take whole numbers from 1.\n${USAGE}`;
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n${USAGE}`;
  }
}

await runCommand({
  args: killArguments(process.argv.slice(2)),
  usage: USAGE,
  run: async (asked: KillArguments) => {
    const say = (line: string): void => {
      process.stdout.write(`${line}\n`);
    };
    const started = performance.now();
    const { losses, acknowledged, ...rest } = await killTrial({ ...asked, say });
    for (const loss of losses) say(`Lost: ${loss}`);
    for (const [name, saves] of Object.entries(acknowledged)) say(`${name}: ${saves} saves acknowledged`);
    say(
      `${rest.kills} kills in ${Math.round((performance.now() - started) / 1000)} s, ${rest.unanswered} saves in flight, ${losses.length} lost; stopped with ${rest.exitCode}.`,
    );
    return losses.length === 0 && rest.exitCode === 0 ? 0 : 1;
  },
});
