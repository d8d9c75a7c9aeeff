// The messages beside the screen: a problem, an offer to undo what was just done, and the
// announcement for screen readers.
//
// There is at most one problem and one offer at a time; a newer one replaces it.

import type { Problem } from './types';
import { t } from './words.svelte';

/** Something that can be taken back at once. */
export interface Second {
  text: string;
  label: string;
  run: () => void;
}

export class Messages {
  problem = $state.raw<Problem | null>(null);
  second = $state.raw<Second | null>(null);
  /** The last announcement, for screen readers. */
  said = $state('');

  /** `problemOf` knows a problem of the core's from any other thing that was thrown. */
  constructor(private readonly problemOf: (thrown: unknown) => Problem | null) {}

  /** Show what was thrown; anything but a Problem of the core is a fault of the window. */
  fail(thrown: unknown) {
    this.problem = this.problemOf(thrown) ?? {
      code: 'window',
      said: t('ui-broke'),
      next: t('ui-broke-next'),
    };
  }

  say(text: string) {
    // The same words twice would not be spoken twice.
    this.said = this.said === text ? `${text}\u00a0` : text;
  }

  /** Offer to undo what was just done. */
  offer(text: string, label: string, run: () => void) {
    this.second = { text, label, run };
  }

  /** Another screen opens: the messages belonged to the one before. */
  clear() {
    this.problem = null;
    this.second = null;
  }

  /** Read again what is kept after a failure, and go on telling what failed. */
  async keeping(read: () => Promise<unknown>) {
    const { problem } = this;
    await read();
    this.problem = problem ?? this.problem;
  }
}
