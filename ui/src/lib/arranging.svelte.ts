// The search for layouts as the window follows it: asked how far it is four times a
// second while it runs, and stopped when its screen is left. Nothing else waits for it.

import * as ipc from './ipc';
import { inHand, told } from './store';
import { t } from './words.svelte';
import type { Arrange, Layouts, Wishes } from './types';

/** How long between two looks, in milliseconds. */
const PAUSE = 250;

export class Arranging {
  found = $state.raw<Layouts | null>(null);
  /** What was asked for, while it is looked for and shown. */
  wishes = $state.raw<Wishes | null>(null);

  private timer: ReturnType<typeof setTimeout> | undefined;
  /** Counts searches, so that an answer about an older one is dropped. */
  private search = 0;

  start(wishes: Wishes) {
    const { id } = inHand;
    if (id === null) return;
    this.halt();
    this.wishes = wishes;
    this.found = null;
    told.problem = null;
    told.say(t('ui-looking'));
    // Any number will do: another number, another four.
    const seed = crypto.getRandomValues(new Uint32Array(1))[0];
    void this.ask({ ask: 'start', id, wishes, seed });
  }

  /** Stop looking; what was found stays. */
  stop() {
    const search = this.halt();
    void this.ask({ ask: 'stop' }, search);
  }

  /** Give the search up with all it found. */
  drop() {
    if (!this.wishes) return;
    this.halt();
    this.wishes = null;
    this.found = null;
    void ipc.arrange({ ask: 'stop' }).catch(() => undefined);
  }

  private halt(): number {
    clearTimeout(this.timer);
    return ++this.search;
  }

  private async ask(ask: Arrange, search = this.search) {
    try {
      const found = await ipc.arrange(ask);
      if (search !== this.search) return;
      this.found = found;
      if (found?.running) {
        this.timer = setTimeout(() => void this.ask({ ask: 'look' }), PAUSE);
      } else if (found) {
        told.say(found.said);
      }
    } catch (thrown) {
      if (search !== this.search) return;
      this.drop();
      told.fail(thrown);
    }
  }
}
