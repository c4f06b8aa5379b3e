import type { Job } from '#model/job.ts';
import { checklist, type Question, type QuestionId } from '../rules/checklist.ts';
import type { Ask, AskStage, Closing } from './ask.ts';
import { ANSWER, ANSWERS, answerState, askOf } from './fields.ts';

const questions: readonly Question[] = checklist;

const shortNames: Readonly<Record<QuestionId, string>> = {
  'means-of-earthing': 'means of earthing',
  'board-condition': 'state of the board',
  isolation: 'isolation',
  'maximum-demand': 'demand',
  'arc-fault-protection': 'arc fault detection',
  'surge-protection': 'surge protection',
  asbestos: 'asbestos',
  'hidden-services': 'hidden pipes',
  'borrowed-neutral': 'borrowed neutral',
  'decorated-recently': 'decoration',
  'parking-at-the-house': 'parking',
  consent: 'consent',
};

/** What an ask adds to a question of the checklist. */
export interface AskedOf {
  readonly stage: AskStage;
  readonly why: string;
  readonly source?: string;
  readonly rules: readonly string[];
  readonly closing?: Closing;
  readonly money?: string;
}

/** A question of the checklist as an ask. */
export function checklistAsk(job: Pick<Job, 'answers'>, id: QuestionId, asked: AskedOf): Ask {
  const { stage, why, source = null, rules, closing, money } = asked;
  const question = questions.find((one) => one.id === id);
  return askOf({
    id,
    short: shortNames[id],
    words: question?.words ?? id,
    why,
    source,
    stage,
    when: question?.stage === 'quoting' ? 'visit' : 'isolated',
    fields: [{ subjectId: ANSWERS, fact: ANSWER, state: answerState(job, id) }],
    rules,
    ...(closing === undefined ? {} : { closing }),
    ...(money === undefined ? {} : { money }),
  });
}
