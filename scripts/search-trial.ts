import { parseArgs } from 'node:util';
import { judgedHouse } from '#tests/engine/schemes/search/brute-trial.ts';
import { variedHouse } from '#tests/engine/schemes/search/varied-house.ts';

const USAGE = `Usage: npm run -s search-trial -- [--from SEED] [--houses N] [--wanted N]

Searches houses at random and tries everything that can be written down against what is found.
  --from SEED   the first seed (1)
  --houses N    how many, seed by seed (40)
  --wanted N    wanted points in each, up to 4 (3)
Ends with 1 where anything is cheaper and passes, or what was found does not pass.
`;

function numberOf(text: string): number {
  const number = Number(text);
  if (!Number.isInteger(number) || number < 1) throw new Error(`"${text}" is no whole number above nought.`);
  return number;
}

function main(): number {
  const { values } = parseArgs({
    options: {
      from: { type: 'string', default: '1' },
      houses: { type: 'string', default: '40' },
      wanted: { type: 'string', default: '3' },
    },
  });
  const [from, houses, wanted] = [values.from, values.houses, values.wanted].map(numberOf);
  if (from === undefined || houses === undefined || wanted === undefined || wanted > 4)
    throw new Error('Up to four points are tried by force.');
  let bad = 0;
  let written = 0;
  let judged = 0;
  let empty = 0;
  for (let seed = from; seed < from + houses; seed += 1) {
    const house = judgedHouse(variedHouse(seed, wanted));
    written += house.written;
    judged += house.judged;
    if (house.least === null) empty += 1;
    if (house.faults.length === 0) continue;
    bad += 1;
    process.stdout.write(
      `seed ${seed}, ${wanted} wanted:\n${house.faults.map((each) => `  ${each}\n`).join('')}`,
    );
  }
  process.stdout.write(
    `${houses} houses from seed ${from}, ${wanted} wanted: ${bad} with a fault, ${empty} where nothing passes; ` +
      `${written} joinings written down, ${judged} judged.\n`,
  );
  return bad > 0 ? 1 : 0;
}

try {
  process.exitCode = main();
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n${USAGE}`);
  process.exitCode = 2;
}
