import { and, desc, eq, sql } from 'drizzle-orm';
import type { Database } from './open-database.ts';
import { libraries } from './schema/libraries.ts';
import type { LibraryStore } from './stores.ts';
import { tagOf } from './tag-of.ts';

/** The library of one firm in a database. */
export function libraryStore(database: Database, firmId: string, now: () => Date): LibraryStore {
  const columns = {
    text: libraries.text,
    revision: libraries.revision,
    tag: libraries.tag,
    savedAt: libraries.savedAt,
  };
  const newest = async () => {
    const [row] = await database.reader
      .select(columns)
      .from(libraries)
      .where(eq(libraries.firmId, firmId))
      .orderBy(desc(libraries.revision))
      .limit(1);
    return row ?? null;
  };
  return {
    read: newest,
    readRevision: async (revision) => {
      const [row] = await database.reader
        .select(columns)
        .from(libraries)
        .where(and(eq(libraries.firmId, firmId), eq(libraries.revision, revision)));
      return row ?? null;
    },
    save: async (text, base) => {
      const savedAt = now().toISOString();
      const tag = tagOf(text);
      const made = await database.write((writer) =>
        writer.all<{ revision: number }>(sql`
          insert into ${libraries} (firm_id, revision, text, saved_at, tag)
          select ${firmId}, ${base.revision + 1}, ${text}, ${savedAt}, ${tag}
          where coalesce((select max(revision) from ${libraries} where firm_id = ${firmId}), 0) = ${base.revision}
            and (${base.revision} = 0 or exists (
              select 1 from ${libraries}
              where firm_id = ${firmId} and revision = ${base.revision} and tag = ${base.tag}))
          returning revision`),
      );
      if (made.length > 0) return { outcome: 'saved', revision: base.revision + 1, tag, savedAt };
      const head = await newest();
      return {
        outcome: 'stale',
        revision: head?.revision ?? 0,
        tag: head?.tag ?? '',
        savedAt: head?.savedAt ?? '',
      };
    },
  };
}
