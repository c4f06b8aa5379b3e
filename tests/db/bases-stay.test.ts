import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SaveHow } from '../../api/db/stores.ts';
import type { NumberedStores } from './numbered-stores.ts';
import { heading, openTestStore, type TestClock, type TestStore } from './test-store.ts';

let store: TestStore;
beforeAll(async () => {
  store = await openTestStore();
});
afterAll(() => store.close());

const CLIENTS = 3;

type Act =
  | { readonly act: 'read'; readonly client: number }
  | { readonly act: 'read-revision'; readonly client: number; readonly back: number }
  | { readonly act: 'save'; readonly client: number; readonly how: SaveHow; readonly heard: boolean }
  | { readonly act: 'save-on-what-was-told'; readonly client: number; readonly how: SaveHow }
  | { readonly act: 'keep'; readonly back: number }
  | { readonly act: 'remove' | 'restore' }
  | { readonly act: 'create'; readonly client: number }
  | { readonly act: 'wait'; readonly ms: number };

const client = fc.nat(CLIENTS - 1);
const how = fc.constantFrom<SaveHow>('autosave', 'autosave', 'autosave', 'by-hand');
const back = fc.nat(4);
const acts: fc.Arbitrary<Act> = fc.oneof(
  {
    weight: 12,
    arbitrary: fc
      .record({ client, how, heard: fc.constantFrom(true, true, true, false) })
      .map((one) => ({ act: 'save' as const, ...one })),
  },
  { weight: 3, arbitrary: client.map((one) => ({ act: 'read' as const, client: one })) },
  {
    weight: 1,
    arbitrary: fc.record({ client, back }).map((one) => ({ act: 'read-revision' as const, ...one })),
  },
  {
    weight: 2,
    arbitrary: fc.record({ client, how }).map((one) => ({ act: 'save-on-what-was-told' as const, ...one })),
  },
  { weight: 1, arbitrary: back.map((one) => ({ act: 'keep' as const, back: one })) },
  { weight: 1, arbitrary: fc.constantFrom('remove' as const, 'restore' as const).map((act) => ({ act })) },
  { weight: 1, arbitrary: client.map((one) => ({ act: 'create' as const, client: one })) },
  { weight: 2, arbitrary: fc.integer({ min: 1, max: 400_000 }).map((ms) => ({ act: 'wait' as const, ms })) },
);

/** The simplest store, which lets go of nothing, and what each client knows. */
class Oracle {
  /** By revision; the first is 1. */
  readonly texts: string[] = [];
  removed = false;
  /** What each client would merge on: what it read, or made and was told so. */
  readonly held: (number | null)[] = Array.from({ length: CLIENTS }, () => null);
  /** What each client was told is there, by a refusal or a restoring, and has not read. */
  readonly told: (number | null)[] = Array.from({ length: CLIENTS }, () => null);
  /** Handed out or kept: there for good. */
  readonly forGood = new Set<number>();

  get head(): number {
    return this.texts.length;
  }
  textOf(revision: number): string | undefined {
    return this.texts[revision - 1];
  }
  /** Every revision that must be there. */
  get mustBeThere(): readonly number[] {
    const held = this.held.filter((one) => one !== null);
    return [...new Set([this.head, ...held, ...this.forGood])].sort((a, b) => a - b);
  }
}

/** Does each act on the store and on the oracle, and compares what comes of it. */
class Play {
  readonly oracle = new Oracle();
  readonly jobs: NumberedStores['jobs'];
  readonly id: string;
  readonly clock: TestClock;
  constructor(jobs: NumberedStores['jobs'], id: string, clock: TestClock) {
    this.jobs = jobs;
    this.id = id;
    this.clock = clock;
  }

  async create(by: number): Promise<void> {
    const text = `made by ${by} as ${this.oracle.head + 1}`;
    const created = await this.jobs.create(heading(this.id), text);
    if (this.oracle.head > 0 && !this.oracle.removed) {
      expect(created).toEqual({ outcome: 'id-taken' });
      return;
    }
    this.oracle.texts.push(text);
    this.oracle.removed = false;
    this.oracle.held[by] = this.oracle.head;
    expect(created).toMatchObject({ outcome: 'created', revision: this.oracle.head });
  }

  /** True when it went in. */
  async save(by: number, base: number, saveHow: SaveHow): Promise<boolean> {
    const text = `by ${by} on ${base} as ${this.oracle.head + 1}`;
    const saved = await this.jobs.save(heading(this.id), text, base, saveHow);
    if (this.oracle.removed) {
      expect(saved).toEqual({ outcome: 'no-such-job' });
      return false;
    }
    if (base !== this.oracle.head) {
      expect(saved).toMatchObject({ outcome: 'stale', revision: this.oracle.head });
      this.oracle.told[by] = this.oracle.head;
      return false;
    }
    this.oracle.texts.push(text);
    expect(saved).toMatchObject({ outcome: 'saved', revision: this.oracle.head });
    return true;
  }

