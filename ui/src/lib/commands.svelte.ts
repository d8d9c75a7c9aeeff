// The commands done to the open throw: actions, undo and redo.
//
// A command is shown as done only after the core has answered that it is stored. The answer
// contains the updated screen, so that a tick is one call. After a failure the stored state is
// read again, and the problem stays visible. A command does not start while another is running;
// `act` and the others then return false, as they do when the command could not be done.

import type { OpenThrow } from './open-throw.svelte';
import type * as ipc from './ipc';
import { isTab } from './places';
import type { Screens } from './screens.svelte';
import type { Messages } from './messages.svelte';
import type { Turns } from './turns.svelte';
import type { Command, Request } from './types';
import { t } from './words.svelte';

export class Commands {
  constructor(
    private readonly shell: Pick<typeof ipc, 'act'>,
    private readonly turns: Turns,
    private readonly openThrow: OpenThrow,
    private readonly screens: Screens,
    private readonly messages: Messages,
  ) {}

  /** Any command is running or has only just been done. */
  get busy(): boolean {
    return this.turns.busy;
  }

  act(action: Command): Promise<boolean> {
    return this.do({ request: 'act', action });
  }

  /**
   * The same for what is not tapped twice by mistake, such as a measure that was typed: if a command
   * is under way or has only just been done, it waits for its turn.
   */
  inTurn(action: Command): Promise<boolean> {
    const { id } = this.openThrow;
    const act = () => (this.openThrow.id === id ? this.act(action) : this.actOn(id, action));
    return new Promise((done) => this.turns.whenFree(() => done(act())));
  }

  /** The same to a throw that is not open any more. */
  private async actOn(id: string | null, action: Command): Promise<boolean> {
    if (id === null) return false;
    const done = await this.turns.run(() => this.shell.act(id, { request: 'act', action }));
    return done.is === 'done';
  }

  /** Resolves as soon as no command is running. */
  free(): Promise<void> {
    return new Promise((free) => this.turns.whenFree(free));
  }

  async undo() {
    const what = this.openThrow.head?.undo;
    if (what && (await this.do({ request: 'undo' })))
      this.messages.offer(`${t('ui-undone')}: ${what}`, t('ui-redo'), () => void this.redo());
  }

  async redo() {
    const what = this.openThrow.head?.redo;
    if (what && (await this.do({ request: 'redo' }))) this.offerUndo(`${t('ui-redone')}: ${what}`);
  }

  /** Say what was done, and offer to undo it at once. */
  offerUndo(done: string) {
    this.messages.offer(done, t('ui-undo'), () => void this.undo());
  }

  /** An action that ends a side screen: done, work goes on, and it can be undone at once. */
  async settle(action: Command, said: string): Promise<boolean> {
    const { id } = this.openThrow;
    const { place } = this.screens;
    if (id === null) return false;
    const done = await this.turns.run(() => this.shell.act(id, { request: 'act', action }));
    if (done.is !== 'done') return this.failed(id, done.is);
    if (this.openThrow.id === id) {
      this.openThrow.heed(done.answer);
      if (this.screens.place === place) await this.screens.leave();
      else await this.openThrow.again();
    }
    this.offerUndo(said);
    return true;
  }

  private async do(request: Request): Promise<boolean> {
    const { id, query } = this.openThrow;
    if (id === null) return false;
    // Tapping undo several times in a row is meant; ticking twice is not.
    const once = request.request === 'act' && request.action.do !== 'gather';
    const done = await this.turns.run(
      async () => {
        const answer = await this.shell.act(id, request, query);
        if (this.openThrow.id === id) await this.openThrow.follow(query, answer);
      },
      once ? undefined : 0,
    );
    if (done.is !== 'done') return this.failed(id, done.is);
    // What the side screen was about may be gone.
    if (this.messages.problem && !isTab(this.screens.place)) await this.screens.leave();
    return true;
  }

  private async failed(id: string, how: 'failed' | 'busy'): Promise<false> {
    if (how === 'failed' && this.openThrow.id === id) {
      await this.messages.keeping(() => this.openThrow.again());
    }
    return false;
  }
}
