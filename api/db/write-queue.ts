/** Runs tasks one after another in the order in which they were asked for; one that fails does not stop the next. */
export class WriteQueue {
  #last: Promise<unknown> = Promise.resolve();

  /** Resolves or rejects as the task does, once all before it are done. */
  run<T>(task: () => Promise<T>): Promise<T> {
    const turn = this.#last.then(task, task);
    this.#last = turn.catch(() => undefined);
    return turn;
  }

  /** Resolves when everything asked for so far is done. */
  async idle(): Promise<void> {
    await this.#last;
  }
}
