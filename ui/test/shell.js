// A shell for tests: every call waits until the test answers it, in whatever order it likes.

/** Give the other side its turn, until nothing more happens by itself. */
export const settled = () => new Promise(setImmediate);

export class Shell {
  /** The calls that are not answered yet, oldest first. */
  waiting = [];

  constructor(...commands) {
    for (const command of commands) {
      this[command] = (...given) =>
        new Promise((answer, refuse) => this.waiting.push({ command, given, answer, refuse }));
    }
  }

  /** What was called last and is not answered. */
  get last() {
    return this.waiting.at(-1);
  }

  /** Answer a call, the oldest if none is named, and let what comes of it happen. */
  async answer(value, call = this.waiting[0]) {
    this.waiting.splice(this.waiting.indexOf(call), 1);
    // A view is as new as the entry it shows.
    const isView = call.command === 'view';
    call.answer(isView ? { revision: value.head?.entry ?? 0, view: value } : value);
    await settled();
  }

  async refuse(problem, call = this.waiting[0]) {
    this.waiting.splice(this.waiting.indexOf(call), 1);
    call.refuse(problem);
    await settled();
  }
}

export const PROBLEM = { code: 'no-piece', said: 'There is no such piece.', next: 'Look anew.' };

export const head = (entry, more = {}) => ({ entry, name: 'Bay', undo: null, redo: null, ...more });

/** A view as short as can be; `mark` tells one from another. */
export const view = (seen, mark, entry = 1) => ({ seen, mark, head: head(entry) });

/** A window's history, which goes back only when it is asked to. */
export class Steps {
  entries = [{ place: { at: 'shelf' }, id: null, depth: 0, tab: null }];
  at = 0;
  /** By how much it has been asked to go back. */
  asked = 0;

  pushState(state) {
    this.entries.splice(++this.at, Infinity, state);
  }

  replaceState(state) {
    this.entries[this.at] = state;
  }

  back() {
    this.go(-1);
  }

  go(by) {
    this.asked += by;
  }

  /** Go where it was asked to; gives the entry there, as the window's event does. */
  pop() {
    this.at += this.asked;
    this.asked = 0;
    return this.entries[this.at];
  }

  get top() {
    return this.entries[this.at];
  }
}
