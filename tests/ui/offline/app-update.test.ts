import { afterEach, describe, expect, it } from 'vitest';
import { AppUpdate } from '../../../ui/offline/app-update.ts';

interface TestWorker extends EventTarget {
  state: string;
  readonly heard: unknown[];
  readonly postMessage: (said: unknown) => void;
}

function testWorker(state: string): TestWorker {
  const heard: unknown[] = [];
  return Object.assign(new EventTarget(), {
    state,
    heard,
    postMessage: (said: unknown) => void heard.push(said),
  });
}

/** A browser's service workers, as much of them as is used; `found` is what an update brings. */
function testBrowser(controller: TestWorker | null, found: TestWorker | null = null) {
  const registration = Object.assign(new EventTarget(), {
    waiting: null as TestWorker | null,
    installing: null as TestWorker | null,
    update: async () => {
      registration.waiting = found;
      registration.dispatchEvent(new Event('updatefound'));
    },
  });
  const container = Object.assign(new EventTarget(), { controller, register: async () => registration });
  return { registration, container: container as unknown as ServiceWorkerContainer };
}

const begun: AppUpdate[] = [];
afterEach(() => {
  for (const update of begun.splice(0)) update.stop();
});

function begin(container: ServiceWorkerContainer | undefined) {
  const told = { changed: 0, reloaded: 0 };
  const update = new AppUpdate(
    { changed: () => void told.changed++, reload: () => void told.reloaded++ },
    container,
  );
  begun.push(update);
  return { told, update };
}

describe('a browser that keeps no worker', () => {
  it.each([
    ['has none', undefined],
    [
      'gives none back',
      Object.assign(new EventTarget(), { controller: null, register: async () => undefined }),
    ],
    [
      'refuses',
      Object.assign(new EventTarget(), { controller: null, register: () => Promise.reject(new Error('no')) }),
    ],
  ])('that %s runs the product all the same', async (_, container) => {
    const { told, update } = begin(container as unknown as ServiceWorkerContainer | undefined);
    await update.start();
    await update.look();
    expect([update.waits, told.reloaded]).toEqual([false, 0]);
  });
});

describe('a newer version of the product', () => {
  it('waits until it is taken, and is said to be there', async () => {
    const next = testWorker('installed');
    const { registration, container } = testBrowser(testWorker('activated'), next);
    const { told, update } = begin(container);
    await update.start();
    expect(update.waits).toBe(false);
    await update.look();
    expect([update.waits, next.heard, told.reloaded]).toEqual([true, [], 0]);
    expect(told.changed).toBeGreaterThan(0);
    await update.take();
    expect(next.heard).toEqual(['take-over']);
    expect(registration.waiting).toBe(next);
    // It is the browser that says when it has taken over.
    expect(told.reloaded).toBe(0);
    container.dispatchEvent(new Event('controllerchange'));
    expect(told.reloaded).toBe(1);
  });

  it('is loaded from the server where none waits', async () => {
    const { container } = testBrowser(testWorker('activated'));
    const { told, update } = begin(container);
    await update.start();
    await update.take();
    expect(told.reloaded).toBe(1);
  });

  it('is not meant by the first one of all, which takes the page as it is', async () => {
    const { container } = testBrowser(null);
    const { told, update } = begin(container);
    await update.start();
    container.dispatchEvent(new Event('controllerchange'));
    expect(told.reloaded).toBe(0);
    container.dispatchEvent(new Event('controllerchange'));
    expect(told.reloaded).toBe(1);
  });

  it('is loaded from the server over plain HTTP, where browsers keep no page', async () => {
    const { told, update } = begin(undefined);
    await update.start();
    expect(update.waits).toBe(false);
    await update.take();
    expect(told.reloaded).toBe(1);
  });
});
