// The layout search as the window follows it. The search reports what it has found while it runs,
// and it is stopped when its screen is left. Nothing else waits for it.

import * as ipc from './ipc';
import { openThrow, messages } from './store';
import { t } from './words.svelte';
import type { Layouts, Wishes } from './types';

export class Arranging {
  found = $state.raw<Layouts | null>(null);
  /** What was asked for, while it is looked for and shown. */
  wishes = $state.raw<Wishes | null>(null);

  /** Counts searches, so that what is reported of an older one is dropped. */
  private search = 0;

  start(wishes: Wishes) {
    const { id } = openThrow;
    if (id === null) return;
    this.halt();
    this.wishes = wishes;
    this.found = null;
    messages.problem = null;
    messages.say(t('ui-looking'));
    // Any number will do: another number, another four.
    const seed = crypto.getRandomValues(new Uint32Array(1))[0];
    void this.follow(ipc.arrange(id, wishes, seed, this.hear()));
  }

  /** Stop looking; what was found stays. */
  stop() {
    this.halt();
    void this.follow(ipc.stopArranging());
  }

  /** Give the search up with all it found. */
  drop() {
    if (!this.wishes) return;
    this.halt();
    this.wishes = null;
    this.found = null;
    void ipc.stopArranging().catch(() => undefined);
  }

  private halt() {
    this.search += 1;
  }

  /** Takes in what this search tells, as long as it is the newest. */
  private hear() {
    const { search } = this;
    return (found: Layouts) => {
      if (search === this.search) this.found = found;
    };
  }

  /** What the newest search comes to in the end. */
  private async follow(ending: Promise<Layouts | null>) {
    const { search } = this;
    try {
      const found = await ending;
      if (search !== this.search) return;
      this.halt();
      this.found = found;
      if (found) messages.say(found.said);
    } catch (thrown) {
      if (search !== this.search) return;
      this.drop();
      messages.fail(thrown);
    }
  }
}
