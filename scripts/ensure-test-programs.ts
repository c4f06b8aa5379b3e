import {
  browser,
  drafting,
  findProgram,
  installProgram,
  pdfReader,
  spreadsheet,
} from './product/find-program.ts';

// Makes sure that the programs which tests check our work with are there, and says where they are.
let missing = 0;
for (const program of [spreadsheet, browser, pdfReader, drafting]) {
  const trouble = findProgram(program) === null ? installProgram(program) : '';
  const found = findProgram(program);
  if (found !== null) console.log(`${program.name}: ${found}`);
  else {
    missing++;
    console.error(
      `Missing: ${program.name}, ${program.purpose}: install it (package ${program.packages[0]}) or name its path in ${program.variable}.${trouble}`,
    );
  }
}
process.exit(missing === 0 ? 0 : 1);
