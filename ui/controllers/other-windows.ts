/** How often a window in sight looks whether its job is still on the list: other machines cannot tell it, ms. */
const LOOK_MS = 30_000;
/** The one message there is: jobs went off the list, or came back. */
const LIST_CHANGED = 'list-changed';

/**
 * What other windows do to the list of jobs. Windows of this browser tell each other at once; of other machines a
 * window knows by looking: when it is come back to, and now and then while it is in sight.
 */
export class OtherWindows {
  readonly #look: () => void;
  #channel: BroadcastChannel | null = null;
  #timer: ReturnType<typeof setInterval> | undefined;

  /** @param look is called whenever something may have been done elsewhere. */
  constructor(look: () => void) {
    this.#look = look;
  }

  start(): void {
    this.#channel = new BroadcastChannel('ringwright');
    this.#channel.addEventListener('message', this.#look);
    addEventListener('focus', this.#look);
    this.#timer = setInterval(() => {
      if (document.visibilityState === 'visible') this.#look();
    }, LOOK_MS);
  }

  stop(): void {
    this.#channel?.close();
    this.#channel = null;
    removeEventListener('focus', this.#look);
    clearInterval(this.#timer);
  }

  /** Tells the others that this window took a job off the list, or put one back. */
  tell(): void {
    this.#channel?.postMessage(LIST_CHANGED);
  }
}
