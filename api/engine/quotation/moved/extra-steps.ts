import type { Extra } from '#model/extra.ts';
import type { Job } from '#model/job.ts';
import { pounds } from '../said.ts';
import type { ComeAndGo } from './house-steps.ts';
import { fromTo, idOf, listDifference, type MoveStep, withoutThing, withThing } from './move-step.ts';
import type { SchemeState } from './priced-state.ts';

/** What an extra takes: "90 min, £12.00 of materials"; what nobody has said is left out. */
function takesWords({ typicalMin, materialsPence }: Extra): string {
  const parts = [
    ...(typicalMin === undefined ? [] : [`${typicalMin} min`]),
    ...(materialsPence === undefined ? [] : [`${pounds(materialsPence)} of materials`]),
  ];
  return parts.length === 0 ? 'nothing' : parts.join(', ');
}

/** The state with other extras; a job without any has no list. */
function withExtras(state: SchemeState, change: (extras: readonly Extra[]) => Extra[]): SchemeState {
  const { extras: before = [], ...others } = state.job;
  const extras = change(before);
  return { ...state, job: extras.length === 0 ? others : { ...others, extras } };
}

const put = (extra: Extra, words: string, detail: string): MoveStep => ({
  cause: 'extra',
  words,
  detail,
  subjects: [extra.id],
  apply: (state) => withExtras(state, (extras) => withThing(extras, extra, idOf)),
});

const drop = (extra: Extra): MoveStep => ({
  cause: 'extra',
  words: `${extra.words}: left out`,
  detail: '',
  subjects: [extra.id],
  apply: (state) => withExtras(state, (extras) => withoutThing(extras, extra.id, idOf)),
});

/** Changes of the work that is not on the drawing, each by its own words, as the customer reads them. */
export function extraSteps(before: Job, after: Job): ComeAndGo {
  const { added, changed, removed } = listDifference(before.extras ?? [], after.extras ?? [], idOf);
  return {
    come: [
      ...added.map((extra) => put(extra, extra.words, takesWords(extra))),
      ...changed.map(({ before: was, after: is }) => {
        return put(is, `${is.words}: changed`, fromTo(takesWords(was), takesWords(is)));
      }),
    ],
    go: removed.map(drop),
  };
}
