// Typed text that is not stored yet, read by the core: a plan, wishes for a grid, a length.
//
// Nothing is stored here, and nothing in the throw changes. A question that cannot be answered
// shows a problem.

import type * as ipc from './ipc';
import type { Messages } from './messages.svelte';
import type { DraftAfter, GridWish, GridsView, PlanDraft, PlanView, Problem } from './types';

type Shell = Pick<typeof ipc, 'draft' | 'grids' | 'length' | 'problemOf'>;

export class Reading {
  constructor(
    private readonly shell: Shell,
    private readonly messages: Messages,
  ) {}

  draft(draft: PlanDraft, after: DraftAfter | null): Promise<PlanView | null> {
    return this.orTell(this.shell.draft(draft, after));
  }

  grids(draft: PlanDraft, wish: GridWish): Promise<GridsView | null> {
    return this.orTell(this.shell.grids(draft, wish));
  }

  /** A length as typed, for an action; or what is wrong with it. */
  async length(text: string): Promise<number | Problem> {
    try {
      return await this.shell.length(text);
    } catch (thrown) {
      const problem = this.shell.problemOf(thrown);
      if (problem) return problem;
      throw thrown;
    }
  }

  private async orTell<T>(answer: Promise<T>): Promise<T | null> {
    try {
      return await answer;
    } catch (thrown) {
      this.messages.fail(thrown);
      return null;
    }
  }
}
