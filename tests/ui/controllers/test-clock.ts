import type { Clock } from '../../../ui/controllers/estimating.ts';

interface Due {
  readonly atMs: number;
  readonly then: () => void;
}

/** So many turns of whatever answers, with time for a store that looks at its file. */
async function arrivals(turns: number): Promise<void> {
  for (let i = 0; i < turns; i += 1) {
    await new Promise((resolve) => setImmediate(resolve));
    await new Promise((resolve) => setTimeout(resolve, 1));
  }
}

/** A clock that goes on when a test says so; timers go off in the order of their time. */
export class TestClock implements Clock {
  nowMs = 0;
  frames = 0;
  #timers: readonly Due[] = [];
  #frames: readonly (() => void)[] = [];

  readonly wait = (ms: number, then: () => void): (() => void) => {
    const timer = { atMs: this.nowMs + ms, then };
    this.#timers = [...this.#timers, timer];
    return () => {
      this.#timers = this.#timers.filter((one) => one !== timer);
    };
  };

  readonly frame = (then: () => void): (() => void) => {
    const asked = (): void => then();
    this.#frames = [...this.#frames, asked];
    return () => {
      this.#frames = this.#frames.filter((one) => one !== asked);
    };
  };

  get waiting(): number {
    return this.#timers.length;
  }

  /** Draws one picture. */
  draw(): void {
    const due = this.#frames;
    this.#frames = [];
    this.frames += due.length;
    for (const then of due) then();
  }

  /** Lets time pass, and whatever is due in it. */
  pass(ms: number): void {
    const untilMs = this.nowMs + ms;
    for (;;) {
      const [next] = this.#timers.filter(({ atMs }) => atMs <= untilMs).sort((a, b) => a.atMs - b.atMs);
      if (next === undefined) break;
      this.#timers = this.#timers.filter((one) => one !== next);
      this.nowMs = Math.max(this.nowMs, next.atMs);
      next.then();
    }
    this.nowMs = untilMs;
  }

  /** As `pass`, and lets answers arrive in between. */
  async settle(ms: number): Promise<void> {
    await arrivals(4);
    this.pass(ms);
    await arrivals(12);
  }
}
