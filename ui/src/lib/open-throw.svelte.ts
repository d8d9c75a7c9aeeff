// The open throw: the latest question about it, and the view that is shown.
//
// Every question has a number. Only the answer to the newest one is shown; the answer to an older
// one is dropped. Until the answer has come the view before stays. A question that fails leaves
// the shown view as it is. The answer to a command is shown at once if its screen is still open,
// so that a tick never waits for a screen that takes long; if something else was asked meanwhile,
// that question is asked again.
//
// Every answer has a revision. A command may overtake a question: the answer to the question then
// has a lower revision, is dropped, and the question is asked again.

import type { CommandAnswer, Head, ViewAnswer, Query, View } from './types';

/** Whether the batch that is looked at is through. */
const through = (query: Query, view: View) =>
  view.seen === 'work' && !view.card && !view.ask && query.see === 'work' && query.batch !== null;

/** Where the newest question stands; `shown` is whether it, or one newer, came to be shown. */
type Newest =
  | { is: 'asking'; number: number; query: Query; shown: Promise<boolean> }
  | { is: 'answered'; shown: Promise<boolean> };

const NOTHING: Newest = { is: 'answered', shown: Promise.resolve(false) };

export class OpenThrow {
  id = $state.raw<string | null>(null);
  /** What is shown: the question, and the answer to it. */
  query = $state.raw<Query | null>(null);
  view = $state.raw<View | null>(null);
  head = $state.raw<Head | null>(null);

  private newest: Newest = NOTHING;
  private count = 0;
  /** The newest revision that was answered, of this throw or any other. */
  private revision = 0;

  constructor(
    private readonly ask: (id: string, query: Query) => Promise<ViewAnswer>,
    private readonly fail: (thrown: unknown) => void,
  ) {}

  /** Take an open throw, or none; of any other nothing is shown any more. True if it is another. */
  hold(id: string | null): boolean {
    if (id === this.id) return false;
    this.newest = NOTHING;
    this.id = id;
    this.query = null;
    this.view = null;
    this.head = null;
    return true;
  }

  /**
   * Look at something of the throw; true once it, or what was asked since, is shown. `before`
   * is called just before it is shown, and not at all if it never is.
   */
  see(query: Query, before?: () => void): Promise<boolean> {
    const { id } = this;
    if (id === null) return Promise.resolve(false);
    const number = ++this.count;
    const shown = this.find(id, query, number, before);
    this.newest = { is: 'asking', number, query, shown };
    return shown;
  }

  /** Ask again what was asked last. */
  async again() {
    const query = this.newest.is === 'asking' ? this.newest.query : this.query;
    if (query) await this.see(query);
  }

  /** Take in how far the throw is after a command. */
  heed({ revision, head }: CommandAnswer) {
    this.revision = Math.max(this.revision, revision);
    this.head = head;
  }

  /** Show what a command has answered: how far the throw is, and the screen that was looked at. */
  async follow(query: Query | null, answer: CommandAnswer) {
    const { id } = this;
    const { head, view, problem, revision } = answer;
    this.revision = Math.max(this.revision, revision);
    const there = query !== null && this.query === query;
    const isThrough = query !== null && view !== null && through(query, view);
    if (this.newest.is === 'asking') {
      // What was asked meanwhile may take long to make: the tick is not kept waiting for it.
      if (there && view && !isThrough) this.put(query, view);
      else this.heed(answer);
      void this.again();
      return;
    }
    // How far the throw is and the screen come together: neither is ahead of the other.
    if (!there || isThrough) await this.again();
    else if (view) this.show(query, view);
    else if (problem) this.fail(problem);
    if (this.id === id && this.head?.entry !== head.entry) this.head = head;
  }

  private async find(id: string, query: Query, number: number, before?: () => void) {
    const overtaken = () => this.newest.is !== 'asking' || this.newest.number !== number;
    try {
      let view = await this.fresh(id, query, overtaken);
      if (!overtaken() && query.see === 'work' && through(query, view)) {
        // Back to what comes first.
        query = { ...query, batch: null };
        view = await this.fresh(id, query, overtaken);
      }
      if (overtaken()) return this.newest.shown;
      before?.();
      this.show(query, view);
      return true;
    } catch (thrown) {
      if (overtaken()) return this.newest.shown;
      this.newest = { is: 'answered', shown: this.newest.shown };
      this.fail(thrown);
      return false;
    }
  }

  /** The answer as the throw stands: one made before a command that is answered is asked again. */
  private async fresh(id: string, query: Query, overtaken: () => boolean): Promise<View> {
    for (;;) {
      const { revision, view } = await this.ask(id, query);
      if (revision >= this.revision || overtaken()) {
        this.revision = Math.max(this.revision, revision);
        return view;
      }
    }
  }

  private show(query: Query, view: View) {
    this.newest = { is: 'answered', shown: this.newest.shown };
    this.put(query, view);
  }

  private put(query: Query, view: View) {
    this.query = query;
    this.view = view;
    if (view.head) this.head = view.head;
  }
}
