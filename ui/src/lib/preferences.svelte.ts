// The maker's preferences: ruler, language, text size, theme.
//
// The ruler decides how a bare number in a field is read, and the language how lengths are
// written. Before either changes, the open form therefore writes its units out; afterwards the
// form is read again or, where no form is open, the question about the open throw is asked again.
// At most one form is open.

import type * as ipc from './ipc';
import type { Messages } from './messages.svelte';
import type { Hello, Prefs } from './types';

/** A form with fields that are read by the ruler. */
interface Form {
  /** Writes its units out, before the ruler changes. */
  spell: () => Promise<void>;
  /** Reads itself again, after the ruler has changed. */
  reread: () => Promise<void>;
}

/** What becomes of the preferences as they then are: an earlier change may still be on its way. */
type Change = (prefs: Prefs) => Partial<Prefs>;

type Shell = Pick<typeof ipc, 'hello' | 'setPrefs'>;

const isReadAlike = (a: Prefs, b: Prefs) =>
  a.language === b.language && JSON.stringify(a.ruler) === JSON.stringify(b.ruler);

export class Preferences {
  /** What the core said when it was last greeted. */
  hello = $state.raw<Hello | null>(null);

  private form: Form | null = null;
  /** Over when every change that was asked for is made. */
  private turn: Promise<void> = Promise.resolve();

  /** `greeted` is called with what the core says, `changed` when lengths are read another way. */
  constructor(
    private readonly shell: Shell,
    private readonly messages: Messages,
    private readonly greeted: (hello: Hello) => void,
    private readonly changed: () => Promise<void>,
  ) {}

  get prefs(): Prefs | null {
    return this.hello?.prefs ?? null;
  }

  /** Ask the core for words, preferences and the shelf. */
  async greet() {
    try {
      this.apply(await this.shell.hello());
      this.messages.problem = this.hello?.problem ?? null;
    } catch (thrown) {
      this.messages.fail(thrown);
    }
  }

  /** A form is open, until what this gives is called. */
  open(form: Form): () => void {
    this.form = form;
    return () => {
      if (this.form === form) this.form = null;
    };
  }

  /** Change what is preferred, once every change that was asked for before is made. */
  set(change: Change): Promise<void> {
    this.turn = this.turn.then(() => this.make(change)).catch((why) => this.messages.fail(why));
    return this.turn;
  }

  private async make(change: Change) {
    const { prefs: before } = this;
    if (!before) return;
    const prefs = { ...before, ...change(before) };
    const anew = !isReadAlike(before, prefs);
    if (anew) await this.form?.spell();
    this.apply(await this.shell.setPrefs(prefs));
    if (anew) await (this.form ? this.form.reread() : this.changed());
  }

  private apply(hello: Hello) {
    this.hello = hello;
    this.greeted(hello);
  }
}
