import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Moved, MovedChannel } from '../moved/moved-channel.ts';

/** Draws its element anew when what that shows of a point under the hand has changed, and for nothing else. */
export class MovedFollower<Part> implements ReactiveController {
  #channel: MovedChannel | null = null;
  #end = (): void => {};
  #seen: Part | null = null;
  readonly #host: ReactiveControllerHost;
  readonly #channelNow: () => MovedChannel | null;
  readonly #partOf: (moved: Moved) => Part | null;

  /**
   * @param channelNow the channel of the job that the element shows; null before it shows one.
   * @param partOf what the element shows of it: the same object for as long as that stays the same.
   */
  constructor(
    host: ReactiveControllerHost,
    channelNow: () => MovedChannel | null,
    partOf: (moved: Moved) => Part | null,
  ) {
    this.#host = host;
    this.#channelNow = channelNow;
    this.#partOf = partOf;
    host.addController(this);
  }

  /** Null while the element shows what its properties say. */
  get now(): Part | null {
    const moved = this.#channelNow()?.now ?? null;
    return moved === null ? null : this.#partOf(moved);
  }

  hostUpdate(): void {
    this.#seen = this.now;
    const channel = this.#channelNow();
    if (channel === this.#channel) return;
    this.#end();
    this.#channel = channel;
    this.#end = channel?.listen(() => this.#told()) ?? (() => {});
  }

  /** What was let go of is listened to again. */
  hostConnected(): void {
    this.#host.requestUpdate();
  }

  hostDisconnected(): void {
    this.#end();
    this.#channel = null;
  }

  #told(): void {
    if (this.now !== this.#seen) this.#host.requestUpdate();
  }
}
