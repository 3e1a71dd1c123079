// Runs one slow job at a time for any number of askers. Whoever asks while it runs is served by one more run, so
// that everything done before the asking is covered by a run that begins after it.

export class AskQueue {
  #running: Promise<void> | undefined;
  #askedAgain = false;

  /** @param job must not reject. */
  constructor(readonly job: () => Promise<unknown>) {}

  /** Returns at once. */
  ask(): void {
    if (this.#running === undefined) this.#running = this.#run();
    else this.#askedAgain = true;
  }

  /** Resolves when nothing runs and nothing is asked for. */
  async idle(): Promise<void> {
    while (this.#running !== undefined) await this.#running;
  }

  async #run(): Promise<void> {
    do {
      this.#askedAgain = false;
      await this.job();
    } while (this.#askedAgain);
    this.#running = undefined;
  }
}
