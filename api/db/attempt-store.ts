import { eq, inArray, lt, sql } from 'drizzle-orm';
import { countedAt, FORGOTTEN_MS, waitLeftMs } from './attempt-waits.ts';
import type { Database } from './open-database.ts';
import type { AttemptStore, Counted } from './people-stores.ts';
import { attempts } from './schema/attempts.ts';

/** Guesses of late, in a database. */
export function attemptStore(database: Database, now: () => Date): AttemptStore {
  const take = (by: readonly Counted[]): Promise<number> =>
    // One after the other, as all writes: guesses that come at once are counted before any of them is looked into.
    database.write(async (writer) => {
      const at = now();
      const keys = by.map(({ key }) => key);
      const rows = await writer.select().from(attempts).where(inArray(attempts.counted, keys));
      const had = by.map(({ key, rule }) => {
        const row = rows.find(({ counted }) => counted === key) ?? null;
        return { key, rule, ...countedAt(row, at) };
      });
      const wait = Math.max(0, ...had.map((one) => waitLeftMs(one, one.rule, at)));
      const added = wait === 0 ? 1 : 0;
      for (const { key, failures, lastAt } of had) {
        const now = { failures: failures + added, lastAt: added === 1 ? at.toISOString() : lastAt };
        await writer
          .insert(attempts)
          .values({ counted: key, ...now })
          .onConflictDoUpdate({ target: attempts.counted, set: now });
      }
      const forgotten = new Date(at.getTime() - FORGOTTEN_MS).toISOString();
      await writer.delete(attempts).where(lt(attempts.lastAt, forgotten));
      return wait;
    });
  return {
    take,
    clear: async (key) => {
      await database.write((writer) => writer.delete(attempts).where(eq(attempts.counted, key)));
    },
    giveBack: async (key) => {
      await database.write((writer) =>
        writer
          .update(attempts)
          .set({ failures: sql`max(0, ${attempts.failures} - 1)` })
          .where(eq(attempts.counted, key)),
      );
    },
  };
}
