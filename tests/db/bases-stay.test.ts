import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { JobStore } from '../../api/db/stores.ts';
import { heading, openTestStore, type TestStore } from './test-store.ts';

let store: TestStore;
beforeAll(async () => {
  store = await openTestStore();
});
afterAll(() => store.close());

type Act =
  | { readonly act: 'read' | 'save' | 'autosave' | 'autosave-unheard'; readonly client: number }
  | { readonly act: 'keep' }
  | { readonly act: 'wait'; readonly ms: number };

const acts: fc.Arbitrary<Act> = fc.oneof(
  fc.record({
    act: fc.constantFrom('read', 'save', 'autosave', 'autosave', 'autosave', 'autosave-unheard'),
    client: fc.nat(2),
  }) as fc.Arbitrary<Act>,
  fc.constant<Act>({ act: 'keep' }),
  fc.integer({ min: 1, max: 400_000 }).map((ms): Act => ({ act: 'wait', ms })),
);

/** The simplest store: every revision for good. What a client holds is a revision number. */
interface Oracle {
  readonly texts: string[];
  readonly held: (number | null)[];
  readonly kept: Set<number>;
}

async function saveBy(
  oracle: Oracle,
  jobs: JobStore,
  id: string,
  act: Act & { client: number },
): Promise<void> {
  const base = oracle.held[act.client] ?? null;
  if (base === null) return;
  const text = `${base}:${oracle.texts.length}`;
  const saved = await jobs.save(heading(id), text, base, act.act === 'save' ? 'by-hand' : 'autosave');
  if (base !== oracle.texts.length) {
    expect(saved).toMatchObject({ outcome: 'stale', revision: oracle.texts.length });
    return;
  }
  expect(saved).toMatchObject({ outcome: 'saved', revision: base + 1 });
  oracle.texts.push(text);
  // Where the answer was lost, the client goes on holding what it had.
  if (act.act !== 'autosave-unheard') oracle.held[act.client] = base + 1;
}

async function play(oracle: Oracle, jobs: JobStore, id: string, act: Act): Promise<void> {
  if (act.act === 'wait') store.clock.pass(act.ms);
  else if (act.act === 'keep') {
    await jobs.keep(id, oracle.texts.length, 'named');
    oracle.kept.add(oracle.texts.length);
  } else if (act.act === 'read') {
    const read = await jobs.read(id);
    expect(read?.text).toBe(oracle.texts.at(-1));
    expect(read?.revision).toBe(oracle.texts.length);
    oracle.held[act.client] = read?.revision ?? null;
  } else await saveBy(oracle, jobs, id, act);
}

describe('whatever several people do to one job', () => {
  it('every revision that one of them holds, or that is kept, can be read as it was saved', async () => {
    let round = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(acts, { minLength: 5, maxLength: 40 }), async (list) => {
        const id = `bases${round++}`;
        const { jobs } = store.stores;
        await jobs.create(heading(id), 'first');
        const oracle: Oracle = { texts: ['first'], held: [1, null, null], kept: new Set([1]) };
        for (const act of list) {
          await play(oracle, jobs, id, act);
          for (const revision of new Set([...oracle.kept, ...oracle.held]))
            if (revision !== null) {
              const there = (await jobs.revisions(id))?.some((one) => one.revision === revision);
              expect(there, `revision ${revision}`).toBe(true);
            }
        }
        expect((await jobs.read(id))?.text).toBe(oracle.texts.at(-1));
      }),
      { numRuns: 40 },
    );
  });
});
