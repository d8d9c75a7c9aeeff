// Two sides being typed: looked at a moment after each key, their units spelled
// out before the ruler changes.

import { store } from './store.svelte';
import { spelledOut } from './typed';
import type { Look } from './types';

/** How long after the last key the core is asked, in milliseconds. */
const PAUSE = 80;

export class Sizing {
  typed = $state({ width: '', height: '' });

  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly look: (typed: { width: string; height: string }) => Look) {}

  changed() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.now(), PAUSE);
  }

  async now() {
    clearTimeout(this.timer);
    await store.see(this.look({ ...this.typed }));
  }

  /** For as long as the screen is shown; gives what ends it. */
  begin(): () => void {
    store.beforeRuler = async () => {
      const ruler = store.prefs?.ruler;
      if (!ruler) return;
      this.typed.width = spelledOut(this.typed.width, ruler);
      this.typed.height = spelledOut(this.typed.height, ruler);
    };
    store.afterRuler = () => this.now();
    return () => {
      clearTimeout(this.timer);
      store.beforeRuler = null;
      store.afterRuler = null;
    };
  }
}
