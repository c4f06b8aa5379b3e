import { and, asc, desc, eq, sql } from 'drizzle-orm';
import type { Database } from './open-database.ts';
import type { LinkedQuotation, LinkStore } from './people-stores.ts';
import { quotationLinks } from './schema/quotation-links.ts';

const linkColumns = {
  id: quotationLinks.linkId,
  quotationId: quotationLinks.quotationId,
  madeAt: quotationLinks.madeAt,
  expiresAt: quotationLinks.expiresAt,
  withdrawnAt: quotationLinks.withdrawnAt,
};

/** The links of one firm's quotations in a database. */
export function linkStore(database: Database, firmId: string, now: () => Date): LinkStore {
  const ofJob = (jobId: string) => and(eq(quotationLinks.firmId, firmId), eq(quotationLinks.jobId, jobId));
  return {
    list: (jobId) =>
      database.reader
        .select(linkColumns)
        .from(quotationLinks)
        .where(ofJob(jobId))
        .orderBy(desc(quotationLinks.madeAt), asc(quotationLinks.linkId)),
    make: async ({ id, tokenHash, jobId, quotationId, expiresAt }) => {
      const madeAt = now().toISOString();
      const values = { firmId, linkId: id, tokenHash, jobId, quotationId, madeAt, expiresAt };
      await database.write((writer) => writer.insert(quotationLinks).values(values));
      return { id, quotationId, madeAt, expiresAt, withdrawnAt: null };
    },
    withdraw: async (jobId, quotationId, linkId) => {
      const thisLink = and(
        ofJob(jobId),
        eq(quotationLinks.quotationId, quotationId),
        eq(quotationLinks.linkId, linkId),
      );
      const [link] = await database.write((writer) =>
        writer
          .update(quotationLinks)
          .set({ withdrawnAt: sql`coalesce(${quotationLinks.withdrawnAt}, ${now().toISOString()})` })
          .where(thisLink)
          .returning(linkColumns),
      );
      return link ?? null;
    },
  };
}

/** Where the link of a token leads, over all firms; null where there is none. Whether it may still be used is told by its times. */
export async function linkedQuotation(
  database: Pick<Database, 'reader'>,
  tokenHash: string,
): Promise<LinkedQuotation | null> {
  const [row] = await database.reader
    .select({ ...linkColumns, firmId: quotationLinks.firmId, jobId: quotationLinks.jobId })
    .from(quotationLinks)
    .where(eq(quotationLinks.tokenHash, tokenHash));
  return row ?? null;
}
