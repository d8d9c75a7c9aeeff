// One command at a time.
//
// A command starts only while no other is running, so that a double tap counts once. The states
// are free, doing, settling, and free again. While a command settles it is done and answered, but
// a second tap that was meant for it may still come, and is ignored. Commands that may wait are
// queued and done in order, as soon as the turn is free. A command clears the message before it:
// a problem when it starts, an offer to undo when it is done.

import type { Messages } from './messages.svelte';

/** A second tap within this time is ignored, in milliseconds. */
const SETTLE = 300;

/** The outcome of a command: it was done, it failed, or it was not started. */
export type Outcome<T> = { is: 'done'; answer: T } | { is: 'failed' } | { is: 'busy' };

export class Turns {
  private state = $state<'free' | 'doing' | 'settling'>('free');
  private readonly queue: (() => void)[] = [];

  constructor(private readonly messages: Messages) {}

  /** A command is running or has only just been done. */
  get busy(): boolean {
    return this.state !== 'free';
  }

  /** Do this unless another command is running. */
  async run<T>(request: () => Promise<T>, settle = SETTLE): Promise<Outcome<T>> {
    if (this.busy) return { is: 'busy' };
    this.state = 'doing';
    this.messages.problem = null;
    try {
      const answer = await request();
      this.messages.second = null;
      return { is: 'done', answer };
    } catch (thrown) {
      this.messages.fail(thrown);
      return { is: 'failed' };
    } finally {
      this.state = 'settling';
      setTimeout(() => this.free(), settle);
    }
  }

  /** Do this now, or as soon as the turn is free. */
  whenFree(run: () => void) {
    this.queue.push(run);
    this.next();
  }

  private free() {
    this.state = 'free';
    this.next();
  }

  /** Do what waits, until something of it takes the turn. */
  private next() {
    while (!this.busy) {
      const run = this.queue.shift();
      if (!run) return;
      run();
    }
  }
}
