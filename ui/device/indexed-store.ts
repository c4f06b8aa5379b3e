import { type DeviceStore, memoryStore } from './device-store.ts';
import { makeShelf, shelfOver } from './indexed-shelf.ts';
import type { CopyHead, Held } from './kept-copy.ts';
import { answered, finished } from './requests.ts';

/** 2: pictures have a place beside the copies. */
const VERSION = 2;
/** What is known of each copy, apart from what it holds: lists are made of these, and holdings are large. */
const HEADS = 'heads';
const HOLDINGS = 'holdings';
const NOTES = 'notes';
const ALL = [HEADS, HOLDINGS];

function openDatabase(factory: IDBFactory, name: string): Promise<IDBDatabase> {
  const request = factory.open(name, VERSION);
  request.onupgradeneeded = ({ oldVersion }) => {
    if (oldVersion < 1) {
      request.result.createObjectStore(HEADS, { keyPath: 'key' });
      request.result.createObjectStore(HOLDINGS);
      request.result.createObjectStore(NOTES);
    }
    makeShelf(request.result);
  };
  return answered(request);
}

/** Changes a copy in one transaction, if its head is as it has to be; false where it is not. */
async function change(
  database: IDBDatabase,
  key: string,
  act: (had: CopyHead | undefined, heads: IDBObjectStore, holdings: IDBObjectStore) => boolean,
): Promise<boolean> {
  // Written through to the disk: a battery that dies takes nothing along.
  const transaction = database.transaction(ALL, 'readwrite', { durability: 'strict' });
  const end = finished(transaction);
  const heads = transaction.objectStore(HEADS);
  let acted = false;
  const asked = heads.get(key);
  // Within the answer itself, so that the transaction cannot be over before.
  asked.onsuccess = () => {
    acted = act(asked.result as CopyHead | undefined, heads, transaction.objectStore(HOLDINGS));
    // It goes on though the page is closed in this moment.
    transaction.commit();
  };
  await end;
  return acted;
}

/** The store over an open database. */
function storeOver(database: IDBDatabase): DeviceStore {
  return {
    lasts: true,
    pictures: shelfOver(database),
    heads: () => answered(database.transaction(HEADS).objectStore(HEADS).getAll() as IDBRequest<CopyHead[]>),
    read: async (key) => {
      const transaction = database.transaction(ALL);
      const [head, held] = await Promise.all([
        answered(transaction.objectStore(HEADS).get(key) as IDBRequest<CopyHead | undefined>),
        answered(transaction.objectStore(HOLDINGS).get(key) as IDBRequest<Held<unknown> | undefined>),
      ]);
      return head === undefined || held === undefined ? null : { head, held };
    },
    write: ({ head, held }) =>
      change(database, head.key, (had, heads, holdings) => {
        if (had !== undefined && had.owner !== head.owner) return false;
        heads.put(head);
        holdings.put(held, head.key);
        return true;
      }),
    claim: (key, from, to) =>
      change(database, key, (had, heads) => {
        if (had?.owner !== from) return false;
        heads.put({ ...had, owner: to });
        return true;
      }),
    drop: async (key, owner) => {
      await change(database, key, (had, heads, holdings) => {
        if (had?.owner !== owner) return false;
        heads.delete(key);
        holdings.delete(key);
        return true;
      });
    },
    note: (name) => answered(database.transaction(NOTES).objectStore(NOTES).get(name)),
    writeNote: async (name, value) => {
      const transaction = database.transaction(NOTES, 'readwrite');
      transaction.objectStore(NOTES).put(value, name);
      await finished(transaction);
    },
  };
}

/**
 * The browser's own store. Where it gives none (a private window, a full disk, settings), one that lasts as long as the
 * page, which says so by `lasts`.
 *
 * @param name of the database: each firm has its own.
 */
export async function openDeviceStore(
  name = 'ringwright',
  factory: () => IDBFactory | undefined = () => globalThis.indexedDB,
): Promise<DeviceStore> {
  try {
    const found = factory();
    if (found === undefined) return memoryStore();
    const database = await openDatabase(found, name);
    // A page of a newer version wants to change the store's shape: it is not to wait for this one.
    database.onversionchange = () => database.close();
    return storeOver(database);
  } catch {
    return memoryStore();
  }
}
