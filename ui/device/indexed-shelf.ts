import type { PictureHead, PictureShelf } from './picture-shelf.ts';
import { answered, finished } from './requests.ts';

/** What is known of each picture, apart from its bytes: the outbox is made of these, and bytes are large. */
const HEADS = 'picture-heads';
const BYTES = 'picture-bytes';

/** Makes the shelf's place in a database that is being made or changed. */
export function makeShelf(database: IDBDatabase): void {
  database.createObjectStore(HEADS, { keyPath: 'id' });
  database.createObjectStore(BYTES);
}

/** Changes the shelf in one transaction, by what is known of a picture before. */
async function change(
  database: IDBDatabase,
  id: string,
  act: (had: PictureHead | undefined, heads: IDBObjectStore, bytes: IDBObjectStore) => void,
): Promise<void> {
  const transaction = database.transaction([HEADS, BYTES], 'readwrite', { durability: 'strict' });
  const end = finished(transaction);
  const heads = transaction.objectStore(HEADS);
  const asked = heads.get(id);
  asked.onsuccess = () => act(asked.result as PictureHead | undefined, heads, transaction.objectStore(BYTES));
  await end;
}

/** The shelf over an open database. Bytes lie there as such: some older browsers did not keep blobs (from memory). */
export function shelfOver(database: IDBDatabase): PictureShelf {
  return {
    heads: () =>
      answered(database.transaction(HEADS).objectStore(HEADS).getAll() as IDBRequest<PictureHead[]>),
    read: async (id) => {
      const transaction = database.transaction([HEADS, BYTES]);
      const [head, bytes] = await Promise.all([
        answered(transaction.objectStore(HEADS).get(id) as IDBRequest<PictureHead | undefined>),
        answered(transaction.objectStore(BYTES).get(id) as IDBRequest<Uint8Array<ArrayBuffer> | undefined>),
      ]);
      return head === undefined || bytes === undefined ? null : { head, bytes };
    },
    put: ({ head, bytes }) =>
      change(database, head.id, (had, heads, contents) => {
        heads.put({ ...head, isSent: head.isSent || had?.isSent === true });
        contents.put(bytes, head.id);
      }),
    markSent: (id) =>
      change(database, id, (had, heads) => {
        if (had !== undefined) heads.put({ ...had, isSent: true });
      }),
    drop: async (ids) => {
      const transaction = database.transaction([HEADS, BYTES], 'readwrite', { durability: 'strict' });
      for (const id of ids) {
        transaction.objectStore(HEADS).delete(id);
        transaction.objectStore(BYTES).delete(id);
      }
      await finished(transaction);
    },
  };
}
