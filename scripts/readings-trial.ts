import {
  type CellResult,
  trialCell,
  trialLegsM,
  trialRows,
} from '#tests/engine/proof/readings/trial-cells.ts';

/** Circuits a cell; the seed of each cell is fixed, so that equal programs print equal tables. */
const CIRCUITS = 1000;

/** Points of percentage by which a cell may fall short. */
const SHORT_BY = 2;

const cellWords = ({ orderPercent, parentsPercent, membersPercent }: CellResult): string =>
  `${orderPercent.toFixed(0)}/${parentsPercent.toFixed(0)} (${membersPercent.toFixed(0)})`.padEnd(14);

function main(): number {
  let isShort = false;
  const say = (line: string): void => {
    process.stdout.write(`${line}\n`);
  };
  say(`Whole circuits of ${CIRCUITS} a cell with the right order / the right parents of spurs, in %;`);
  say('in brackets those with every point rightly on the ring or a spur. Leg error: one spread, m.');
  say(['', ...trialLegsM.map((legM) => `legs ${legM} m`)].map((cell) => cell.padEnd(18)).join(''));
  for (const row of trialRows) {
    const results = trialLegsM.map((legM) => trialCell(row, legM, CIRCUITS));
    const cells = results.map((result, i) => {
      const [order, parents] = row.expected[i] ?? [0, 0];
      const ok = result.orderPercent >= order - SHORT_BY && result.parentsPercent >= parents - SHORT_BY;
      if (!ok) isShort = true;
      return `${cellWords(result)}${ok ? '    ' : ' !  '}`;
    });
    const errorM = Math.max(...results.map(({ legErrorM }) => legErrorM));
    say(`${row.name.padEnd(18)}${cells.join('')}${errorM.toFixed(2)}`);
  }
  if (isShort) say(`! more than ${SHORT_BY} points below what an earlier trial reached.`);
  return isShort ? 1 : 0;
}

process.exitCode = main();
