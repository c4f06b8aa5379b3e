import { benchArguments, usage } from './bench/arguments.ts';
import { runFigures } from './bench/run-figures.ts';
import { runLoad } from './bench/run-load.ts';
import { runStages } from './bench/stage-times.ts';
import { runCommand } from './product/run-command.ts';

await runCommand({
  args: benchArguments(process.argv.slice(2)),
  usage,
  run: (args) =>
    args.loadS !== null ? runLoad(args.loadS) : args.stages ? runStages(args) : runFigures(args),
});
