import { readFileSync } from 'node:fs';

import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { workHouse, workScheme } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
const lib = demoLibrary();
for (const n of process.argv.slice(2)) {
  const job: any = JSON.parse(readFileSync(`data/jobs/${n}.json`,'utf8'));

  const t0=performance.now();
  const house = workHouse(job, tariffOf(lib), defaultLengthAllowances);
  console.log('##', n, 'workHouse', (performance.now()-t0).toFixed(1));
  for (const run of house.foundRuns.values()) console.log(' found', run.id, run.pinned?'pinned':'', Math.round(run.routeMm), 'measured', run.lengthMm, run.steps.join('; '));
  for (const s of job.schemes) { const t1=performance.now(); const w = workScheme(house, s); console.log(' scheme', s.id, (performance.now()-t1).toFixed(1)); for (const run of w.runs) console.log('   ', run.from.pointId, '→', run.to.pointId, Math.round(run.lengthMm ?? 0), '|', run.steps.join('; ')); }
}