  async read(by: number): Promise<void> {
    const read = await this.jobs.read(this.id);
    if (this.oracle.removed) {
      expect(read).toBeNull();
      return;
    }
    expect(read).toMatchObject({ revision: this.oracle.head, text: this.oracle.textOf(this.oracle.head) });
    this.oracle.held[by] = this.oracle.head;
    this.oracle.forGood.add(this.oracle.head);
  }

  async readRevision(by: number, revision: number): Promise<void> {
    const read = await this.jobs.readRevision(this.id, revision);
    if (read === null) return;
    expect(read).toMatchObject({ revision, text: this.oracle.textOf(revision) });
    this.oracle.held[by] = revision;
    this.oracle.forGood.add(revision);
  }

  async keep(revision: number): Promise<void> {
    if (await this.jobs.keep(this.id, revision, 'named')) this.oracle.forGood.add(revision);
  }

  async removeOrRestore(act: 'remove' | 'restore'): Promise<void> {
    const done =
      act === 'remove' ? await this.jobs.remove(this.id, this.oracle.head) : await this.jobs.restore(this.id);
    const nothingToRemove = act === 'remove' && this.oracle.removed;
    expect(done.outcome).toBe(nothingToRemove ? 'no-such-job' : 'saved');
    this.oracle.removed = act === 'remove';
    if (act === 'restore') this.oracle.told.fill(this.oracle.head);
  }

  async saveOnWhatWasTold(by: number, saveHow: SaveHow): Promise<void> {
    const told = this.oracle.told[by] ?? null;
    if (told === null) return;
    if (await this.save(by, told, saveHow)) {
      this.oracle.held[by] = this.oracle.head;
      this.oracle.told[by] = null;
    }
  }

  async act(act: Act): Promise<void> {
    if (act.act === 'wait') this.clock.pass(act.ms);
    else if (act.act === 'create') await this.create(act.client);
    else if (act.act === 'read') await this.read(act.client);
    else if (act.act === 'keep') await this.keep(Math.max(1, this.oracle.head - act.back));
    else if (act.act === 'read-revision')
      await this.readRevision(act.client, Math.max(1, this.oracle.head - act.back));
    else if (act.act === 'save-on-what-was-told') await this.saveOnWhatWasTold(act.client, act.how);
    else if (act.act === 'save') {
      const base = this.oracle.held[act.client] ?? null;
      // Where the answer is lost, the client goes on holding what it had.
      if (base !== null && (await this.save(act.client, base, act.how)) && act.heard)
        this.oracle.held[act.client] = this.oracle.head;
    } else await this.removeOrRestore(act.act);
  }

  /** Looks without being handed anything. */
  async isThere(): Promise<readonly number[]> {
    return ((await this.jobs.revisions(this.id)) ?? []).map(({ revision }) => revision);
  }
}

describe('whatever several people do to one job', () => {
  it('every revision that one of them holds, that was handed out, or that is kept reads as it was saved', async () => {
    let round = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(acts, { minLength: 10, maxLength: 60 }), async (list) => {
        round += 1;
        const play = new Play(store.stores.jobs, `bases${round}`, store.clock);
        await play.create(0);
        for (const act of list) {
          await play.act(act);
          expect(await play.isThere()).toEqual(expect.arrayContaining([...play.oracle.mustBeThere]));
        }
        for (const revision of play.oracle.mustBeThere)
          expect((await play.jobs.readRevision(play.id, revision))?.text).toBe(play.oracle.textOf(revision));
      }),
      { numRuns: 150 },
    );
  }, 60_000);

  it('a whole afternoon of one hand leaves no more than a step of every ten minutes and the last two', async () => {
    let round = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 500, max: 90_000 }), { minLength: 20, maxLength: 80 }),
        async (pausesMs) => {
          round += 1;
          const id = `afternoon${round}`;
          const { jobs } = store.stores;
          await jobs.create(heading(id), 'first');
          for (const [i, ms] of pausesMs.entries()) {
            store.clock.pass(ms);
            await jobs.save(heading(id), `text ${i}`, i + 1, 'autosave');
          }
          // Chains that were begun in that time.
          const tenMinutes = Math.ceil(pausesMs.reduce((sum, ms) => sum + ms, 0) / 600_000);
          // The first, the last of each chain, and the one that the last save was made on.
          expect((await jobs.revisions(id))?.length).toBeLessThanOrEqual(1 + tenMinutes + 1);
        },
      ),
      { numRuns: 15 },
    );
  }, 60_000);
});
