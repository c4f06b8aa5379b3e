import { answerFrom, fileFor, type OfflineFiles, type TakeOver, takeDown } from './offline-files.ts';

/** The files of the build that this is part of; written in when it is built. */
declare const OFFLINE_FILES: OfflineFiles;

/** What a service worker hears; TypeScript's own words for it do not go with those for pages. */
interface LifeEvent extends Event {
  readonly waitUntil: (done: Promise<unknown>) => void;
}
interface AskEvent extends LifeEvent {
  readonly request: Request;
  readonly respondWith: (answer: Promise<Response>) => void;
}
const worker = globalThis as unknown as {
  readonly location: Location;
  readonly clients: { readonly claim: () => Promise<void> };
  readonly skipWaiting: () => Promise<void>;
  readonly addEventListener: (type: string, hear: (event: never) => void) => void;
};

// All files of a version are there, or it does not come to be: old and new are never mixed.
worker.addEventListener('install', (event: LifeEvent) => event.waitUntil(takeDown(OFFLINE_FILES, caches)));

worker.addEventListener('activate', (event: LifeEvent) => {
  const clear = async (): Promise<void> => {
    for (const name of await caches.keys()) if (name !== OFFLINE_FILES.version) await caches.delete(name);
    await worker.clients.claim();
  };
  event.waitUntil(clear());
});

// A new version waits until somebody presses the button that says so.
worker.addEventListener('message', (event: LifeEvent & { readonly data: unknown }) => {
  if (event.data === ('take-over' satisfies TakeOver)) event.waitUntil(worker.skipWaiting());
});

worker.addEventListener('fetch', (event: AskEvent) => {
  const path = fileFor(OFFLINE_FILES, event.request, worker.location.origin);
  if (path !== null) event.respondWith(answerFrom(OFFLINE_FILES.version, path, event.request));
});
