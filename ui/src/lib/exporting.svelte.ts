// Files that leave and enter a throw: exports, the printed sheet, photos.
//
// A print takes long. It continues while the maker works elsewhere, one at a time, and the shell
// reports its progress. What was exported stays on the screen until the maker goes to another
// one, and is shown only while its throw is open.

import type { OpenThrow } from './open-throw.svelte';
import type * as ipc from './ipc';
import type { Messages } from './messages.svelte';
import type { Turns } from './turns.svelte';
import type { Export, PrintOrder, Printing } from './types';
import { t } from './words.svelte';

type Shell = Pick<typeof ipc, 'save' | 'print' | 'stopPrinting' | 'photo' | 'photoSource'>;

export class Exporting {
  /** What was last exported, in words. */
  exported = $state.raw<string | null>(null);
  /** How far the current print is. */
  printing = $state.raw<Printing | null>(null);
  /** Takes a photo dropped on the window; set by the screen that can. */
  onphoto: (() => void) | null = null;

  constructor(
    private readonly shell: Shell,
    private readonly turns: Turns,
    private readonly openThrow: OpenThrow,
    private readonly messages: Messages,
  ) {}

  /** What was exported is no longer shown. */
  forget() {
    this.exported = null;
  }

  /** Export something as a file; the shell asks where it goes. */
  async save(wanted: Export) {
    const { id } = this.openThrow;
    if (id === null) return;
    this.forget();
    const done = await this.turns.run(() => this.shell.save(id, wanted));
    const said = done.is === 'done' ? done.answer.said : null;
    if (!said || this.openThrow.id !== id) return;
    this.exported = said;
    this.messages.say(said);
  }

  /** Print a sheet, unless one is being printed. */
  async print(order: PrintOrder) {
    const { id } = this.openThrow;
    if (id === null || this.printing) return;
    this.forget();
    this.messages.problem = null;
    this.printing = { done: 0, all: 1 };
    try {
      const { said } = await this.shell.print(id, order, (now) => {
        if (this.printing) this.printing = now;
      });
      if (said && this.openThrow.id === id) this.exported = said;
      this.messages.say(said ?? t('ui-print-stopped'));
    } catch (thrown) {
      this.messages.fail(thrown);
    } finally {
      this.printing = null;
    }
  }

  /** The print ends, and nothing is written. */
  async stopPrinting() {
    await this.shell.stopPrinting();
  }

  /** Where the window finds a photo of the open throw. */
  photoSource(photo: string): string {
    return this.shell.photoSource(this.openThrow.id ?? '', photo);
  }

  /** A photo the maker chooses, or the one she dropped: its name, once the shell keeps it. */
  async photo(dropped: boolean): Promise<string | null> {
    const { id } = this.openThrow;
    if (id === null) return null;
    const done = await this.turns.run(() => this.shell.photo(id, dropped), 0);
    return done.is === 'done' ? done.answer : null;
  }

  /** A photo was dropped on the window: the screen takes it as soon as nothing else is running. */
  dropped() {
    this.turns.whenFree(() => this.onphoto?.());
  }
}
