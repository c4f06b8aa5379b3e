import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import { demoEstimate, demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { withLastMoved } from '#tests/engine/schemes/search/six-wanted.ts';
import { plainSchemeName } from '../../../ui/edits/scheme-names.ts';
import { engineSearcher } from '../../../ui/found-ways/engine-searcher.ts';
import type {
  FirstAnswer,
  Found,
  QuestionAnswer,
  Reply,
  SearchAsk,
} from '../../../ui/found-ways/search-asks.ts';
import { SearchTurns } from '../../../ui/found-ways/search-turns.ts';
import { foundOf, type Searcher } from '../../../ui/found-ways/searcher.ts';
import { foundAmong } from './made-searcher.ts';

const library = demoLibrary();
const job = demoJob('fernlow-close');
const askOf = (of = job): SearchAsk =>
  structuredClone({ what: 'search', firstOnly: false, job: of, library, locked: [], cutsAssumed: false });

type Sent = Reply<Found | QuestionAnswer, FirstAnswer>;

/** Turns on a thread whose every step takes so long that it looks for something newer after it. */
function turnsOf(searcher: Searcher) {
  const sent: Sent[] = [];
  let nowMs = 0;
  const turns = new SearchTurns(searcher, {
    post: (reply) => sent.push(structuredClone(reply)),
    letIn: () => new Promise((then) => setImmediate(then)),
    nowMs: () => {
      nowMs += 100;
      return nowMs;
    },
  });
  return { sent, turns };
}

describe('searches on their own thread', () => {
  it('send the cheapest ahead, priced as it is in the answer', async () => {
    const { sent, turns } = turnsOf(engineSearcher());
    await turns.take({ turn: 1, ask: askOf() });
    expect(sent.map(({ turn, is }) => [turn, is])).toEqual([
      [1, 'first'],
      [1, 'answer'],
    ]);
    const [ahead, whole] = sent;
    if (ahead?.is !== 'first' || whole?.is !== 'answer' || !('candidates' in whole.answer))
      throw new Error('an answer is wanted');
    const { optimal, name, grossPence } = ahead.first ?? {};
    expect(optimal).toBe(true);
    const least = whole.answer.candidates.toSorted((a, b) => a.worksPence - b.worksPence)[0];
    expect(least).toBeDefined();
    expect(name).toBe(least && plainSchemeName(least.scheme));
    expect(grossPence).toBe(least?.totals.grossPence);
  });

  it('send the cheapest alone while something moves, and no more than is said of it', async () => {
    const { sent, turns } = turnsOf(engineSearcher());
    await turns.take({ turn: 1, ask: askOf() });
    const [ahead] = sent;
    await turns.take({ turn: 2, ask: { ...askOf(), firstOnly: true } });
    expect(sent.slice(2)).toEqual([{ ...ahead, turn: 2 }]);
    expect(JSON.stringify(sent[2]).length).toBeLessThan(300);
  });

  it('say of a moved house that nothing passes, so that the next may be asked', async () => {
    const barren: Searcher = {
      ...engineSearcher(),
      // biome-ignore lint/correctness/useYield: nothing is sent ahead where nothing passes
      search: function* () {
        return { ...foundAmong(demoEstimate('fernlow-close')), schemes: [] };
      },
    };
    const { sent, turns } = turnsOf(barren);
    await turns.take({ turn: 1, ask: { ...askOf(), firstOnly: true } });
    expect(sent).toEqual([{ turn: 1, is: 'first', first: null }]);
  });

  it('answer the second of two houses as a search that knows nothing', async () => {
    const { sent, turns } = turnsOf(engineSearcher());
    const moved = withLastMoved(job, 120);
    await turns.take({ turn: 1, ask: askOf() });
    await turns.take({ turn: 2, ask: askOf(moved) });
    const last = sent.at(-1);
    expect(last).toEqual({
      turn: 2,
      is: 'answer',
      answer: foundOf(findSchemes(moved, library, { locked: [], allowAssumedLegs: [] })),
    });
  });

  it('are left for a newer one, and send nothing more', async () => {
    const { sent, turns } = turnsOf(engineSearcher());
    const older = turns.take({ turn: 1, ask: askOf() });
    const newer = turns.take({ turn: 2, ask: askOf(withLastMoved(job, 60)) });
    await Promise.all([older, newer]);
    expect(sent.filter(({ turn, is }) => turn === 1 && is === 'answer')).toEqual([]);
    expect(sent.at(-1)).toMatchObject({ turn: 2, is: 'answer' });
  });

  it('say what went wrong', async () => {
    const broken: Searcher = {
      ...engineSearcher(),
      // biome-ignore lint/correctness/useYield: it breaks before it has anything to say
      search: function* () {
        throw new Error('no such point');
      },
    };
    const { sent, turns } = turnsOf(broken);
    await turns.take({ turn: 7, ask: askOf() });
    expect(sent).toEqual([{ turn: 7, is: 'trouble', message: 'no such point' }]);
  });
});
