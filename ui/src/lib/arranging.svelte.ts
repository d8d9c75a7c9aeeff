// The layout search as the window follows it. The search reports what it has found while it runs,
// and it is stopped when its screen is left. Nothing else waits for it.

import type * as ipc from './ipc';
import type { Messages } from './messages.svelte';
import type { OpenThrow } from './open-throw.svelte';
import { t } from './words.svelte';
import type { LayoutCard, Layouts, Wishes } from './types';

type Shell = Pick<typeof ipc, 'arrange' | 'stopArranging'>;

export class Arranging {
  /** What was asked for, while it is looked for and shown. */
  wishes = $state.raw<Wishes | null>(null);
  /** The layout that was tapped: it stays as it was then, while better ones are looked for. */
  chosen = $state.raw<LayoutCard | null>(null);

  private told = $state.raw<Layouts | null>(null);
  /** What is found so far. */
  found = $derived.by((): Layouts | null => {
    const { told, chosen } = this;
    if (!told || !chosen) return told;
    const stays = (card: LayoutCard) => (card.letter === chosen.letter ? chosen : card);
    return { ...told, cards: told.cards.map(stays) };
  });

  /** Counts searches, so that what is reported of an older one is dropped. */
  private search = 0;

  constructor(
    private readonly shell: Shell,
    private readonly openThrow: OpenThrow,
    private readonly messages: Messages,
  ) {}

  start(wishes: Wishes) {
    const { id } = this.openThrow;
    if (id === null) return;
    this.halt();
    this.wishes = wishes;
    this.told = null;
    this.chosen = null;
    this.messages.problem = null;
    this.messages.say(t('ui-looking'));
    // Any number will do: another number, another four.
    const seed = crypto.getRandomValues(new Uint32Array(1))[0];
    void this.follow(this.shell.arrange(id, wishes, seed, this.hear()));
  }

  choose(letter: string) {
    this.chosen = this.found?.cards.find((card) => card.letter === letter) ?? null;
  }

  /** Stop looking; what was found stays. */
  stop() {
    this.halt();
    void this.follow(this.shell.stopArranging());
  }

  /** Give the search up with all it found. */
  drop() {
    if (!this.wishes) return;
    this.halt();
    this.wishes = null;
    this.told = null;
    this.chosen = null;
    void this.shell.stopArranging().catch(() => undefined);
  }

  private halt() {
    this.search += 1;
  }

  /** Takes in what this search tells, as long as it is the newest. */
  private hear() {
    const { search } = this;
    return (found: Layouts) => {
      if (search === this.search) this.told = found;
    };
  }

  /** What the newest search comes to in the end. */
  private async follow(ending: Promise<Layouts | null>) {
    const { search } = this;
    try {
      const found = await ending;
      if (search !== this.search) return;
      this.halt();
      this.told = found;
      if (found) this.messages.say(found.said);
    } catch (thrown) {
      if (search !== this.search) return;
      this.drop();
      this.messages.fail(thrown);
    }
  }
}
