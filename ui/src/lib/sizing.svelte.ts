// Sides that are being typed: the core reads them a moment after each key, and their units are
// written out before the ruler changes.

import { commands, openThrow, preferences } from './store';
import { pauseAfter, spelledOut } from './typed';
import type { Query } from './types';

/** The two sides most things are measured by. */
export const SIDES = ['width', 'height'] as const;

export class Sizing<Side extends string> {
  typed: Record<Side, string>;

  private timer: ReturnType<typeof setTimeout> | undefined;
  /** What was typed is being kept, or was only just: it is not kept twice. */
  private keeping = false;

  constructor(
    private readonly sides: readonly Side[],
    private readonly query: (typed: Record<Side, string>) => Query,
  ) {
    this.typed = $state(this.empty());
  }

  private empty() {
    return Object.fromEntries(this.sides.map((side) => [side, ''])) as Record<Side, string>;
  }

  changed() {
    clearTimeout(this.timer);
    const pause = pauseAfter(Object.values<string>(this.typed));
    this.timer = setTimeout(() => void this.now(), pause);
  }

  async now() {
    clearTimeout(this.timer);
    await openThrow.see(this.query({ ...this.typed }));
  }

  /**
   * Keep what is typed: it is read first, for the last key may have come only now. `kept` is
   * told whether nothing else was typed meanwhile. If a step was ticked just before, the measure
   * waits for its turn and is not lost. False if something is wanting.
   */
  async keep(kept: (still: boolean) => void): Promise<boolean> {
    if (this.keeping) return true;
    this.keeping = true;
    try {
      await this.now();
      const { view } = openThrow;
      const asked = view?.seen === 'measure' || view?.seen === 'whole' ? view.keep : null;
      if (!asked) return false;
      const typed = JSON.stringify(this.typed);
      if (await commands.inTurn(asked.action)) kept(typed === JSON.stringify(this.typed));
      return true;
    } finally {
      void commands.free().then(() => (this.keeping = false));
    }
  }

  /** What is typed, with every unit spelled out; null where nothing is. */
  draft(): Record<Side, string> | null {
    const ruler = preferences.prefs?.ruler;
    if (!ruler || this.sides.every((side) => this.typed[side].trim() === '')) return null;
    const spelled = this.sides.map((side) => [side, spelledOut(this.typed[side], ruler)]);
    return Object.fromEntries(spelled) as Record<Side, string>;
  }

  /** Take up what was typed before. */
  async restore(draft: Record<Side, string>) {
    this.typed = { ...draft };
    await this.now();
  }

  /** Rub everything out. */
  async clear() {
    this.typed = this.empty();
    await this.now();
  }

  /** Spell every unit out, so that another ruler cannot change a measure. */
  private async spell() {
    const ruler = preferences.prefs?.ruler;
    if (!ruler) return;
    for (const side of this.sides) this.typed[side] = spelledOut(this.typed[side], ruler);
  }

  /** For as long as the screen is shown; gives what ends it. */
  begin(): () => void {
    const closed = preferences.open({ spell: () => this.spell(), reread: () => this.now() });
    return () => {
      clearTimeout(this.timer);
      closed();
    };
  }
}
