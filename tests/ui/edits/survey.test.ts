import { describe, expect, it } from 'vitest';
import type { SurveyAsk } from '#engine/schemes/estimate-result.ts';
import type { AskField } from '#engine/survey/ask.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { demoJob, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { setAnswer } from '../../../ui/edits/answers.ts';
import { setBoardFact } from '../../../ui/edits/boards.ts';
import { setDevice } from '../../../ui/edits/circuits.ts';
import { newJob } from '../../../ui/edits/new-job.ts';
import { setFoundFact } from '../../../ui/edits/points.ts';
import { setSiteFact } from '../../../ui/edits/site.ts';
import { setFloorFact } from '../../../ui/edits/storeys.ts';
import { setBond, setOtherSources, setSupplyFact } from '../../../ui/edits/supply.ts';
import { confirmAsk, putOffAsk, setRcdBefore, setWallCores, takeUpAsk } from '../../../ui/edits/survey.ts';
import { questionOf } from '../../../ui/elements/as-found/answer-field.ts';
import type { JobEdit } from '../../../ui/job-events.ts';
import { edited } from './random-edits.ts';

const quoting: Job = (() => {
  const job = demoJob('saltglass-row-quoting');
  return { ...job, schemes: job.schemes.slice(0, 1) };
})();
const fresh = newJob({ reference: 'N-1', title: 'New', terms: { labour: 'typical', vat: 'standard' } });

const surveyIn = (job: Job): readonly SurveyAsk[] => {
  const { schemes, asFound } = estimateOf(job);
  return schemes[0]?.survey ?? asFound.survey;
};
const askIn = (job: Job, id: string): SurveyAsk | undefined => surveyIn(job).find((ask) => ask.id === id);

/** What is entered for a field by somebody who sees it; empty where a form of several fields, or readings, answer it. */
function entered(job: Job, ask: SurveyAsk, { subjectId, fact }: AskField): readonly JobEdit[] {
  const question = questionOf(ask.id);
  if (fact === 'answer' && question !== undefined)
    return [setAnswer(question, question.answers[0]?.value ?? 60)];
  const circuit = job.circuits.find(({ id }) => id === subjectId);
  const board = job.boards.find(({ id }) => id === subjectId);
  const point = job.points.find(({ id }) => id === subjectId);
  const storey = job.storeys.find(({ id }) => id === subjectId);
  switch (fact) {
    case 'earthing':
      return [setSupplyFact('earthing', 'TN-S')];
    case 'mainFuseA':
    case 'zeOhm':
    case 'pfcKA':
    case 'tailsMm2':
    case 'earthingMm2':
      return [setSupplyFact(fact, 16)];
    case 'bond-water':
      return [setBond('water', { seen: true, mm2: 10 })];
    case 'bond-gas':
      return [setBond('gas', 'no-service')];
    case 'otherSources':
      return [setOtherSources([])];
    case 'builtBefore2000':
      return [setSiteFact('builtBefore2000', true)];
    case 'tenure':
      return [setSiteFact('tenure', 'owner')];
    case 'make':
      return board === undefined ? [] : [setBoardFact(board, 'make', 'as on its cover')];
    case 'rcboAvailable':
      return board === undefined ? [] : [setBoardFact(board, 'rcboAvailable', true)];
    case 'device':
      return circuit === undefined
        ? []
        : [setDevice(circuit, { ratingA: 32 }), setDevice(circuit, { standard: 'BS-EN-60898', curve: 'B' })];
    case 'upstreamRcd':
      return circuit === undefined ? [] : [setRcdBefore(circuit, () => 'new-rcd').found('none')];
    case 'core':
      return [setWallCores([subjectId], 'block')];
    case 'liftable':
      return storey === undefined ? [] : [setFloorFact(storey, 'liftable', true)];
    case 'boxDepthMm':
    case 'cablesSeen':
      return point === undefined ? [] : [setFoundFact(point, fact, fact === 'cablesSeen' ? 2 : 47)];
    default:
      return [];
  }
}

describe('an answer to what the survey asks', () => {
  it.each([
    ['the quoting job', quoting],
    ['a new job', fresh],
  ])('never leaves it open, in %s', (_, start) => {
    let job = start;
    const asked = surveyIn(job).filter(({ subjects }) => subjects.length > 0);
    expect(asked.length).toBeGreaterThan(10);
    // A circuit tells its RCD only once its device is read: what one answer opens, a second round answers.
    for (const _round of [1, 2])
      for (const ask of surveyIn(job).filter(({ subjects }) => subjects.length > 0))
        for (const field of ask.fields) job = edited(job, ...entered(job, ask, field));
    const left = surveyIn(job).filter(({ state }) => state === 'open' || state === 'put-off');
    expect(left.map(({ id }) => id)).toEqual(['ring-order']);
    expect(readJob(job).ok).toBe(true);
  });

  it('puts it off, takes it up again, and leaves the job as it was', () => {
    const ask = askIn(quoting, 'isolation');
    if (ask === undefined) throw new Error('isolation is not asked');
    const off = edited(quoting, putOffAsk(ask));
    expect(askIn(off, 'isolation')?.state).toBe('put-off');
    expect(edited(off, takeUpAsk(ask))).toEqual(quoting);
    const question = questionOf('isolation');
    if (question === undefined) throw new Error('isolation is no question');
    expect(askIn(edited(off, setAnswer(question, 'isolator')), 'isolation')?.state).toBe('seen');
  });

  it('confirms what was assumed in one step, and nothing of which more than a mark is missing', () => {
    const walls = askIn(quoting, 'wall-build');
    const bond = askIn(quoting, 'bond-water');
    if (walls === undefined || bond === undefined) throw new Error('not asked');
    expect(walls.state).toBe('assumed');
    const edit = confirmAsk(quoting, walls);
    expect(edit).not.toBeNull();
    const seen = edit === null ? quoting : edited(quoting, edit);
    expect(askIn(seen, 'wall-build')).toMatchObject({ state: 'seen', worth: null });
    const assumed = { ...quoting, supply: { ...quoting.supply, certainty: { bonding: 'assumed' as const } } };
    expect(
      confirmAsk(assumed, { ...bond, fields: [{ ...bond.fields[0], state: 'assumed' } as AskField] }),
    ).toBeNull();
  });

  it('says that a circuit is behind an RCD, or behind none, at its board as well', () => {
    const [circuit] = fresh.circuits;
    if (circuit === undefined) throw new Error('a new job has a circuit');
    const read = edited(
      fresh,
      setDevice(circuit, { ratingA: 32 }),
      setDevice(circuit, { standard: 'BS-EN-60898', curve: 'B' }),
    );
    const put = setRcdBefore(circuit, () => 'new-rcd');
    const there = edited(read, put.found('there'));
    expect(there.boards[0]?.rcds).toEqual([{ id: 'new-rcd', type: 'A', mA: 30 }]);
    expect(there.circuits[0]?.upstreamRcd).toBe('new-rcd');
    expect(askIn(there, 'rcd-found')?.state).toBe('seen');
    expect(askIn(edited(read, put.found('none'), put.sure('assumed')), 'rcd-found')?.state).toBe('assumed');
    expect(edited(edited(read, put.found('none')), put.found(null))).toEqual(read);
  });
});
