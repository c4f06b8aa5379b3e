import type { TakeOver } from './offline-files.ts';

/** How often a page that stays open asks for a newer version, ms. */
const LOOK_MS = 60 * 60_000;
/** How long a version that was just found may take to be fetched, ms. */
const FETCH_MS = 20_000;

/** What the browser keeps for the product to open without a connection, and its newer versions. */
export class AppUpdate {
  #registration: ServiceWorkerRegistration | null = null;
  #timer: ReturnType<typeof setInterval> | undefined;
  readonly #container: ServiceWorkerContainer | undefined;
  readonly #changed: () => void;
  /** Loads the page anew, once all that is typed is kept. */
  readonly #reload: () => void;

  /** @param container none over plain HTTP, where browsers keep no page. */
  constructor(
    { changed, reload }: { readonly changed: () => void; readonly reload: () => void },
    container: ServiceWorkerContainer | undefined = globalThis.navigator?.serviceWorker,
  ) {
    this.#container = container;
    this.#changed = changed;
    this.#reload = reload;
  }

  /** True when a newer version is there and waits to be taken. */
  get waits(): boolean {
    return this.#registration?.waiting != null;
  }

  /** Has the product kept on the device, and looks for newer versions from now on. */
  async start(): Promise<void> {
    const container = this.#container;
    if (container === undefined) return;
    // The first version of all takes the page as it is; each later one is another page.
    let hadOne = container.controller !== null;
    container.addEventListener('controllerchange', () => {
      if (hadOne) this.#reload();
      hadOne = true;
    });
    try {
      this.#registration = await container.register('/service-worker.js');
    } catch {
      // A private window, or a server that is being changed over: the product runs as long as there is a connection.
      return;
    }
    // A browser that was told to keep no such worker gives none back, against its promise.
    if (this.#registration == null) return;
    this.#registration.addEventListener('updatefound', () => this.#found());
    this.#found();
    this.#timer = setInterval(() => void this.look(), LOOK_MS);
  }

  stop(): void {
    clearInterval(this.#timer);
  }

  #found(): void {
    this.#registration?.installing?.addEventListener('statechange', () => this.#changed());
    this.#changed();
  }

  /** Asks the server for a newer version. */
  async look(): Promise<void> {
    await this.#registration?.update().catch(() => {});
  }

  /** Goes on with the newest version there is: the one that waits, else whatever the server has. */
  async take(): Promise<void> {
    await this.look();
    const { installing } = this.#registration ?? {};
    if (installing != null) await settled(installing);
    const waiting = this.#registration?.waiting;
    // Which then takes over every open page, and each loads itself anew.
    if (waiting != null) waiting.postMessage('take-over' satisfies TakeOver);
    else this.#reload();
  }
}

/** Resolves when a version has been fetched, or could not be. */
const settled = (worker: ServiceWorker): Promise<void> =>
  new Promise((resolve) => {
    const done = (): void => {
      if (worker.state !== 'installing') resolve();
    };
    worker.addEventListener('statechange', done);
    setTimeout(resolve, FETCH_MS);
    done();
  });
